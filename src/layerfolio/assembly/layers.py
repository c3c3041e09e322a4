"""One layer of the project file, resolved."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from layerfolio.assembly import figures
from layerfolio.assembly.figures import Sources
from layerfolio.assembly.members import member
from layerfolio.assembly.types import Choice, Direction, Kind, Layer, Member, VapourFigures
from layerfolio.assembly.wetting import absorbent, timber
from layerfolio.catalogue.code_tables import CodeTables
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.types import Material

if TYPE_CHECKING:
    from layerfolio.assembly.beside import Fasteners
    from layerfolio.catalogue.completions import Completions

STILL_AIR_S_D = 0.01
"""Equivalent air layer of an air layer that is not ventilated, m, whatever its depth (ISO 13788:2012)."""

INSULATING_BELOW = 0.065
"""W/(m.K): a material of the project's own that conducts less belongs to the thermal control line (common practice)."""


@dataclass(frozen=True, slots=True)
class Context:
    """What all layers of one assembly share."""

    assembly: str
    kind: Kind
    direction: Direction
    tables: CodeTables
    project_materials: dict[str, Any]
    catalogue: Any  # name -> Material | None
    completions: "Completions | None" = None


def layer(
    number: int, name: str, given: Any, context: Context, counts: bool, cavity: str
) -> tuple[Layer, list[Choice]]:
    """A layer with its figures; `cavity` is how the set counts it ("" for none). Choices taken on the way."""
    material = given.material or ""
    own = context.project_materials.get(material)
    catalogue: Material | None = context.catalogue(material) if material else None
    thickness = given.thickness.value if given.thickness else None
    where = f"layer {name} of {context.assembly}"
    sources = Sources(given, own, context.tables, catalogue, material, thickness, where)
    heat, choices = figures.heat(sources), []
    if cavity:
        heat, choices = _air(heat, thickness, cavity, context, number)
    made, chosen = _member(number, given, context, thickness)
    choices += chosen
    kind = "cavity" if given.cavity else "membrane" if _is_membrane(given, catalogue) else "solid"
    family = _family(given, own, catalogue, kind)
    return Layer(
        number=number, name=name, title=_title(given, own, catalogue, name),
        kind=kind, material=material, family=family, thickness=given.thickness,
        conductivity=heat.conductivity, resistivity=heat.resistivity, resistance=heat.resistance,
        vapour=_vapour(sources, cavity, kind),
        density=figures.other(sources, "density"),
        specific_heat=figures.other(sources, "specific_heat"),
        member=made,
        cavity=given.cavity or "", cavity_openings=getattr(given, "openings", None),
        serves=tuple(given.serves or ()), seams=given.seams or "", counts=counts,
        insulating=_insulating(given, catalogue, heat, cavity),
        documents=(*figures.documents(given), *(figures.documents(own) if own is not None else ())),
        is_cladding=bool(catalogue and catalogue.cladding),
        also_published=_also_published(catalogue) if catalogue and own is None else (),
        path=f"assemblies.{context.assembly}.layers[{number - 1}]",
        absorbent=absorbent(own, catalogue, kind),
        timber=timber(family, catalogue),
        fasteners=_fasteners(given, where, context),
        air_voids=getattr(given, "air_voids", None),
        flame_spread=figures.other(sources, "flame_spread", listed=False),
        smoke_developed=figures.other(sources, "smoke_developed", listed=False),
        specific_gravity=figures.other(sources, "specific_gravity", listed=False),
        compressive_strength=figures.other(sources, "compressive_strength", listed=False),
    ), choices  # fmt: skip


def _fasteners(given: Any, where: str, context: Context) -> "Fasteners | None":
    if getattr(given, "fasteners", None) is None:
        return None
    from layerfolio.assembly.completions import fasteners

    return fasteners(given, where, context.completions)


def _member(number: int, given: Any, context: Context, thickness: float | None) -> tuple[Member | None, list[Choice]]:
    """The framing of a layer or the battens of a cavity, if any."""
    framing = given.battens if given.cavity else given.framing
    if framing is None:
        return None, []
    own = context.project_materials.get(framing.material or "")
    listed = context.catalogue(framing.material) if framing.material else None
    return member(
        framing, context.kind, str(number), context.assembly, thickness, context.tables, own, listed,
        is_batten=bool(given.cavity),
    )  # fmt: skip


def _also_published(catalogue: Material) -> tuple[tuple[str, str, Datum], ...]:
    names = {"conductivity": "lam", "resistance": "R", "mu": "mu", "permeance": "W", "s_d": "s_d"}
    return tuple((p.what, names[p.quantity], p.datum) for p in catalogue.disagreeing() if p.quantity in names)


def _is_membrane(given: Any, catalogue: Material | None) -> bool:
    return bool(given.membrane) or bool(catalogue and catalogue.membrane)


def _air(
    heat: figures.Heat, thickness: float | None, cavity: str, context: Context, number: int
) -> tuple[figures.Heat, list[Choice]]:
    """Resistance of a cavity: as stated, else the set's own figure for still air of that depth."""
    if heat.resistance or cavity != "unventilated" or thickness is None:
        return heat, []
    space = context.tables.air_space(thickness, context.direction)
    if space is None:
        reason = context.tables.air_space_missing(context.direction)
        zero = Datum(0.0, Origin("default", context.tables.set_id, "", "given"), reason)
        return figures.Heat(resistance=zero), [Choice(f"The air of layer {number} counts for nothing", reason)]
    choices = (
        [Choice(f"The air of layer {number} counts {space.value:.4g} m²·K/W", space.note, space.origin.source)]
        if space.note
        else []
    )
    return figures.Heat(resistance=space), choices


def _vapour(sources: Sources, cavity: str, kind: str) -> VapourFigures | None:
    found = figures.vapour(sources)
    if found or kind != "cavity":
        return found
    if cavity == "ventilated":
        return None
    still = Datum(STILL_AIR_S_D, Origin("default", "iso-13788-2012", "air layers", "memory"))
    return VapourFigures("s_d", still, still, True)


def _title(given: Any, own: Any, catalogue: Material | None, name: str) -> str:
    if getattr(given, "title", None):
        return given.title
    if given.cavity:
        words = {"unventilated": "still-air cavity"}.get(given.cavity, f"{given.cavity} cavity")
    elif "name" in given.stated or given.membrane:
        words = given.name if "name" in given.stated else given.membrane
    elif own is not None:
        words = getattr(own, "title", None) or given.material.replace("-", " ")
    else:
        words = catalogue.title if catalogue else name
    return words[:1].upper() + words[1:]


def _family(given: Any, own: Any, catalogue: Material | None, kind: str) -> str:
    stated = getattr(given, "family", None) or getattr(own, "family", None)
    if stated:
        return stated
    if kind == "cavity":
        return "air"
    if kind == "membrane":
        return "membrane"
    return catalogue.family if catalogue else "plain"


def _insulating(given: Any, catalogue: Material | None, heat: figures.Heat, cavity: str) -> bool:
    if cavity:
        return False
    if "thermal control" in (given.serves or ()) or (catalogue and catalogue.insulating):
        return True
    if heat.conductivity:
        return heat.conductivity.value < INSULATING_BELOW
    return bool(heat.resistivity and heat.resistivity.value > 1 / INSULATING_BELOW)
