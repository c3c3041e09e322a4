"""Closing a drawing: the foot below it, everything moved so that it begins at 0, the section painted last of all."""

from layerfolio.assembly.types import Assembly
from layerfolio.drawing import compose, control, key, tags
from layerfolio.drawing.cut import Cut
from layerfolio.drawing.dodge import clear_of_leaders, words_clear
from layerfolio.drawing.extent import extent
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.geometry import moved
from layerfolio.drawing.layout_notes import notes_of
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.layout_tags import Leader
from layerfolio.drawing.lettering import SIZE, wide
from layerfolio.drawing.marks import Drawing, Group, Mark, Text
from layerfolio.drawing.signs import signs_of

TOP, BOTTOM = 2.0, 0.5  # mm of white


def finished(
    assembly: Assembly,
    cut: Cut,
    frame: Frame,
    around: list[Mark],
    words: list[Mark],
    leaders: tuple[Leader, ...],
    *,
    bar_at: float,
    width: float,
    with_key: bool,
) -> Drawing:
    """`around` are dimensions and bracket, all placed with `frame`; the check bar begins at `bar_at`."""
    words = words_clear(words, around, leaders, frame.turn)
    groups = [
        Group("dimensions", tuple(clear_of_leaders(around, leaders))),
        Group("leaders", tuple(tags.leaders_marks(leaders))),
        Group("tags", tuple(mark for one in leaders for mark in tags.tag_marks(one))),
        Group("words", tuple(words)),
    ]
    groups = [one for one in groups if one.marks]
    _, bottom, _, top = extent([*groups, compose.outer_marks(cut, frame)])
    text = scale_text(cut.stack.scale, cut.units)
    foot = _foot(cut, bottom, bar_at, width, with_key, text)
    low = extent(foot)[1] - BOTTOM
    x, y = frame.shift
    stations = compose.letter_stations(cut, frame, leaders)
    section, body = compose.section_group(cut, Frame(frame.turn, (x, y - low)), stations)
    placed = (section, *(moved(one, 0.0, (0.0, -low)) for one in (*groups, *foot)))
    notes = notes_of(cut, body.unknown)
    families = (*body.families, *signs_of(cut))
    return Drawing(assembly.name, width, top - low + TOP, placed, cut.stack.scale, text, families, notes)


def _foot(cut: Cut, bottom: float, bar_at: float, width: float, with_key: bool, text: str) -> list[Group]:
    """Check bar, written scale and key, below `bottom`."""
    bar = bottom - 1.6 - key.END / 2
    words = text if cut.units == "customary" else f"Scale {text}"
    beside = min(bar_at + key.BAR_CUSTOMARY + 12.5, width - 2.0 - wide(words, "bold"))
    scale = Text((beside, bar - 0.4), words, SIZE, "bold", role="scale")
    groups = [Group("check bar", (*key.check_bar(bar_at, bar, cut.units), scale))]
    letters = control.letters_used(cut.stack)
    if with_key and letters:
        groups.append(Group("key", key.key_of_controls(0.0, bar - key.KEY_DROP - 2.6, letters)))
    return groups
