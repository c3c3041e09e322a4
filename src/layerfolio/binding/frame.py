"""What every page has alike: frame, centring marks, foot strip with notice band, stamp space and title block."""

from dataclasses import dataclass

from layerfolio.binding.fit import Fitted, fit
from layerfolio.binding.formats import BAND, STAMP, STRIP, TITLE_BLOCK, Format
from layerfolio.binding.measure import width
from layerfolio.binding.pen import Pen
from layerfolio.sheets.blocks import TitleBlock
from layerfolio.sheets.markup import clean

NOTICE = "The final say rests with a licensed professional and the authority having jurisdiction."
CONTINUED = ", continued"
LEFT, RIGHT = 92.0, 25.0  # of the title block
PREPARED, DATE, REVISION, SCALE = 44.0, 22.0, 11.0, 15.0
PAD = 2.0


@dataclass(frozen=True, slots=True)
class Caption:
    """What the title block says of one page; `page` and `pages` count the whole package."""

    number: str
    title: str
    scale: str
    page: int
    pages: int
    continued: bool = False


def paint_frame(pen: Pen, fmt: Format, title_block: TitleBlock, caption: Caption) -> None:
    """Everything but the content and the legend of a wide sheet."""
    left, top, right, bottom = fmt.frame
    pen.box(left, top, right - left, bottom - top, 0.7)
    _centring_marks(pen, fmt)
    _notice_band(pen, fmt)
    if fmt.fields == 2:
        middle = (left + right) / 2
        pen.rule(middle, top, middle, fmt.strip_top, 0.25)
    strip = fmt.strip_top + BAND
    _stamp_space(pen, right - TITLE_BLOCK - STAMP, strip, fmt.fields == 2)
    _title_block(pen, right - TITLE_BLOCK, strip, title_block, caption)


def _centring_marks(pen: Pen, fmt: Format) -> None:
    left, top, right, bottom = fmt.frame
    x, y, reach = (left + right) / 2, (top + bottom) / 2, 3.5
    for x1, y1, x2, y2 in (
        (x, top - reach, x, top), (x, bottom, x, bottom + reach),
        (left - reach, y, left, y), (right, y, right + reach, y),
    ):  # fmt: skip
        pen.rule(x1, y1, x2, y2, 0.35)


def _notice_band(pen: Pen, fmt: Format) -> None:
    left, _, right, _ = fmt.frame
    top = fmt.strip_top
    pen.across(left, top, right - left, 0.7)
    pen.across(left, top + BAND, right - left, 0.25)
    pen.words(NOTICE, left + 4, top + 4.15, 9)
    pen.words(f"{fmt.name}, print at 100 %", right - 4, top + 4.15, 9, anchor=1)


def _stamp_space(pen: Pen, x: float, y: float, parted: bool) -> None:
    high = STRIP - BAND
    pen.rule(x + STAMP, y, x + STAMP, y + high, 0.35)
    if parted:
        pen.rule(x, y, x, y + high, 0.35)
    pen.words("Space for the authority’s stamp", x + 4, y + 3.6, 7)
    for cx, towards_x in ((x + 4, 1), (x + 67, -1)):
        for cy, towards_y in ((y + 6, 1), (y + 31, -1)):
            pen.across(cx, cy, 4 * towards_x, 0.2)
            pen.rule(cx, cy, cx, cy + 4 * towards_y, 0.2)


def _title_block(pen: Pen, x: float, y: float, block: TitleBlock, caption: Caption) -> None:
    for row in (8, 16):
        pen.across(x, y + row, LEFT, 0.25)
    pen.across(x, y + 26, LEFT + RIGHT, 0.25)
    pen.rule(x + LEFT, y, x + LEFT, y + 34, 0.25)
    project, site = clean(block.project), clean(block.site)
    _field(pen, x, y, "Project", fit(project, LEFT - 2 * PAD, (9.72, 9), "bold"), "bold")
    _field(pen, x, y + 8, "Site", fit(site, LEFT - 2 * PAD, (9,)))
    _sheet_title(pen, x, y + 16, caption)
    _bottom_row(pen, x, y + 26, block, caption)
    pen.words("Sheet no.", x + LEFT + PAD, y + 3, 7)
    number = fit(clean(caption.number), RIGHT - 4, (27.2, 19.4, 16, 12, 9.72), "bold", lines=3)
    base = y + 16.5 - 2.25 * (len(number.lines) - 1)
    for row, one in enumerate(number.lines):
        pen.words(one, x + LEFT + RIGHT / 2, base + 4.5 * row, number.size, "bold", 0.5)
    _field(pen, x + LEFT, y + 26, "Sheet", Fitted((f"{caption.page} of {caption.pages}",), 9))


def _field(
    pen: Pen, x: float, y: float, name: str, value: Fitted, style: str = "regular", baseline: float = 6.6
) -> None:
    pen.words(name, x + PAD, y + 3, 7)
    for line in value.lines:
        pen.words(line, x + PAD, y + baseline, value.size, style)
        baseline += 3.15


def _sheet_title(pen: Pen, x: float, y: float, caption: Caption) -> None:
    """13.6, else 12 or 9.72, else two lines of 9; the word "continued" is never what is cut."""
    room = LEFT - 2 * PAD
    tail = CONTINUED if caption.continued else ""
    title = clean(caption.title)
    for size, limit, base in ((13.6, 86.0, 8.3), (12.0, room, 8.3), (9.72, room, 7.6)):
        if width(title + tail, size, "bold") <= limit:
            _field(pen, x, y, "Sheet title", Fitted((title + tail,), size), "bold", base)
            return
    value = fit(title + tail, room, (9,), "bold", lines=2)
    if tail and not value.lines[-1].endswith(tail):
        value = fit(title, room - width(tail, 9, "bold"), (9,), "bold", lines=2)
        value = Fitted((*value.lines[:-1], value.lines[-1] + tail), 9)
    _field(pen, x, y, "Sheet title", value, "bold", 5.9)


def _bottom_row(pen: Pen, x: float, y: float, block: TitleBlock, caption: Caption) -> None:
    cells = (
        ("Prepared by", block.prepared_by, PREPARED, "regular"), ("Date", block.date, DATE, "regular"),
        ("Rev.", block.revision, REVISION, "bold"), ("Scale", _short_scale(caption.scale), SCALE, "regular"),
    )  # fmt: skip
    for name, value, wide, style in cells:
        _field(pen, x, y, name, fit(clean(value) or "–", wide - PAD - 1, (9,), style), style)
        x += wide
        if name != "Scale":
            pen.rule(x, y, x, y + 8, 0.25)


def _short_scale(scale: str) -> str:
    """The ratio in brackets stands for a customary scale that is too long for its cell."""
    if width(scale, 9) > SCALE - PAD - 1 and scale.endswith(")") and "(" in scale:
        return scale[scale.rindex("(") + 1 : -1]
    return scale
