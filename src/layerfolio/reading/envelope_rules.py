"""Rules between openings, joins and the assemblies they belong to."""

import re
from collections.abc import Iterator

from layerfolio.reading.assemblies import Assembly
from layerfolio.reading.report import Report, did_you_mean, meant, nearest, quoted
from layerfolio.reading.schema import Project
from layerfolio.reading.tree import Mapping, Node, Sequence

UPRIGHT_FROM = 60.0
"""Degrees from horizontal from which an assembly holds windows and below which skylights (NBC 2020, 9.36.2.1.(3))."""
_UPRIGHT = ("wall", "foundation-wall")
_SUBJECT = re.compile(r"[A-Za-z]{1,2}[0-9]{1,3}")


def check_envelope(project: Project, node: Mapping, report: Report) -> None:
    """Report openings, joins and documents that do not fit the rest of the file."""
    walls = list(_below(node, "assemblies"))
    _names(project, node, walls, report)
    for name, opening in project.openings.items():
        where = f"openings.{name}"
        stated = node.items["openings"].items[name].items
        if opening.in_ and walls and opening.in_ not in walls:
            words = f"there is no assembly {quoted(opening.in_)}{_meant(opening.in_, walls)}"
            report.problem(stated["in"].place, f"{where}.in", words, f"in: {walls[0]}")
        elif opening.kind and (holder := project.assemblies.get(opening.in_)) and holder.kind:
            _held(where, opening.kind, holder, opening.in_, stated, report)
            _direction(where, opening, holder, report)
    _areas(project, node, report)
    _joins(project, node, [*walls, *_below(node, "openings")], report)
    _documents(project, [*walls, *_below(node, "openings")], report)


def _below(node: Mapping, key: str) -> dict[str, Node]:
    inner = node.items.get(key)
    return inner.items if isinstance(inner, Mapping) else {}


def _meant(word: str, known: list[str]) -> str:
    """Names are short: where none is near, those that begin with the same letter may be meant, W1 for W2."""
    near = [] if nearest(word, known) else [one for one in known if one[:1].casefold() == word[:1].casefold()]
    if 0 < len(near) <= 3:
        return meant(near)
    return did_you_mean(word, known) or (f": there are {', '.join(known[:12])}" if known else "")


def _names(project: Project, node: Mapping, walls: list[str], report: Report) -> None:
    """Findings point at assemblies and openings by name: no two may be alike, in capitals or not."""
    taken = {name.casefold(): ("assembly", name) for name in walls}
    for name in project.openings:
        what, first = taken.setdefault(name.casefold(), ("opening", name))
        if what == "assembly" or first != name:
            words = f"{quoted(name)} is the name of an {what} already{'' if first == name else f', {first}'}: take another"
            report.problem(node.items["openings"].keys[name], f"openings.{name}", words, f"{name[:7]}2" if name[:7] else "A1")


def _held(where: str, kind: str, holder: Assembly, name: str, stated: dict[str, Node], report: Report) -> None:
    """Whether such an assembly holds such an opening."""
    wrong = _wrong_holder(kind, holder)
    if wrong:
        key, message, example = wrong
        report.problem(stated[key].place, f"{where}.{key}", message.format(name=name), example)


def _wrong_holder(kind: str, holder: Assembly) -> tuple[str, str, str] | None:
    """The key that is wrong, what is wrong with it, and what is right."""
    if holder.kind == "slab":
        return "in", f"a slab holds no {kind}: {{name}} lies on the ground", "in: W1"
    slope = holder.slope.value if holder.slope else 90.0 if holder.kind in _UPRIGHT else 0.0
    upright = holder.kind in _UPRIGHT or (holder.kind == "roof" and slope >= UPRIGHT_FROM)
    if kind == "skylight" and (slope >= UPRIGHT_FROM or holder.kind == "floor"):
        return "kind", f"a skylight belongs to a roof or ceiling, and {{name}} is a {holder.kind}: write window", "kind: window"
    if kind in ("skylight", "hatch") or upright:
        return None
    if kind in ("window", "glass-block") and holder.kind != "floor":
        return "kind", f"a {kind} in a {holder.kind} is a skylight, and {{name}} is a {holder.kind}", "kind: skylight"
    return "kind", f"a {holder.kind} holds no {kind}, and {{name}} is a {holder.kind}: write hatch", "kind: hatch"


def _direction(where: str, opening, holder: Assembly, report: Report) -> None:
    flat = holder.slope is not None and holder.slope.value < 1.0
    if opening.kind == "skylight" and opening.orientation and flat:
        report.caution(f"{where}.orientation", f"{opening.in_} is flat: a skylight in it looks up, not {opening.orientation}")


def _areas(project: Project, node: Mapping, report: Report) -> None:
    """No opening is larger than its wall, nor all of them where the wall's area counts them."""
    totals: dict[str, float] = {}
    for name, opening in project.openings.items():
        holder = project.assemblies.get(opening.in_)
        if holder is None or holder.area is None or not (opening.width and opening.height):
            continue
        one, limit = opening.width.value * opening.height.value, holder.area.value * (1 + 1e-9)
        before = totals.get(opening.in_, 0.0)
        totals[opening.in_] = total = before + one * (opening.count or 1)
        key, where = node.items["openings"].keys[name], f"openings.{name}"
        if one > limit:
            size = f"{opening.width.text} by {opening.height.text} is {one:.4g} m2"
            words = f"{size}, more than {opening.in_} has ({holder.area.text})"
            words += "" if _gross(project, holder) else "; where its area is net of openings, state the whole of it"
            report.problem(key, where, words, f"area: {one * 2:.3g} m2, area_includes_openings: true")
        elif _gross(project, holder) and total > limit >= before:
            words = f"the openings of {opening.in_} come to {total:.4g} m2 with this one, more than its area {holder.area.text}"
            report.problem(key, where, words, f"area: {total * 1.5:.3g} m2")


def _gross(project: Project, holder: Assembly) -> bool:
    own = holder.area_includes_openings
    return bool(project.area_includes_openings if own is None else own)


def _joins(project: Project, node: Mapping, known: list[str], report: Report) -> None:
    stated = node.items.get("joins")
    for n, one in enumerate(stated.items if isinstance(stated, Sequence) else ()):
        for place, path, name in _ends(one, f"joins[{n}].of"):
            if name and known and name not in known:
                words = f"there is no assembly or opening {quoted(name)}{_meant(name, known)}"
                report.problem(place, path, words, f"of: [{', '.join(known[:2])}]")


def _ends(one: Node, path: str) -> Iterator[tuple]:
    """Place, path and text of each name that a join states, be it a list or one name."""
    of = one.items.get("of") if isinstance(one, Mapping) else None
    many = isinstance(of, Sequence)
    for n, item in enumerate(of.items if many else [of]):
        text = getattr(item, "text", "")
        if text and not getattr(item, "is_null", False):
            yield item.place, f"{path}[{n}]" if many else path, " ".join(text.split())


def _documents(project: Project, known: list[str], report: Report) -> None:
    """A document for W9 where nothing is called so speaks for nothing."""
    for n, one in enumerate(project.documents):
        for name in one.for_:
            if _SUBJECT.fullmatch(name) and name not in known and name not in project.materials:
                report.caution(f"documents[{n}].for", f"nothing is called {quoted(name)}{_meant(name, known)}")
