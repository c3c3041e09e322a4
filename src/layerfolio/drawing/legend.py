"""Key of the hatches that a drawing or a package uses, and of the signs beside them."""

from collections.abc import Sequence
from math import ceil

from layerfolio.drawing.air import arrow, towards
from layerfolio.drawing.geometry import moved, rectangle
from layerfolio.drawing.hatches import FAMILIES, swatch
from layerfolio.drawing.key import SIGN, control_sign
from layerfolio.drawing.lettering import SIZE, middle_text, wide
from layerfolio.drawing.marks import Curve, Drawing, Group, Line, Mark, Text
from layerfolio.drawing.seams import HEAVY
from layerfolio.drawing.signs import AIR_ALONG, AIR_TOWARDS, CONTROL, FASTENER, TAPE

SWATCH = (12.3, 6.2)
PITCH, GAP = 8.6, 1.8
HEAD = 5.4  # the title above the rows
CONTROLS = 42.0  # width of the control lines
CONTROL_WORDS = {"W": "water", "A": "air", "V": "vapour", "T": "thermal"}
SIGN_WORDS = {
    AIR_TOWARDS: "moving air, towards you", AIR_ALONG: "moving air", FASTENER: "fastener, true length", TAPE: "tape over a joint",
}  # fmt: skip


def legend(families: Sequence[str], width: float, *, controls: bool = False, height: float | None = None) -> Drawing:
    """Swatches with their printed names in columns, in the order of shared/hatches.yaml; unknown families are left out.

    `families` as in `Drawing.families`: the signs among them are shown as the drawings show them. `controls` adds the
    control lines (for sheets whose drawings stand without their key); with `height` the rows move together to fit.
    """
    shown = [one for one in FAMILIES if one in families and one not in ("air", "plain")]
    shown += [one for one in ("plain",) if one in families]
    shown += [one for one in SIGN_WORDS if one in families]
    letters = [sign for sign, name in CONTROL.items() if name in families] if controls else []
    each = column_width(shown)
    columns = max(1, int((width - (CONTROLS if letters else 0.0) + 4.0) // each))
    rows = max(ceil(len(shown) / columns), len(letters), 1)
    pitch = PITCH if height is None else min(PITCH, (height - HEAD) / rows)
    total = HEAD + rows * pitch
    groups = [Group("hatches", tuple(_hatches(shown, rows, pitch, total, each)))] if shown else []
    if letters:
        at = min(columns, ceil(len(shown) / rows)) * each + 2.0
        groups.append(Group("control lines", tuple(_controls(letters, at, pitch, total))))
    return Drawing("legend", width, total, tuple(groups), None, "", tuple(shown))


def column_width(shown: Sequence[str]) -> float:
    """Swatch, the longest name, and the space to the next column."""
    return SWATCH[0] + GAP + max((wide(_name(one)) for one in shown), default=20.0) + 4.0


def _name(family: str) -> str:
    from layerfolio.catalogue.hatches import printed_name

    return SIGN_WORDS.get(family) or printed_name(family)


def _hatches(shown: list[str], rows: int, pitch: float, total: float, each: float) -> list[Mark]:
    """Column by column from the upper left."""
    marks: list[Mark] = [Text((0.0, total - 3.2), "Hatches", SIZE, "bold", role="legend title")]
    long, high = SWATCH[0], min(SWATCH[1], pitch - 1.4)
    for number, family in enumerate(shown):
        column, row = divmod(number, rows)
        x, y = column * each + 0.2, total - HEAD - (row + 1) * pitch + (pitch - high) / 2
        marks += _sign(family, x + long / 2, y + high / 2) if family in SIGN_WORDS else _swatch(family, x, y, high)
        marks.append(middle_text(x + long + GAP, y + high / 2, _name(family), role="legend"))
    return marks


def _swatch(family: str, x: float, y: float, high: float) -> list[Mark]:
    return [moved(one, 0.0, (x, y)) for one in swatch(family, SWATCH[0], high)]


def _sign(sign: str, x: float, y: float) -> tuple[Mark, ...]:
    """A sign about its middle, as the drawings show it."""
    half = SWATCH[0] / 2
    match sign:
        case one if one == TAPE:
            box = rectangle(x - half, y - 1.8, x + half, y + 0.9)
            joint, tape = ((x, y - 1.8), (x, y + 0.9)), ((x - 4.0, y + 0.9 + HEAVY / 2), (x + 4.0, y + 0.9 + HEAVY / 2))
            edge = Line((*box, box[0]), 0.35, role="face")
            return edge, Line(joint, 0.35, role="joint"), Line(tape, HEAVY, role="tape")
        case one if one == FASTENER:
            w, tip = 0.6, x + half
            corners = (("M", x - half, y - w), ("L", tip - 2.0, y - w), ("L", tip, y), ("L", tip - 2.0, y + w))
            shank = Curve((*corners, ("L", x - half, y + w), ("Z",)), 0.25, "white", role="fastener")
            return shank, Line(((x - half, y - 1.3), (x - half, y + 1.3)), 0.7, role="fastener head")
    return towards(x, y) if sign == AIR_TOWARDS else arrow(x, y)


def _controls(letters: Sequence[str], x: float, pitch: float, total: float) -> list[Mark]:
    marks: list[Mark] = [Text((x, total - 3.2), "Control lines", SIZE, "bold", role="legend title")]
    pitch = min(pitch, 6.4)
    for row, sign in enumerate(letters):
        y = total - HEAD - (row + 0.5) * pitch
        marks += control_sign(x, y, sign)
        marks.append(middle_text(x + SIGN + 1.6, y, CONTROL_WORDS[sign], role="legend"))
    return marks
