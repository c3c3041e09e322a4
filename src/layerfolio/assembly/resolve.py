"""From the project file to resolved assemblies: names to figures, defaults, and who chose each one."""

from typing import TYPE_CHECKING, Any

from layerfolio.assembly.cautions import cautions
from layerfolio.assembly.layers import Context, layer
from layerfolio.assembly.members import share_is_known
from layerfolio.assembly.types import Assembly, Choice, Direction, Kind
from layerfolio.catalogue import code_tables, materials
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.problems import Caution, Problem

if TYPE_CHECKING:
    from layerfolio.assembly.beside import Stated

WALL_FROM = 60.0
"""Degrees from horizontal from which an assembly counts as a wall (NBC 2020, 9.36.2.1.(3); ISO 6946: within 30 of vertical)."""


BESIDE = ("completions", "roof_space", "unheated_space", "inverted_roof")
"""What an assembly states beside its layers (assembly.beside.Stated), by the names it has there and here."""


def resolve(project: Any) -> tuple[dict[str, Assembly], tuple[Caution, ...]]:
    """Every assembly of a project whose names were checked (dossier.open_project), in file order; what to look at again."""
    tables = code_tables.load(project.code.set)
    found = {name: _assembly(name, given, project, tables) for name, given in project.assemblies.items()}
    return found, tuple(caution for one in found.values() for caution in cautions(one))


def thickness_problems(project: Any) -> list[Problem]:
    """Layers whose figures go with a thickness that is not stated. The line is 0: the reading room knows the place."""
    found = []
    for name, assembly in project.assemblies.items():
        for number, one in enumerate(assembly.layers):
            if one.thickness is None and one.material and not _as_built(one, project):
                path = f"assemblies.{name}.layers[{number}]"
                found.append(Problem("", 0, 0, path, f"the thickness of {one.material} is missing", "thickness: 15 mm"))
    return found


def framing_problems(project: Any) -> list[Problem]:
    """Framing whose share of the area nothing tells: no fraction, no row of the set's table, no width."""
    tables = code_tables.load(project.code.set)
    found = []
    for name, assembly in project.assemblies.items():
        for number, one in enumerate(assembly.layers):
            for key, framing in (("framing", one.framing), ("battens", one.battens)):
                if framing is not None and not share_is_known(framing, assembly.kind, tables, key == "battens"):
                    path = f"assemblies.{name}.layers[{number}].{key}"
                    words = "how much of the area it takes is not known: width, or fraction"
                    found.append(Problem("", 0, 0, path, words, "width: 38 mm"))
    return found


def _as_built(given: Any, project: Any) -> bool:
    """Whether the layer's heat figure holds without a thickness: stated resistance, or a product listed as built."""
    own = project.materials.get(given.material)
    if given.resistance is not None or (own is not None and own.resistance is not None):
        return True
    listed = _catalogue(given.material) if own is None else None
    return listed is not None and (listed.membrane or (listed.resistance is not None and listed.resistance_at is None))


def _assembly(name: str, given: Any, project: Any, tables: code_tables.CodeTables, still: bool = False) -> Assembly:
    """`still`: its slightly ventilated cavities are taken as still ones, for the sets that weigh both."""
    slope, faces = given.slope.value, given.faces
    direction = heat_direction(given.kind, slope)
    counted, choices, openings = _cavities(given.layers, tables, still)
    ventilated = "ventilated" in counted
    beside = _stated(given, project.code.set)
    inside, outside, film_choices = _films(given, direction, faces, ventilated, tables, bool(beside and beside.roof_space))
    context = Context(name, given.kind, direction, tables, dict(project.materials), _catalogue, beside and beside.completions)
    last = max((i for i, cavity in enumerate(counted) if cavity == "ventilated"), default=-1)
    layers = []
    for i, (one, cavity) in enumerate(zip(given.layers, counted, strict=True)):
        made, chosen = layer(i + 1, one.name, one, context, i > last, cavity)
        layers.append(made)
        choices += chosen if i > last else []
    if ventilated:
        choices.insert(0, _not_counting(last + 1, openings))
    return Assembly(
        name=name, kind=given.kind, title=given.title or name, area=given.area, faces=faces, slope=slope,
        heat_direction=direction, set_id=project.code.set, method=tables.method,
        inside_film=inside, outside_film=outside,
        layers=tuple(layers),
        choices=(*film_choices, *choices, *(beside.choices if beside else ())),
        ground=_ground(given),
        path=f"assemblies.{name}",
        still=_assembly(name, given, project, tables, still=True) if openings is not None else None,
        openings=openings,
        **({key: getattr(beside, key) for key in BESIDE} if beside else {}),
    )  # fmt: skip


def _stated(given: Any, set_id: str) -> "Stated | None":
    """Corrections and unheated spaces; what reads them is loaded only where one is stated."""
    keys = ("roof_space", "unheated_space", "inverted_roof")
    from_layers = any(getattr(x, "fasteners", None) or getattr(x, "air_voids", None) is not None for x in given.layers)
    if not (from_layers or any(getattr(given, key, None) for key in keys)):
        return None
    from layerfolio.assembly.completions import stated

    return stated(given, set_id)


def _not_counting(last: int, openings: float | None) -> Choice:
    """What a ventilated cavity leaves out; of a slightly ventilated one, only the total that takes it as well ventilated does."""
    words = "the ventilated cavity and what lies outside it count for nothing, for heat and for vapour"
    if openings is not None:
        words = "that is the total with the cavity well ventilated; the transmittance lies between it and that with still air"
    return Choice(f"{_numbers(last)} not count", words)


def _numbers(last: int) -> str:
    return "Layer 1 does" if last == 1 else "Layers 1 and 2 do" if last == 2 else f"Layers 1 to {last} do"


def _catalogue(name: str):
    return materials.material(name) if name in materials.names() else None


def heat_direction(kind: Kind, slope: float) -> Direction:
    """Direction of heat flow in winter."""
    if kind in ("wall", "foundation-wall") or (kind in ("roof", "ceiling") and slope >= WALL_FROM):
        return "horizontal"
    return "up" if kind in ("roof", "ceiling") else "down"


def _cavities(layers: Any, tables: code_tables.CodeTables, still: bool) -> tuple[list[str], list[Choice], float | None]:
    """How each cavity counts ("" for other layers), and the openings (mm2/m) of those that the set weighs between the two."""
    counted, choices, openings = [], [], None
    for one in layers:
        if one.cavity != "slightly ventilated":
            counted.append(one.cavity or "")
            continue
        area = one.openings.value if one.openings else float("inf")
        rule = tables.slightly_ventilated(area)
        if rule.counts_as != "slightly ventilated":
            words = f"The slightly ventilated cavity counts as {rule.counts_as}"
            counted.append(rule.counts_as)
        else:
            words = "The slightly ventilated cavity counts between a still and a well ventilated one"
            counted.append("unventilated" if still else "ventilated")
            openings = None if still else max(area, openings or 0.0)
        choices.append(Choice(words, rule.because, rule.origin.source))
    return counted, choices, openings


def _films(
    given: Any, direction: Direction, faces: str, ventilated: bool, tables: code_tables.CodeTables, roofed: bool
) -> tuple[Datum, Datum, list[Choice]]:
    """Inside and outside film: as stated in `surfaces`, else the set's data; the choices taken.

    `roofed`: an unheated roof space counts as a layer, so that the film is that of the roof's outer face.
    """
    inside = tables.film("inside", direction)
    faces = "outside air" if roofed else faces
    outside = tables.film("outside", direction, faces, ventilated)
    choice = tables.film_choice("outside", direction, faces, ventilated)
    choices = [Choice(choice.text[:1].upper() + choice.text[1:], choice.because, choice.source)] if choice else []
    surfaces = given.surfaces
    origin = Origin("layer", f"project file, surfaces of {given.title or given.kind}")
    if surfaces and surfaces.inside is not None:
        inside = Datum(surfaces.inside.value, origin)
    if surfaces and surfaces.outside is not None:
        outside, choices = Datum(surfaces.outside.value, origin), []
    return inside, outside, choices


def _ground(given: Any) -> dict:
    ground = getattr(given, "ground", None)
    if ground is None:
        return {}
    return _plain(ground)


def _plain(record: Any) -> dict:
    """What a record states, as plain values: SI figures (openings of a length in mm2/m), words, records within as dicts; its
    documents stay with the project.
    """
    values = {key: getattr(record, key) for key in sorted(record.stated) if key != "evidence"}
    return {
        key: _plain(value) if hasattr(value, "stated") else getattr(value, "value", value)
        for key, value in values.items()
        if value is not None
    }
