"""A small building for tests of openings, fire, rain and the whole envelope: plain numbers in, findings out."""

from types import SimpleNamespace as N

from codes_builders import project, quantity, studies
from layerfolio import codes
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.codes.context import Envelope
from layerfolio.steps.trace import Trace
from layerfolio.studies.envelope_types import OpeningStudy
from layerfolio.units.quantity import Quantity

PAPER = N(number="R-1", issuer="a test house", edition="2026", expires=None, proves=("transmittance", "solar factor"), title="")
DAYS = {"4": 2500, "5": 3500, "6": 4500, "7A": 5500, "7B": 6500, "8": 7500}


def length(metres):
    return None if metres is None else Quantity(metres, "length", f"{metres * 1000:g} mm")


def opening(name="A1", kind="window", *, U=1.0, basis="rated to CSA A440.2", how="stated", papers=(PAPER,), size=(1.2, 1.4),
            count=1, wall="W1", orientation="south", rating=None, **stated):  # fmt: skip
    width, height = size
    own = N(evidence=papers, energy_rating=rating, **{"egress": None, "clear_opening": None} | stated)
    figure = None if U is None else Datum(U, Origin("project", "test"))
    return OpeningStudy(
        name, kind, name, wall, orientation, count, width, height, width * height, U, "missing" if U is None else how, basis,
        None, figure, () if U is not None else ("glass",), Trace(()), own,
    )  # fmt: skip


def building(**answers):
    """A house of zone 6; `answers` go to building, climate, assemblies and documents by name."""
    about = project(
        zone=answers.pop("zone", "6"), degree_days=answers.pop("degree_days", 4600), set_id=answers.pop("set_id", "nbc-2020"),
        occupancy=answers.pop("occupancy", "house"), storeys=answers.pop("storeys", 1), amendments=answers.pop("amendments", ()),
        units=answers.pop("units", "metric"), heat_recovery=answers.pop("heat_recovery", True),
    )  # fmt: skip
    about.climate.moisture_index = answers.pop("moisture_index", None)
    about.assemblies, about.documents = answers.pop("assemblies", {}), answers.pop("documents", ())
    about.materials = answers.pop("materials", {})
    about.site_loads = N(wind_pressure_1_50=quantity(answers.pop("wind", None), "pressure"), seismic=None)
    about.building.__dict__.update(answers)
    return about


def judged(parts=(), openings=(), **answers):
    """All findings on that building."""
    found = studies(*parts)
    envelope = Envelope(thermal={n: one[0] for n, one in found.items()}, openings={one.name: one for one in openings})
    return codes.judge(building(**answers), found, envelope)


def only(findings, ending, subject=None):
    found = [one for one in findings if one.id.endswith(ending) and subject in (None, one.assembly)]
    assert len(found) == 1, [(one.id, one.assembly) for one in findings if one.id.endswith(ending)]
    return found[0]
