"""Dimension lines: ticks, extension lines and figures, in the section's own directions."""

from dataclasses import dataclass, field
from itertools import pairwise
from math import inf

from layerfolio.drawing.figures import Figure, Units, figure, total, with_other
from layerfolio.drawing.layout_framing import Framing, main_framing
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.lettering import CAPITAL, PITCH, SIZE, middle_text, spread, wide
from layerfolio.drawing.marks import Line, Mark, Text

TICK, TICK_WIDTH = 1.3, 0.5
LINE_WIDTH, PAST, OFF = 0.25, 1.6, 1.5
FIGURE_GAP = 2.4  # chain figures end so far left of the chain
BROKEN = "broken"
UNDER = 5.7  # from a dimension line down to a figure below it


@dataclass(slots=True)
class Dimensions:
    """Marks of the dimension lines; `ticks` are their middles, for whatever has to keep clear of them."""

    marks: list[Mark] = field(default_factory=list)
    ticks: list[tuple[float, float]] = field(default_factory=list)

    def line(self, *points: tuple[float, float], role: str = "dimension") -> None:
        self.marks.append(Line(points, LINE_WIDTH, role=role))

    def tick(self, x: float, y: float) -> None:
        self.ticks.append((x, y))
        ends = ((x - TICK, y - TICK), (x + TICK, y + TICK))
        self.marks.append(Line(ends, TICK_WIDTH, role="tick"))


def links(stack: Stack) -> list[Band]:
    """The bands that have a figure in the chain."""
    return [one for one in stack.bands if one.form in ("body", "thin") and not one.nominal]


def overall(stack: Stack, units: Units) -> Figure | None:
    """Sum of the chain; None where a thickness is not given."""
    if any(one.nominal for one in stack.bands) or not links(stack):
        return None
    return total((figure(one.layer.thickness, units) for one in links(stack)), units)


def figure_room(stack: Stack, units: Units) -> float:
    """Width of the widest chain figure, mm."""
    texts = [figure(one.layer.thickness, units).text for one in links(stack)]
    texts += [BROKEN for one in stack.bands if one.cut_short]
    return max(map(wide, texts), default=0.0)


def thickness_chain(stack: Stack, units: Units, x: float) -> Dimensions:
    """One figure a layer, upright beside the chain, pushed apart where layers are thin."""
    made = Dimensions()
    bands = links(stack)
    if not bands:
        return made
    for group in _runs(bands):
        _chain_line(made, x, group)
    sizes = [2 * PITCH if one.cut_short else PITCH for one in bands]
    for band, y in zip(bands, spread([one.middle for one in bands], sizes), strict=True):
        text = figure(band.layer.thickness, units).text
        rows = [(y, text)] if not band.cut_short else [(y + PITCH / 2, text), (y - PITCH / 2, BROKEN)]
        for height, words in rows:
            made.marks.append(middle_text(x - FIGURE_GAP, height, words, anchor="end", role="thickness"))
    return made


def overall_line(stack: Stack, units: Units, x: float, sloped: bool) -> Dimensions:
    """The overall dimension; its figure reads from the right, on a slope along the falling line."""
    made = Dimensions()
    whole = overall(stack, units)
    if whole is None:
        return made
    made.line((x, PAST), (x, -stack.depth - PAST))
    for y in (0.0, -stack.depth):
        made.line((x - PAST, y), (x + PAST, y), role="extension")
        made.tick(x, y)
    metres = sum(one.layer.thickness.value for one in links(stack))
    words, middle = with_other(whole, metres, units), -stack.depth / 2
    if wide(words) + 2 * TICK + 0.6 > stack.depth:  # no room between the ticks: beyond the inner one
        middle = -stack.depth - PAST - 1.0 - wide(words) / 2
    at, turn = ((x - 1.0 - CAPITAL, middle), -90.0) if sloped else ((x - 1.0, middle), 90.0)
    made.marks.append(Text(at, words, SIZE, anchor="middle", turn=turn, role="overall"))
    return made


def spacing_lines(
    framing: tuple[Framing, ...], stack: Stack, units: Units, above: float | None, below: float, length: float = inf
) -> tuple[Dimensions, Dimensions]:
    """Spacings above the section (the framing) and below it (what is spaced otherwise); all below without `above`.

    Figures too wide for their line stand at its right end where they stay within `length`, else below it.
    """
    upper, lower = Dimensions(), Dimensions()
    lead = main_framing([one for one in framing if one.centres])
    rest = [one for one in framing if one.centres and one is not lead]
    if above is not None and lead and lead.band.layer.kind == "solid" and len(lead.centres) > 1:
        spacing_line(upper, lead, units, above, 0.0, "", length)
        _centre_lines(upper, lead, above, -stack.depth - 2.0)
    elif lead:
        rest.insert(0, lead)
    done = {round(lead.spacing, 3)} if lead and lead not in rest else set()
    several = len({round(one.spacing, 3) for one in rest} - done) > 1
    for one in rest[::-1]:
        if round(one.spacing, 3) in done or len(one.centres) < 2:
            continue
        done.add(round(one.spacing, 3))
        beyond = lead is not None and one.band.middle > lead.band.middle  # across the section from what it measures
        spacing_line(lower, one, units, below, -stack.depth, f"{one.tag}: " if several or beyond else "", length)
        below -= 7.0 if length == inf else 7.0 + UNDER - 1.1
    lower.marks.sort(key=lambda one: isinstance(one, Text))  # a figure's white field cuts the lines that pass it
    return upper, lower


def spacing_line(
    made: Dimensions, one: Framing, units: Units, y: float, feature: float, prefix: str, length: float
) -> None:
    """The spacing of one framing at `y`, extension lines from `feature`; its figure as `spacing_lines` places it."""
    sign = 1 if y > feature else -1
    shown = [x for x in one.centres if x - one.width / 2 >= 0]
    text = with_other(figure(one.member.spacing, units), one.member.spacing.value, units)
    room, spans = 2 * TICK + 0.6, len(shown) - 1
    if one.spacing < wide(prefix + text) + room and spans > 1:  # one figure for the whole run
        text, shown = f"{spans} × {text}", [shown[0], shown[-1]]
    text = prefix + text
    made.line((shown[0] - PAST, y), (shown[-1] + PAST, y))
    for x in shown:
        made.line((x, feature + sign * OFF), (x, y + sign * PAST), role="extension")
        made.tick(x, y)
    for left, right in pairwise(shown):
        if right - left >= wide(text) + room:
            made.marks.append(_figure_text((left + right) / 2, y, text, "middle"))
        elif right + 2.4 + wide(text) <= length:
            made.marks.append(_figure_text(right + 2.4, y - 1.1, text, "start"))
        else:  # beyond the section stand the tags: below the line
            made.marks.append(_figure_text((left + right) / 2, y - UNDER, text, "middle"))


def _figure_text(x: float, y: float, text: str, anchor: str) -> Text:
    return Text((x, y + 1.1), text, SIZE, anchor=anchor, box=0.1, role="spacing")


def _centre_lines(made: Dimensions, lead: Framing, top: float, bottom: float) -> None:
    for x in lead.centres:
        made.marks.append(Line(((x, top), (x, bottom)), 0.2, (5.0, 1.0, 0.6, 1.0), role="centre"))


def _runs(bands: list[Band]) -> list[list[Band]]:
    """Bands that touch form one line."""
    runs = [[bands[0]]]
    for one in bands[1:]:
        if abs(runs[-1][-1].bottom - one.top) < 1e-6:
            runs[-1].append(one)
        else:
            runs.append([one])
    return runs


def _chain_line(made: Dimensions, x: float, group: list[Band]) -> None:
    made.line((x, group[0].top + PAST), (x, group[-1].bottom - PAST))
    for y in (group[0].top, *(one.bottom for one in group)):
        made.line((x - PAST, y), (x + PAST, y), role="extension")
        made.tick(x, y)
