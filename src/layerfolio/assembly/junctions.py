"""Every place where the parts of a project meet: those that `joins` states, and what is derived where it says nothing."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from layerfolio.assembly.continuity import links
from layerfolio.assembly.junction_drafts import Draft
from layerfolio.assembly.junction_facts import with_facts
from layerfolio.assembly.junction_titles import title
from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.junctions_derived import derived
from layerfolio.assembly.junctions_stated import listed, stated
from layerfolio.assembly.types import Assembly, Choice

ORDER = (
    "sill", "rim", "window sill", "window jamb", "window head", "penetration", "eave", "verge", "ridge", "outside corner",
    "inside corner",
)  # fmt: skip
"""From the ground up, then corners, which are cut level."""


def junctions(project: Any, assemblies: Mapping[str, Assembly]) -> tuple[Junction, ...]:
    """All junctions in the order of their details, numbered from 1, those that cannot be drawn last; at most one of a kind for
    each pair of parts.

    `project` has the keys of the project file as attributes (joins, openings, foundation, assemblies); `assemblies` are its
    resolved ones. Lengths in m.
    """
    said = list(stated(project, assemblies))
    drafts = list(_once([*said, *derived(project, assemblies, said)]))
    drafts.sort(key=lambda one: (bool(one.cannot), ORDER.index(one.kind)))
    return tuple(_junction(number, one, project, assemblies) for number, one in enumerate(drafts, 1))


def _once(drafts: Iterable[Draft]) -> Iterator[Draft]:
    """The first of each kind for a pair of parts; a wall shows one opening for all that are built alike, and says for which."""
    kept: dict[tuple, Draft] = {}
    others: dict[tuple, list[str]] = {}
    for one in drafts:
        key = one.kind, one.of[0] if one.opening else one.of
        if key not in kept:
            kept[key] = one
        elif one.opening and one.opening != kept[key].opening:
            others.setdefault(key, []).append(one.opening)
    for key, one in kept.items():
        names = listed(list(dict.fromkeys(others.get(key, ()))))
        more = (Choice(f"{one.opening} is drawn for {names} too", "one opening of a wall stands for all"),) if names else ()
        yield replace(one, choices=(*one.choices, *more))


def _junction(number: int, draft: Draft, project: Any, assemblies: Mapping[str, Assembly]) -> Junction:
    bare = Junction(
        number=number,
        kind=draft.kind,
        of=draft.of,
        title=title(draft.kind, draft.of, assemblies),
        links=(),
        stated=draft.stated,
        opening=draft.opening,
        choices=draft.choices,
        cannot=draft.cannot,
        path=draft.path,
    )
    full = with_facts(bare, draft.join, project, assemblies)
    return replace(full, links=() if full.cannot else links(full, assemblies))
