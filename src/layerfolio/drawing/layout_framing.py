"""Where members stand along the section, and whether the cut goes across them or they are seen along their length."""

from dataclasses import dataclass, replace
from typing import Literal

from layerfolio.assembly.types import Assembly, Member
from layerfolio.drawing.layout_stack import Band, Stack

View = Literal["plan", "level", "slope", "upright"]  # upright: a wall cut from top to bottom
FIRST = 7.0  # mm: middle of the first member from the break line
CLEAR = 0.6  # between a member and the break line at least
TORN, TORN_CAVITY = 0.62, 0.80  # of the length: here a bay ends and the member beyond shows
LONE = 0.72
DRIFT = 0.14  # of the depth: how far a torn edge drifts from top to bottom
_TURNS = {"up the slope": "vertical", "across the slope": "horizontal"}


@dataclass(frozen=True, slots=True)
class Framing:
    """The members of one band. `centres` along the section for members cut across; empty when seen along or not drawn.

    `width` and `spacing` in paper mm, 0 when unknown.
    """

    band: Band
    member: Member
    seen: Literal["cut", "along", "no"]
    centres: tuple[float, ...] = ()
    width: float = 0.0
    spacing: float = 0.0
    torn: float = 0.0  # where the bay ends and a member seen along begins

    @property
    def tag(self) -> str:
        return f"{self.band.layer.number}a"

    @property
    def intervals(self) -> tuple[tuple[float, float], ...]:
        return tuple((one - self.width / 2, one + self.width / 2) for one in self.centres)


def view_of(assembly: Assembly) -> View:
    """Walls are cut level and seen from above; roofs that slope are cut along the slope; the rest stands upright."""
    if assembly.kind in ("wall", "foundation-wall"):
        return "plan"
    return "slope" if assembly.kind == "roof" and assembly.slope > 5 else "level"


def framings(
    stack: Stack, view: View, length: float, first: float = FIRST, lone: float = LONE
) -> tuple[Framing, ...]:
    """All framings of a stack in drawn order, members placed; `lone` is the share of the length for a single one."""
    found = [_sized(band, stack.scale) for band in stack.bands if band.layer.member and band.form == "body"]
    main = main_framing(found)
    seen = [_seen(one, main, view) for one in found]
    seen = [_torn(one, length) for one in seen]
    lead = next((one for one in seen if main and one.band is main.band and one.seen == "cut"), None)
    lead = lead or max((one for one in seen if one.seen == "cut"), key=lambda one: one.band.depth, default=None)
    if lead is None:
        return tuple(seen)
    same = [one.width for one in seen if one.seen == "cut" and abs(one.spacing - lead.spacing) < 0.01]
    start = max(first, max(same) / 2 + CLEAR)
    if lead.spacing + start > length:
        start = max(start, lone * length)
    elif view != "slope":  # the last member near the tags: its leader crosses nothing else
        start += (length - 2 * start) % lead.spacing if length > 2 * start else 0.0
    return tuple(_placed(one, lead, start, length) for one in seen)


def main_framing(found: list[Framing], any_way: bool = False) -> Framing | None:
    """The framing that carries: of the deepest solid layer, else of the deepest cavity; `any_way`: seen along or cut."""
    known = [one for one in found if one.seen == "cut" or (any_way and one.seen == "along")]
    return max(known, key=lambda one: (one.band.layer.kind == "solid", one.band.depth), default=None)


def _sized(band: Band, scale: float) -> Framing:
    member = band.layer.member
    if member.width is None or member.spacing is None or member.spacing.value <= member.width.value:
        return Framing(band, member, "no")
    return Framing(band, member, "cut", (), member.width.value * 1000 / scale, member.spacing.value * 1000 / scale)


def _seen(one: Framing, main: Framing | None, view: View) -> Framing:
    """Members of known direction are cut when they run at right angles to the paper."""
    if one.seen == "no":
        return one
    direction = _TURNS.get(one.member.direction, one.member.direction)
    if view == "plan":
        along = direction == "horizontal"
    elif view == "upright":
        along = direction != "horizontal"
    elif view == "slope":
        battens = one.band.layer.kind == "cavity" and one.band.layer.cavity == "unventilated"
        along = direction == "vertical" or (not direction and not battens)
    else:
        lead = _TURNS.get(main.member.direction, main.member.direction) if main else ""
        along = bool(direction and lead and direction != lead)
    return replace(one, seen="along" if along else "cut")


def _torn(one: Framing, length: float) -> Framing:
    if one.seen != "along":
        return one
    return replace(one, torn=(TORN_CAVITY if one.band.layer.kind == "cavity" else TORN) * length)


def _placed(one: Framing, lead: Framing, start: float, length: float) -> Framing:
    if one.seen != "cut":
        return one
    ratio = one.spacing / lead.spacing
    if one.band is lead.band or abs(ratio - 1) < 1e-4 or abs(ratio - 0.5) < 1e-4:
        first = start
    else:
        count = max(1, int((length - one.width - 6) / one.spacing) + 1)
        first = (length - (count - 1) * one.spacing) / 2
    if abs(ratio - 1) < 1e-4 and _beside(one, lead):
        first += one.spacing / 2
    return replace(one, centres=_centres(first, one, length))


def _beside(one: Framing, lead: Framing) -> bool:
    """Whether one of two framings in solid layers is staggered against the other."""
    both_solid = one.band.layer.kind == lead.band.layer.kind == "solid"
    return one.band is not lead.band and (one.member.staggered or (lead.member.staggered and both_solid))


def _centres(first: float, one: Framing, length: float) -> tuple[float, ...]:
    """Every centre whose member shows between the break lines."""
    before = int((first + one.width / 2) / one.spacing)
    start = first - before * one.spacing
    found, at = [], start
    while at - one.width / 2 < length:
        if at + one.width / 2 > 0:
            found.append(at)
        at += one.spacing
    return tuple(found)


def fitting_length(found: tuple[Framing, ...], length: float) -> float:
    """A little less length where a break line would run through the members of the main framing."""
    lead = main_framing([one for one in found if one.seen == "cut"])
    if lead is None or len(lead.centres) < 2:
        return length
    left, right = lead.intervals[-1]
    if right <= length - CLEAR + 1e-9:
        return length
    return left - 3.0 if left > 0.6 * length else length
