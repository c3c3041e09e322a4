"""The foot of elevations: check bar with the scale beside it, and the key of the marks that are drawn."""

from collections.abc import Sequence

from layerfolio.drawing import key
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import moved, rectangle
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.lettering import SIZE, middle_text, wide
from layerfolio.drawing.marks import Curve, Group, Line, Mark, Text
from layerfolio.drawing.wall_marks import brace_marks, hold_down, opening_marks, panel_marks
from layerfolio.drawing.wall_panels import BLOCK, SEAM, STUD, STUD_DASH, TICK, TICK_WIDTH, are_drawn, sheets_of
from layerfolio.drawing.wall_views import LineView

SWATCH, ROW = 9.0, 5.6  # width of a sign, and from row to row of the key


def wall_foot(lines: Sequence[LineView], scale: int, units: Units, width: float) -> list[Mark]:
    """Check bar with the scale beside it, and the key of the marks below."""
    text = scale_text(scale, units)
    words = text if units == "customary" else f"Scale {text}"
    bar = Group("check bar", (*key.check_bar(0.2, 0.0, units), _scale_words(words, width)))
    y, x = -11.0, 0.0
    marks: list[Mark] = []
    box = rectangle(0.0, -1.9, SWATCH, 1.9)
    known = (
        ("braced wall panel", panel_marks(box), any(one.panels and not one.let_in for one in lines)),
        ("brace let in, either way", brace_marks(box), any(one.panels and one.let_in for one in lines)),
        ("opening", opening_marks(box), any(one.openings for one in lines)),
    )
    signs = [(name, sign) for name, sign, there in known if there] + _sheet_signs(lines, scale)
    if any(one.hold_downs for one in lines):
        signs.append(("hold-down as stated, sized by the engineer", [hold_down(SWATCH / 2, 1.9)]))
    for name, sign in signs:
        if x and x + SWATCH + 1.8 + wide(name) > width:
            x, y = 0.0, y - ROW
        marks += [moved(one, 0.0, (x, y)) for one in sign]
        marks.append(middle_text(x + SWATCH + 1.8, y, name, role="key"))
        x += SWATCH + 1.8 + wide(name) + 6.0
    return [bar, Group("key", tuple(marks))] if marks else [bar]


def _sheet_signs(lines: Sequence[LineView], scale: float) -> list[tuple[str, list[Mark]]]:
    """Seams, studs, blocking and fasteners as far as the elevations show them."""
    shown = [one for one in lines if one.panels and not one.let_in]
    sheets = [(one, sheets_of(panel, one)) for one in shown for panel in one.panels]
    level = any(box[1] > 0 for _, found in sheets for box in found)
    seam, stud = Line(((SWATCH / 2, -1.9), (SWATCH / 2, 1.9)), SEAM, role="seam"), ((SWATCH / 2, -1.9), (SWATCH / 2, 1.9))
    ticks = tuple(c for x in (2.25, 4.5, 6.75) for c in (("M", x, -TICK / 2), ("L", x, TICK / 2)))
    block = rectangle(0.0, -0.9, SWATCH, 0.9)
    known = (
        ("seam of sheets", [seam], any(len(found) > 1 for _, found in sheets)),
        ("stud behind", [Line(stud, STUD, STUD_DASH, role="stud behind")], any(one.stud for one in shown)),
        ("blocking behind a seam", [Line((*block, block[0]), BLOCK, STUD_DASH, role="blocking")],
         level and any(one.blocked for one in shown)),
        ("fastener", [Curve(ticks, TICK_WIDTH, role="panel fasteners")], any(are_drawn(one, scale) for one in shown)),
    )  # fmt: skip
    return [(name, sign) for name, sign, there in known if there]


def _scale_words(words: str, width: float) -> Text:
    return Text((min(114.0, width - 2.0 - wide(words, "bold")), -0.4), words, SIZE, "bold", role="scale")
