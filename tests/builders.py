"""Small assemblies from plain numbers, for tests that start behind the resolving door."""

from layerfolio.assembly.types import Assembly, Layer, Member, VapourFigures
from layerfolio.catalogue.datum import Datum, Document, Origin
from layerfolio.units.quantity import Quantity

GIVEN = Origin("project", "test")
PAPER = Document(number="T-1", issuer="a test house", proves=("conductivity", "resistance"))


def datum(value, mark="given", source="test", chosen_by="project", papers=()):
    return None if value is None else Datum(value, Origin(chosen_by, source, "", mark, papers))


def length(metres, text=""):
    return None if metres is None else Quantity(metres, "length", text or f"{metres * 1000:g} mm")


def member(share, *, R=None, lam=None, r=None, member_id="", name="stud", **kwargs):
    values = {"material": "spruce", "title": f"spruce {name}s", "family": "timber", "width": length(0.038),
              "spacing": length(0.6), "direction": "vertical"} | kwargs  # fmt: skip
    return Member(
        name=name, share=datum(share), member_id=member_id, conductivity=datum(lam), resistivity=datum(r),
        resistance=datum(R), **values,
    )  # fmt: skip


def layer(number, *, R=None, lam=None, d=None, r=None, frame=None, counts=True, kind="solid", cavity="", mu=None,
          s_d=None, permeance=None, serves=(), name="", family="plain", insulating=False, mark="given",
          papers=(PAPER,)):  # fmt: skip
    """A layer whose figure of heat has a document that proves it, unless `papers` says otherwise."""
    vapour = None
    for basis, value in (("mu", mu), ("s_d", s_d), ("permeance", permeance)):
        if value is not None:
            dry, wet = value if isinstance(value, tuple) else (value, value)
            vapour = VapourFigures(basis, datum(dry), datum(wet), not isinstance(value, tuple))
    return Layer(
        number=number, name=name or f"layer-{number}", title=name or f"Layer {number}", kind=kind, material="",
        family=family, thickness=length(d), conductivity=datum(lam, mark, papers=papers),
        resistivity=datum(r, mark, papers=papers), resistance=datum(R, mark, papers=papers),
        vapour=vapour, density=None, specific_heat=None, member=frame, cavity=cavity, cavity_openings=None,
        serves=tuple(serves), seams="", counts=counts, insulating=insulating,
    )  # fmt: skip


def assembly(layers, *, inside=0.13, outside=0.04, method="combined", kind="wall", name="W1", **kwargs):
    values = {"title": "Test wall", "area": None, "faces": "outside air", "slope": 90.0,
              "heat_direction": "horizontal", "set_id": "iso", "choices": ()} | kwargs  # fmt: skip
    return Assembly(
        name=name, kind=kind, method=method, inside_film=datum(inside), outside_film=datum(outside),
        layers=tuple(layers), **values,
    )  # fmt: skip
