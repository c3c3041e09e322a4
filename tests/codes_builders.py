"""Projects and studies small enough to see through, for tests of the codes."""

from pathlib import Path
from types import SimpleNamespace

import yaml

import builders as b
from layerfolio.codes.findings import Finding
from layerfolio.studies.thermal import thermal_study
from layerfolio.studies.vapour import vapour_study
from layerfolio.units.quantity import Quantity

CASES = Path(__file__).parent / "cases"


def cases(name):
    return yaml.load((CASES / f"{name}.yaml").read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)


def quantity(value, kind="area"):
    return None if value is None else Quantity(value, kind, f"{value:g}")


def amendment(requirement, value, source="letter of the authority"):
    return SimpleNamespace(requirement=requirement, value=value, source=source)


def project(*, set_id="nbc-2020", zone="6", heat_recovery=True, degree_days=4600, date="2027-02-03", storeys=1, area=52,
            floor_area=46, occupancy="mercantile", hazard=None, amendments=(), units="metric",
            humidity_class=2):  # fmt: skip
    """The parts of a project that a set asks for; the default is a small shop to which NBC 2020 applies."""
    return SimpleNamespace(
        project=SimpleNamespace(date=date, units=units),
        building=SimpleNamespace(
            occupancy=occupancy, storeys=storeys, building_area=quantity(area), hazard=hazard,
            conditioned_floor_area=quantity(floor_area),
        ),
        code=SimpleNamespace(set=set_id, zone=zone, heat_recovery=heat_recovery, amendments=list(amendments)),
        indoor=SimpleNamespace(humidity=SimpleNamespace(class_=humidity_class)),
        climate=SimpleNamespace(heating_degree_days=quantity(degree_days, "degree_days")),
    )  # fmt: skip


def insulation(R, number=1, *, mark="given", name="batts", **more):
    return b.layer(number, R=R, name=name, insulating=True, mark=mark, family="batt", **{"mu": 1, "d": 0.2} | more)


def of_resistance(R, *, name="W1", kind="wall", faces="outside air", slope=None, ground=None, set_id="nbc-2020",
                  method="isothermal-planes", layers=None):  # fmt: skip
    """An assembly of that total resistance, films included: one insulating layer makes up what the films leave."""
    slope = {"wall": 90.0, "foundation-wall": 90.0}.get(kind, 0.0) if slope is None else slope
    return b.assembly(
        layers or [insulation(R - 0.15)], inside=0.12, outside=0.03, method=method, kind=kind, name=name, faces=faces,
        slope=slope, set_id=set_id, ground=ground or {},
    )  # fmt: skip


def studies(*assemblies):
    found = {}
    for one in assemblies:
        heat = thermal_study(one)
        found[one.name] = (heat, vapour_study(one, heat.layers))
    return found


def only(findings, ending):
    """The one finding whose id ends so."""
    found = [one for one in findings if one.id.endswith(ending)]
    assert len(found) == 1, [one.id for one in findings]
    return found[0]


def finding(verdict, step="", *, subject=None, answered=""):
    """A finding of that verdict and next step, the rest of it the same for all."""
    return Finding(
        id="nbc-2020/9.1/test", assembly=subject, edition="", clause="9.1", topic="thermal", question="A question",
        path="prescriptive", verdict=verdict, asked="", given="", provided=None, limit=None, reason="a reason", next_step=step,
        answered_by=answered,
    )  # fmt: skip
