"""Which figure counts for a layer: its own, then the project's material, then the code's table, then the catalogue."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from layerfolio.assembly.types import VapourFigures
from layerfolio.catalogue.code_tables import CodeFigure, CodeTables
from layerfolio.catalogue.datum import ChosenBy, Datum, Document, Origin
from layerfolio.catalogue.types import Material


@dataclass(frozen=True, slots=True)
class Sources:
    """Where a layer's (or member's) figures may come from, in order of precedence; any may be missing."""

    own: Any  # the layer or framing of the project file
    project: Any  # the project's material of that name
    tables: CodeTables
    catalogue: Material | None
    name: str  # material name, empty without one
    thickness: float | None
    where: str  # "layer panel of W1", for figures that state no source

    def stated(self) -> Iterator[tuple[Any, ChosenBy]]:
        """The project file's own entries, the nearer first."""
        if self.own is not None:
            yield self.own, "layer"
        if self.project is not None:
            yield self.project, "project"


@dataclass(frozen=True, slots=True)
class Heat:
    """At most one of the three is set."""

    resistance: Datum | None = None
    resistivity: Datum | None = None
    conductivity: Datum | None = None


def documents(entry: Any) -> tuple[Document, ...]:
    """The evidence of a layer or material of the project file."""
    return tuple(
        Document(
            one.file or "",
            one.number or "",
            one.issuer or "",
            str(one.edition or ""),
            str(one.expires or ""),
            tuple(one.proves or ()),
        )
        for one in getattr(entry, "evidence", None) or ()
    )


def stated_origin(entry: Any, chosen_by: ChosenBy, where: str) -> Origin:
    """Origin of a figure that the project file states; without a source it says so."""
    source = getattr(entry, "source", None) or f"project file, {where} (no source stated)"
    return Origin(chosen_by, str(source), "", "given", documents(entry))


def heat(sources: Sources) -> Heat:
    """Resistance, resistivity or conductivity, by precedence; all None when nothing is known."""
    for entry, chosen_by in sources.stated():
        origin = stated_origin(entry, chosen_by, sources.where)
        for key in ("resistance", "conductivity"):
            value = getattr(entry, key, None)
            if value is not None:
                return Heat(**{key: Datum(amount(value), origin)})
    code: CodeFigure | None = sources.tables.material(sources.name, sources.thickness) if sources.name else None
    if code and (code.resistance or code.resistivity):
        return Heat(resistance=code.resistance, resistivity=None if code.resistance else code.resistivity)
    found = sources.catalogue
    if found is None:
        return Heat()
    if found.resistance and _same(found.resistance_at, sources.thickness):
        return Heat(resistance=found.resistance)
    return Heat(conductivity=found.conductivity)


def amount(value: Any) -> float:
    """The number of a stated figure: a plain one, a quantity, or a quantity rated at a thickness."""
    while hasattr(value, "value"):
        value = value.value
    return float(value)


def _same(at: float | None, thickness: float | None) -> bool:
    return at is None or (thickness is not None and abs(at - thickness) < 2.5e-4)


VAPOUR_KEYS = (
    ("equivalent_air_layer", "s_d"),
    ("permeance", "permeance"),
    ("permeability", "permeability"),
    ("vapour_resistance_factor", "mu"),
)


def vapour(sources: Sources) -> VapourFigures | None:
    """Vapour figures by precedence; the code's tables carry none."""
    for entry, chosen_by in sources.stated():
        for key, basis in VAPOUR_KEYS:
            value = getattr(entry, key, None)
            if value is not None:
                return _cups(value, basis, stated_origin(entry, chosen_by, sources.where))
    found = sources.catalogue.vapour if sources.catalogue else None
    if found is None or not _same(found.at_thickness, sources.thickness):
        return None
    return VapourFigures(found.basis, found.dry, found.wet, found.single)


def _cups(value: Any, basis: str, origin: Origin) -> VapourFigures:
    """One number for both cups, or dry and wet apart."""
    if value.single:
        datum = Datum(amount(value.dry), origin)
        return VapourFigures(basis, datum, datum, True)  # type: ignore[arg-type]
    dry, wet = (None if cup is None else Datum(amount(cup), origin) for cup in (value.dry, value.wet))
    return VapourFigures(basis, dry, wet, False)  # type: ignore[arg-type]


def other(sources: Sources, key: str, *, listed: bool = True) -> Datum | None:
    """Density, specific heat and other single figures, by precedence; `listed`: the catalogue carries it."""
    for entry, chosen_by in sources.stated():
        value = getattr(entry, key, None)
        if value is not None:
            return Datum(amount(value), stated_origin(entry, chosen_by, sources.where))
    return getattr(sources.catalogue, key) if listed and sources.catalogue else None
