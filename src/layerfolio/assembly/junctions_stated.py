"""The joins of the project file as junctions: which parts each means, in the order in which they are drawn."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from layerfolio.assembly.courses import courses
from layerfolio.assembly.junction_drafts import (
    FLOORS,
    PARTNERS,
    SLOPED,
    STEEPEST,
    Draft,
    insulated,
    main_floor,
    main_roof,
    main_wall,
)  # fmt: skip
from layerfolio.assembly.junction_titles import called
from layerfolio.assembly.types import Assembly, Choice
from layerfolio.reading.join_words import EDGES, is_of_window, place_of_join

NOT_NAMED = "the join names none"


def stated(project: Any, assemblies: Mapping[str, Assembly]) -> Iterator[Draft]:
    """Every join whose words mean a place that is drawn; those that lack a part no assembly can give are left out."""
    openings = getattr(project, "openings", None) or {}
    for number, join in enumerate(getattr(project, "joins", None) or ()):
        place = place_of_join(join.at, any(name in openings for name in join.of))
        if not place:
            continue
        drafts = _windows(place, join, openings, assemblies) if is_of_window(place) else _meeting(place, join, assemblies)
        yield from (replace(one, path=f"joins[{number}]") for one in drafts)


def _meeting(place: str, join: Any, assemblies: Mapping[str, Assembly]) -> Iterator[Draft]:
    first_kind, second_kinds = PARTNERS[place]
    named = [assemblies[name] for name in join.of if name in assemblies]
    firsts = [one for one in named if one.kind == first_kind]
    strays = [one for one in named if one.kind not in (first_kind, *second_kinds)]
    choices = ()
    if not firsts and place == "penetration" and named:
        return  # a pipe through a roof or floor has no drawing; reading says so
    if not firsts:
        found = _main(first_kind, assemblies)
        if found is None:
            return
        firsts, choices = [found], (_taken(found, place),)
    if place.endswith("corner"):
        yield _corner(place, join, firsts, choices)
        return
    if not second_kinds:
        yield from (Draft(place, (one.name,), choices, join=join, cannot=_flat(place, one)) for one in firsts)
        return
    seconds = [one for one in named if one.kind in second_kinds and one not in firsts]
    if not seconds and not strays:
        found = _second(place, second_kinds, assemblies)
        if found is None:
            return
        seconds, choices = [found], (*choices, _taken(found, place))
    for one in firsts:
        for other in seconds or strays[:1]:
            yield Draft(place, (one.name, other.name), choices, join=join, cannot=cannot(place, one, other))


def _corner(place: str, join: Any, walls: Sequence[Assembly], choices: tuple[Choice, ...]) -> Draft:
    names = tuple(dict.fromkeys(one.name for one in walls))[:2]
    return Draft(place, names, choices, join=join)


def _main(kind: str, assemblies: Mapping[str, Assembly]) -> Assembly | None:
    found = main_wall(assemblies) if kind == "wall" else main_roof(assemblies)
    return found if found and found.kind == kind else None


def _second(place: str, kinds: Sequence[str], assemblies: Mapping[str, Assembly]) -> Assembly | None:
    """The part that a join leaves out; which floor lies between storeys nobody can guess."""
    if place == "rim":
        return None
    found = main_floor(assemblies) if kinds == FLOORS else main_roof(assemblies)
    return found if found and found.kind in kinds else None


def _taken(found: Assembly, place: str) -> Choice:
    words = called(found)
    return Choice(f"{words[0].upper()}{words[1:]} is taken for the {place}", NOT_NAMED)


def _flat(place: str, assembly: Assembly) -> str:
    if place == "ridge" and assembly.slope < SLOPED:
        return f"{called(assembly)} is flat: it has no ridge"
    if place == "ridge" and assembly.slope > STEEPEST:
        return f"{called(assembly)} is steeper than {STEEPEST:g} degrees: no ridge is drawn"
    return ""


def cannot(place: str, wall: Assembly, other: Assembly) -> str:
    """Why the two cannot meet there; empty where they can."""
    wanted = PARTNERS[place][1]
    if other.kind not in wanted:
        return f"{called(other)} is no {' or '.join(wanted)}: {'an' if place[0] in 'aeiou' else 'a'} {place} needs one"
    if place in ("eave", "verge") and other.kind == "roof" and other.slope > STEEPEST:
        return f"{called(other)} is steeper than {STEEPEST:g} degrees and meets no wall as a roof"
    if other.kind == "ceiling" and insulated(other) and not _over_plate(other):
        return f"all insulation of {called(other)} lies below what carries it: none reaches over the plate of wall {wall.name}"
    return ""


def _over_plate(ceiling: Assembly) -> bool:
    return any(one.layer.insulating and one.zone != "inner" for one in courses(ceiling))


def _windows(place: str, join: Any, openings: Mapping[str, Any], assemblies: Mapping[str, Assembly]) -> Iterator[Draft]:
    """One opening stands for all that the join names in one wall, a window before a door."""
    names = [name for name in join.of if name in openings]
    walls = [name for name in join.of if name in assemblies]
    if not names:
        names = [name for name, one in openings.items() if one.in_ in walls and one.kind == "window"]
    held = {name: openings[name].in_ for name in names if _upright(openings[name], assemblies)}
    for wall in dict.fromkeys(held.values()):
        its = [name for name, holder in held.items() if holder == wall]
        shown = next((name for name in its if openings[name].kind == "window"), its[0])
        alike = [name for name in its if name != shown]
        for edge in _edges(place, openings[shown].kind):
            yield Draft(f"window {edge}", (wall, shown), tuple(_stands_for(shown, alike, edge, openings)), shown, join)


def _stands_for(shown: str, alike: Sequence[str], edge: str, openings: Mapping[str, Any]) -> Iterator[Choice]:
    """What one opening stands for; a door has a threshold in place of a sill."""
    doors = [name for name in alike if openings[name].kind != "window"] if edge == "sill" else []
    same = [name for name in alike if name not in doors]
    if same:
        yield Choice(f"{shown} is drawn for {listed(same)} too", "one opening stands for all of the join")
    if doors:
        yield Choice(f"The threshold of {listed(doors)} is not drawn", "it is another detail than the sill of a window")


def _upright(opening: Any, assemblies: Mapping[str, Assembly]) -> bool:
    return opening.in_ in assemblies and assemblies[opening.in_].kind == "wall"


def _edges(place: str, kind: str) -> tuple[str, ...]:
    """All of a window; of a door no sill, for its threshold is another detail."""
    wanted = EDGES if place == "window" else (place.removeprefix("window "),)
    return tuple(one for one in wanted if one != "sill" or kind == "window")


def listed(names: Sequence[str]) -> str:
    """Names in a sentence: "A2, A3 and D1"; nothing for none."""
    return " and ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))
