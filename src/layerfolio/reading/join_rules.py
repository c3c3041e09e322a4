"""Rules between joins, the foundation and the parts that they name: what cannot be drawn is said and stops nothing."""

from layerfolio.reading.join_words import WORDS, is_of_window, place_of_join
from layerfolio.reading.joins import Join
from layerfolio.reading.report import Report, nearest, quoted
from layerfolio.reading.schema import Project
from layerfolio.reading.tree import Mapping, Sequence

NEEDS = {
    "sill": (("wall",), ("slab", "floor")), "rim": (("wall",), ("floor",)), "eave": (("wall",), ("roof", "ceiling")),
    "verge": (("wall",), ("roof",)), "ridge": (("roof",),), "outside corner": (("wall",),), "inside corner": (("wall",),),
    "penetration": (("wall",),),
}  # fmt: skip
"""The kinds of assembly that each place needs; those that a join leaves out are taken from the project where it has them."""
NAMED = {"rim": ("floor",)}
"""Kinds that a join has to name, for nothing tells which one is meant."""


def check_joins(project: Project, node: Mapping, report: Report) -> None:
    """Keys that belong to another place; cautions on joins that nothing is drawn of, and on a foundation that the rest of the
    file contradicts.
    """
    listed = node.items.get("joins")
    stated = listed.items if isinstance(listed, Sequence) else []
    for number, join in enumerate(project.joins if len(stated) == len(project.joins) else ()):
        _join(project, join, stated[number], f"joins[{number}]", report)
    if project.foundation:
        _foundation(project, report)


def _join(project: Project, join: Join, node: Mapping, path: str, report: Report) -> None:
    if not join.at:
        return
    place = place_of_join(join.at, any(name in project.openings for name in join.of))
    if not place:
        near = nearest(join.at, (word for words in WORDS.values() for word in words))
        hint = f"did you mean {quoted(near)}? " if near else ""
        report.caution(f"{path}.at", f"no detail is drawn for {quoted(join.at)}: {hint}drawn are {', '.join(WORDS)}")
        return
    _keys(join, place, node, path, report)
    wrong = _window(project, join.of) if is_of_window(place) else _parts(project, place, join.of)
    if wrong:
        report.caution(f"{path}.of", f"no detail is drawn of this {place}: {wrong}")
    elif is_of_window(place):
        _other_wall(project, join.of, f"{path}.of", report)


def _keys(join: Join, place: str, node: Mapping, path: str, report: Report) -> None:
    """What is stated for the drawing belongs to the place."""
    where = f"{'an' if place[0] in 'aeiou' else 'a'} {place}"
    for word, belongs, fits, example in (
        ("overhang", "an eave or verge", place in ("eave", "verge"), "{at: eave, of: [W1, R1], overhang: 400 mm}"),
        ("frame_set", "a window", is_of_window(place), "{at: window, of: [W1, A1], frame_set: in the framing}"),
    ):
        if word in join.stated and not fits:
            message = f"{word} has no meaning at {where}: it belongs to {belongs}"
            report.problem(node.keys[word], f"{path}.{word}", message, example)


def _parts(project: Project, place: str, names: tuple[str, ...]) -> str:
    """What the join lacks; one that names a part of the wrong kind is drawn to say so."""
    have = [one.kind for one in project.assemblies.values()]
    named = [project.assemblies[name].kind for name in names if name in project.assemblies]
    if place == "penetration" and named and "wall" not in named:
        return "pipes are drawn through walls alone"
    for kinds in NEEDS[place]:
        if place in NAMED and kinds == NAMED[place]:
            if len(named) < 2 and not set(kinds) & set(named):
                return f"name the {' or '.join(kinds)} too"
        elif not set(kinds) & set(have) and len(named) < 2:
            return f"the project has no {' or '.join(kinds)}"
    return ""


def _window(project: Project, names: tuple[str, ...]) -> str:
    openings = [project.openings[name] for name in names if name in project.openings]
    if not openings:
        openings = [one for one in project.openings.values() if one.in_ in names and one.kind == "window"]
    if not openings:
        return "name the opening too"
    holders = (project.assemblies.get(one.in_) for one in openings)
    return "" if any(one is not None and one.kind == "wall" for one in holders) else "openings are drawn in walls alone"


def _other_wall(project: Project, names: tuple[str, ...], path: str, report: Report) -> None:
    walls = [name for name in names if name in project.assemblies]
    for name in names:
        opening = project.openings.get(name)
        if opening and walls and opening.in_ not in walls:
            report.caution(path, f"{name} is in {opening.in_}, which this join does not name")


def _foundation(project: Project, report: Report) -> None:
    """Kind and level against floors and walls."""
    kind, level = project.foundation.kind, project.foundation.ground_level
    kinds = {one.kind for one in project.assemblies.values()}
    if kind == "slab edge" and "slab" not in kinds and project.assemblies:
        report.caution("foundation.kind", f"{quoted(kind)} is stated, and no assembly is a slab")
    elif kind in ("piers", "piles") and "slab" in kinds and "floor" not in kinds:
        report.caution("foundation.kind", f"{quoted(kind)} are stated, and the only floor is a slab: is a floor meant?")
    if level is None:
        return
    if level.value > 0 and "foundation-wall" not in kinds:
        words = f"{level.text} puts the ground over the finished floor: write a figure below zero where it is lower"
        report.caution("foundation.ground_level", words)
    for name, one in project.assemblies.items():
        clear = one.clearance_to_ground
        if one.kind == "wall" and clear and level.value + clear.value > 1e-9:
            words = f"cladding of {name} that ends {clear.text} over such ground ends over the finished floor: are both meant?"
            report.caution("foundation.ground_level", words)
