"""From the project file to resolved assemblies: names to figures, defaults, and who chose each one."""

from typing import Any

from layerfolio.assembly.layers import Context, layer
from layerfolio.assembly.types import Assembly, Choice, Direction, Kind
from layerfolio.catalogue import code_sets, code_tables, materials
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.problems import Caution, Problem, ProblemsFound

WALL_FROM = 60.0
"""Degrees from horizontal from which an assembly counts as a wall (NBC 2020, 9.36.2.1.(3); ISO 6946: within 30 of vertical)."""

SLOPES: dict[str, float] = {"wall": 90, "foundation-wall": 90, "roof": 0, "ceiling": 0, "floor": 0, "slab": 0}


def resolve(loaded: Any) -> tuple[dict[str, Assembly], tuple[Caution, ...]]:
    """Every assembly of the project in file order, and what the person should read.

    Raises ProblemsFound for unknown materials, sets and zones, all of them, each with its line.
    """
    project = loaded.project
    problems = _unknown_names(loaded)
    if problems:
        raise ProblemsFound(problems)
    tables = code_tables.load(project.code.set)
    found = {name: _assembly(name, given, project, tables) for name, given in project.assemblies.items()}
    cautions = [caution for one in found.values() for caution in _cautions(one)]
    return found, tuple(cautions)


def _unknown_names(loaded: Any) -> list[Problem]:
    project, found = loaded.project, []
    sets = code_sets.set_ids()
    if project.code.set not in sets:
        known = ", ".join(sets)
        found.append(loaded.problem_at("code.set", f"there is no code set {project.code.set!r}; known: {known}", sets[-1]))
    elif project.code.zone is not None and (zones := code_sets.zones(project.code.set)) and project.code.zone not in zones:
        words = f"{project.code.set} has no zone {project.code.zone!r}; it has {', '.join(zones)}"
        found.append(loaded.problem_at("code.zone", words, f'"{zones[-1]}"'))
    for path, name in _material_names(project):
        if name not in project.materials and name not in materials.names():
            near = (*_near_own(name, project.materials), *materials.nearest(name))[:3]
            hint = f"did you mean {' or '.join(near)}? " if near else ""
            words = f"no material {name!r} in this file or the catalogue. {hint}".strip()
            found.append(loaded.problem_at(path, words, "layerfolio list materials"))
    return found


def _near_own(name: str, own: Any) -> tuple[str, ...]:
    from difflib import get_close_matches

    return tuple(get_close_matches(name, list(own), 2, 0.7))


def _material_names(project: Any) -> list[tuple[str, str]]:
    """(path in the file, material name) of every layer, framing and batten that names one."""
    found = []
    for name, given in project.assemblies.items():
        for i, one in enumerate(given.layers):
            place = f"assemblies.{name}.layers[{i}]"
            for key, part in (("", one), (".framing", one.framing), (".battens", one.battens)):
                if part is not None and part.material:
                    found.append((f"{place}{key}.material", part.material))
    return found


def _assembly(name: str, given: Any, project: Any, tables: code_tables.CodeTables) -> Assembly:
    slope = given.slope.value if given.slope is not None else SLOPES[given.kind]
    direction = heat_direction(given.kind, slope)
    faces = given.faces or ("ground" if given.kind in ("slab", "foundation-wall") else "outside air")
    counted, choices = _cavities(given.layers, tables)
    ventilated = "ventilated" in counted
    inside, outside, film_choices = _films(given, direction, faces, ventilated, tables)
    context = Context(name, given.kind, direction, tables, dict(project.materials), _catalogue)
    last = max((i for i, cavity in enumerate(counted) if cavity == "ventilated"), default=-1)
    layers = []
    for i, (one, unique, cavity) in enumerate(zip(given.layers, unique_names(given.layers), counted, strict=True)):
        made, chosen = layer(i + 1, unique, one, context, i > last, cavity)
        layers.append(made)
        choices += chosen if i > last else []
    if ventilated:
        layer_words = "the ventilated cavity and what lies outside it count for nothing, for heat and for vapour"
        choices.insert(0, Choice(f"Layers 1 to {last + 1} do not count", layer_words))
    return Assembly(
        name=name, kind=given.kind, title=given.title or name, area=given.area, faces=faces, slope=slope,
        heat_direction=direction, set_id=project.code.set, method=tables.method, inside_film=inside, outside_film=outside,
        layers=tuple(layers), choices=(*film_choices, *choices), ground=_ground(given), path=f"assemblies.{name}",
    )  # fmt: skip


def _catalogue(name: str):
    return materials.material(name) if name in materials.names() else None


def heat_direction(kind: Kind, slope: float) -> Direction:
    """Direction of heat flow in winter."""
    if kind in ("wall", "foundation-wall") or (kind in ("roof", "ceiling") and slope >= WALL_FROM):
        return "horizontal"
    return "up" if kind in ("roof", "ceiling") else "down"


def unique_names(layers: Any) -> list[str]:
    """Name, else material, else kind of cavity; repeats get ' 2', ' 3'."""
    seen: dict[str, int] = {}
    found = []
    for one in layers:
        words = one.name or one.material or one.membrane or (f"{one.cavity} cavity" if one.cavity else "layer")
        seen[words] = seen.get(words, 0) + 1
        found.append(words if seen[words] == 1 else f"{words} {seen[words]}")
    return found


def _cavities(layers: Any, tables: code_tables.CodeTables) -> tuple[list[str], list[Choice]]:
    """How each cavity counts ("" for other layers); a slightly ventilated one counts as its openings say."""
    counted, choices = [], []
    for one in layers:
        if one.cavity != "slightly ventilated":
            counted.append(one.cavity or "")
            continue
        rule = tables.slightly_ventilated(one.openings.value if one.openings else float("inf"))
        counts_as = "unventilated" if rule.counts_as == "unventilated" else "ventilated"
        counted.append(counts_as)
        because = rule.because if rule.counts_as == counts_as else "the cautious reading: no credit between the two limits"
        choices.append(Choice(f"The slightly ventilated cavity counts as {counts_as}", because, rule.origin.source))
    return counted, choices


def _films(
    given: Any, direction: Direction, faces: str, ventilated: bool, tables: code_tables.CodeTables
) -> tuple[Datum, Datum, list[Choice]]:
    """Inside and outside film: as stated in `surfaces`, else the set's data; the choices taken."""
    inside = tables.film("inside", direction)
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
    values = {key: getattr(ground, key) for key in type(ground).model_fields}
    return {key: getattr(value, "value", value) for key, value in values.items() if value is not None}


def _cautions(assembly: Assembly) -> list[Caution]:
    """What looks turned round or forgotten."""
    found = []
    weather = [one for one in assembly.layers if "weather face" in one.serves or one.cavity == "ventilated"]
    main = max((one for one in assembly.layers if one.insulating), key=lambda x: x.thickness.value if x.thickness else 0, default=None)
    for one in weather:
        if main and one.number > main.number:
            words = f"layer {one.number} ({one.title}) lies on the room side of the insulation: layers are listed from the outside in"
            found.append(Caution(one.path, words))
    if assembly.kind not in ("slab", "foundation-wall") and not any("vapour control" in x.serves for x in assembly.layers):
        found.append(Caution(assembly.path, f"{assembly.name}: no layer serves vapour control"))
    return found
