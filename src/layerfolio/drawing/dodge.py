"""Texts that give way to leaders: spacing figures along their own line, the words of both sides away from the tags."""

from collections.abc import Sequence
from dataclasses import replace

from layerfolio.drawing.geometry import Outline, boxes_touch, rectangle, text_box, turned
from layerfolio.drawing.layout_tags import Leader
from layerfolio.drawing.lines import crosses_outline
from layerfolio.drawing.marks import Line, Mark, Text

FIGURE_STEPS = tuple(sign * 1.5 * step for step in range(1, 14) for sign in (1, -1))
WORD_STEPS = tuple(-3.0 * step for step in range(1, 30))
TICK = 1.5
WHITE = {"side": 1.2}  # between words and leaders; figures stand on white of their own


def clear_of_leaders(marks: Sequence[Mark], leaders: Sequence[Leader]) -> list[Mark]:
    """The same marks; a spacing figure that a leader would cross is moved, or left out where it cannot be (it stands in
    the layer table too)."""
    texts = [one for one in marks if isinstance(one, Text)]
    crossed = [one for one in texts if one.role == "spacing" and _crossed(one, leaders)]
    instead: dict[Text, Text | None] = {}
    for one in crossed:
        others = [instead.get(other, other) for other in texts if other is not one]  # where they have gone by now
        taken = [*_ticks(marks), *(text_box(other) for other in others if other is not None)]
        instead[one] = _moved(one, FIGURE_STEPS, one.turn, leaders, taken)
        if instead[one] is one:
            instead[one] = None
    kept = [instead.get(one, one) if isinstance(one, Text) else one for one in marks]
    return [one for one in kept if one is not None]


def words_clear(words: Sequence[Mark], around: Sequence[Mark], leaders: Sequence[Leader], slope: float) -> list[Mark]:
    """Words moved down the slope, or to the left, until no leader runs through them."""
    taken = [*_ticks(around), *(text_box(one) for one in around if isinstance(one, Text))]
    done: list[Mark] = []
    for one in words:
        crossed = isinstance(one, Text) and one.role == "side" and _crossed(one, leaders)
        done.append(_moved(one, WORD_STEPS, slope, leaders, taken) if crossed else one)
    return done


def _moved(text: Text, steps: Sequence[float], degrees: float, leaders: Sequence[Leader], taken: list[Outline]) -> Text:
    for step in steps:
        dx, dy = turned((step, 0.0), degrees)
        tried = replace(text, at=(text.at[0] + dx, text.at[1] + dy))
        if not _crossed(tried, leaders) and not any(boxes_touch(text_box(tried), other) for other in taken):
            return tried
    return text


def _crossed(text: Text, leaders: Sequence[Leader]) -> bool:
    box = text_box(text, WHITE.get(text.role, 0.0))
    return any(crosses_outline(one.dot, one.elbow, box) for one in leaders)


def _ticks(marks: Sequence[Mark]) -> list[Outline]:
    lines = [one.points for one in marks if isinstance(one, Line) and one.role == "tick"]
    middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in lines]
    return [rectangle(x - TICK, y - TICK, x + TICK, y + TICK) for x, y in middles]
