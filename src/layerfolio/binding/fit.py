"""A value in a cell that it may be too wide for: a smaller step first, then two lines, at last cut at a word."""

from bisect import bisect_right
from dataclasses import dataclass

from layerfolio.binding.measure import width

ELLIPSIS = "…"


@dataclass(frozen=True, slots=True)
class Fitted:
    """Lines and their size in points."""

    lines: tuple[str, ...]
    size: float


def fit(text: str, room: float, sizes: tuple[float, ...], style: str = "regular", lines: int = 1) -> Fitted:
    """The text in the largest of `sizes` that takes one line, else in the last size on up to `lines` lines."""
    for size in sizes:
        if width(text, size, style) <= room:
            return Fitted((text,), size)
    size = sizes[-1]
    taken: list[str] = []
    rest = text
    while rest and len(taken) < lines - 1:
        head, rest = _first(rest, room, size, style)
        taken.append(head)
    if rest:
        taken.append(rest if width(rest, size, style) <= room else cut(rest, room, size, style))
    return Fitted(tuple(taken), size)


def cut(text: str, room: float, size: float, style: str = "regular") -> str:
    """As many whole words as fit, with an ellipsis; a first word that is too wide is cut inside."""
    head, _ = _first(text, room - width(ELLIPSIS, size, style), size, style)
    return head.rstrip(" ,;:.") + ELLIPSIS


def _first(text: str, room: float, size: float, style: str) -> tuple[str, str]:
    """(what fits on a line, the rest)."""
    count = max(1, bisect_right(range(1, len(text) + 1), room, key=lambda n: width(text[:n], size, style)))
    if count < len(text):
        at = text.rfind(" ", 0, count + 1)
        if at > 0:
            return text[:at], text[at + 1 :]
        count = text.rfind("-", 0, count) + 1 or count
    return text[:count], text[count:]
