"""The head of a page: tag, title, phrase and the rule below; the large head of the cover."""

from layerfolio.binding.fit import fit
from layerfolio.binding.frame import CONTINUED
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, line, wrap_few
from layerfolio.sheets.blocks import Head
from layerfolio.sheets.markup import as_plain, plain

RULE_AT = 9.5
MOST_LINES, MOST_COVER_LINES = 3, 12
_SPACE = 5.0  # at least, between title and phrase


class HeadPiece(Piece):
    """Tag in a box, title, phrase at the far right. A title that is too wide takes a smaller step, then more lines."""

    kind = "head"

    def __init__(self, head: Head, width: float, continued: bool = False):
        self.width = width
        self.tag = _tag(head.tag, width / 4) if head.tag else None
        self.tag_width = max(9.0, self.tag.width + 4) if self.tag else 0.0
        self.phrase = wrap_few(head.phrase, width * 0.6, MOST_LINES) if head.phrase else ()
        self.x = self.tag_width + 3.5 if self.tag else 0.0
        self.size, self.title = self._title(head.title, CONTINUED if continued else "")
        self.beside = len(self.phrase) == 1 and self.title[0].width + self.phrase[0].width + _SPACE + self.x <= width
        lines = len(self.title) - 1 + (0 if self.beside else len(self.phrase))
        self.height = RULE_AT + 5.0 * lines

    def _title(self, title: str, tail: str) -> tuple[float, tuple[Line, ...]]:
        room = self.width - self.x
        beside = room - _SPACE - (self.phrase[0].width if len(self.phrase) == 1 else 0)
        for text in _titles(title, tail):
            for size in (13.6, 12.0):
                one = line(text, size, bold=True)
                if one.width <= beside:
                    return size, (one,)
        return 12.0, wrap_few(title, room, MOST_LINES, 12, True, tail)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        if self.tag:
            pen.box(x, y, self.tag_width, 8, 0.5)
            pen.set(self.tag, x + (self.tag_width - self.tag.width) / 2, y + 5.7)
        pen.set_all(self.title, x + self.x, y + 5.7, 5.0)
        foot = y + 5.7 + 5.0 * (len(self.title) - 1)
        for number, phrase in enumerate(self.phrase):
            pen.set_right(phrase, x + self.width, foot + (0 if self.beside else 5.0 * (number + 1)))
        pen.across(x, y + self.height, self.width, 0.35)


def _tag(tag: str, room: float) -> Line:
    shown = fit(as_plain(tag), room, (13.6, 9.72), "bold")
    return line(plain(shown.lines[0]), shown.size, bold=True)


def _titles(title: str, tail: str) -> list[str]:
    """A continued title may lose what stands behind its colon rather than take a second line."""
    short = title.split(":")[0]
    return [title + tail, short + tail] if tail and short != title else [title + tail]


class RulePiece(Piece):
    """What stands above the right field where the left one flows over: the same rule at the same height."""

    kind = "head"
    height = RULE_AT

    def __init__(self, width: float):
        self.width = width

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.across(x, y + self.height, self.width, 0.35)


class CoverHead(Piece):
    """Project name, what the package is, revision and date, and a strong rule."""

    kind = "head"

    def __init__(self, head: Head, width: float):
        self.width = width
        self.phrase = line(plain(fit(as_plain(head.phrase), width / 3, (13.6, 9.72), "bold").lines[0]), 13.6, bold=True)
        self.under = line(plain(fit(as_plain(head.under), width / 3, (9,)).lines[0]), 9)
        room = width - max(self.phrase.width, self.under.width) - _SPACE
        self.size, self.title = _large_title(head.title, room)
        self.leading = self.size * 0.43
        self.subtitle = wrap_few(head.subtitle, room, MOST_LINES, 13.6) if head.subtitle else ()
        self.title_foot = 11.0 + self.leading * (len(self.title) - 1)
        self.height = self.title_foot + 4.0 + 7.0 * max(1, len(self.subtitle))

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.set_all(self.title, x, y + 11.0, self.leading)
        pen.set_all(self.subtitle, x, y + self.title_foot + 7.0, 7.0)
        pen.set_right(self.phrase, x + self.width, y + 11.0)
        pen.set_right(self.under, x + self.width, y + 18.0)
        pen.across(x, y + self.height, self.width, 0.7)


def _large_title(title: str, room: float) -> tuple[float, tuple[Line, ...]]:
    for size in (27.2, 19.4):
        one = line(title, size, bold=True)
        if one.width <= room:
            return size, (one,)
    return 13.6, wrap_few(title, room, MOST_COVER_LINES, 13.6, True)
