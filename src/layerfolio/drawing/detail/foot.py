"""Below a detail: check bar, written scale, key of the control lines it shows."""

from layerfolio.drawing import key
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.lettering import SIZE, wide
from layerfolio.drawing.marks import Group, Text

BAR_AT = 30.0  # from the left edge
WHITE = 5.0  # between the drawing and the bar
KEY = 10.5  # from the bar's middle to the middle of the key
END = 2.4  # below the key's middle


def foot_height(letters: str) -> float:
    """Everything below the drawing's lowest mark."""
    return WHITE + key.END / 2 + (KEY + END if letters else 6.4)


def foot_groups(top: float, scale: float, units: Units, width: float, letters: str) -> list[Group]:
    """`top`: the drawing's lowest mark."""
    bar = top - WHITE - key.END / 2
    text = scale_text(scale, units)
    words = text if units == "customary" else f"Scale {text}"
    at = max(0.5, min(BAR_AT, (width - key.BAR_CUSTOMARY) / 2))
    beside = min(at + key.BAR_CUSTOMARY + 14.0, width - 1.0 - wide(words, "bold"))
    scale_words = Text((beside, bar - 0.4), words, SIZE, "bold", role="scale")
    bar_marks = tuple(key.check_bar(at, bar, units))
    if beside < at + key.BAR_CUSTOMARY + 4.0:  # a narrow page: the words stand above the bar's end
        scale_words = Text((width - 1.0, bar + 4.0), words, SIZE, "bold", "end", role="scale")
    groups = [Group("check bar", (*bar_marks, scale_words))]
    if letters:
        groups.append(Group("key", key.key_of_controls(0.0, bar - KEY, letters)))
    return groups
