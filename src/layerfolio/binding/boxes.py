"""Boxes and lines of their own kind: key results, the band of a verdict, counts of verdicts."""

from dataclasses import dataclass

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, line, wrap, wrap_few
from layerfolio.binding.verdicts import verdict_width, verdict_words
from layerfolio.sheets.blocks import Band, ResultBox, VerdictCount

LEADING = 4.5


class ResultPiece(Piece):
    """Key figures in cells, then clause and verdict, or several verdicts with what they judge."""

    kind = "result box"
    LEAST, CELL, PAD = 17.0, 38.0, 2.8

    def __init__(self, block: ResultBox, width: float):
        self.block, self.width = block, width
        wanted = [max(self.CELL, self._need(*figure, size=19.4)) for figure in block.figures]
        share = min(1.0, (width - 58.0) / sum(wanted)) if wanted else 1.0  # 58: what the verdict needs
        self.cells = [
            (self._fitted(*figure, room=wide * share), wide * share)
            for figure, wide in zip(block.figures, wanted, strict=True)
        ]
        room = width - sum(wide for _, wide in self.cells) - self.PAD - 1.5
        self.lay = _verdict_layout(block, room)
        self.height = self.LEAST if block.verdicts else self.lay.height

    def stays_with(self, above: Piece) -> bool:
        return above.kind == "table"

    def _need(self, name: str, figure: str, small: str, size: float) -> float:
        beside = line(small).width + 1.5 if small else 0.0
        return max(line(name).width, line(figure, size, bold=True).width + beside) + self.PAD + 1.5

    def _fitted(self, name: str, figure: str, small: str, room: float) -> tuple[Line, Line, Line]:
        size = next((one for one in (19.4, 13.6, 9) if self._need("", figure, small, one) <= room + 1e-6), 9)
        room -= self.PAD + 1.0
        shown = wrap_few(figure, room, 1, size, True)[0]
        return wrap_few(name, room, 1)[0], shown, wrap_few(small, max(room - shown.width - 1.5, 4.0), 1)[0]

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.box(x, y, self.width, self.height, 0.5)
        at = x
        for (name, figure, small), wide in self.cells:
            pen.set(name, at + self.PAD, y + 5)
            pen.set(figure, at + self.PAD, y + 12.8)
            pen.set(small, at + self.PAD + figure.width + 1.5, y + 12.8)
            at += wide
            pen.rule(at, y, at, y + self.height, 0.25)
        if self.block.verdicts:
            self._several(pen, at + self.PAD, y)
        else:
            self._one(pen, at + self.PAD, y)

    def _several(self, pen: Pen, x: float, y: float) -> None:
        subjects = [wrap_few(subject, 30, 1)[0] for subject, _ in self.block.verdicts]
        start = x + max(one.width for one in subjects) + 3
        pitch = min(6.75, (self.height - 5.5) / max(1, len(subjects) - 1))
        base = y + 5 if len(subjects) > 1 else y + 9.6
        for subject, (_, verdict) in zip(subjects, self.block.verdicts, strict=True):
            pen.set(subject, x, base)
            verdict_words(pen, verdict, start, base)
            base += pitch

    def _one(self, pen: Pen, x: float, y: float) -> None:
        block, lay = self.block, self.lay
        pen.set_all(lay.clause, x, y + lay.clause_at, LEADING)
        end = x - 6.8
        if block.verdict is not None:
            end = verdict_words(pen, block.verdict, x, y + lay.verdict_at, lay.size)
        if lay.below:
            pen.set(lay.remark, x, y + lay.verdict_at + 4.6)
        else:
            pen.set(lay.remark, min(end + 6.8, x + lay.room - lay.remark.width), y + lay.verdict_at)


@dataclass(frozen=True, slots=True)
class _VerdictLayout:
    """Clause, verdict and remark in the last cell; the box grows where they need more than 17."""

    room: float
    clause: tuple[Line, ...]
    size: float
    remark: Line
    below: bool
    clause_at: float
    verdict_at: float
    height: float


def _verdict_layout(block: ResultBox, room: float) -> _VerdictLayout:
    clause = wrap_few(block.clause, room, 3) if block.clause else ()
    size = 13.6 if block.verdict is None or verdict_width(block.verdict, 13.6) <= room else 9
    word = verdict_width(block.verdict, size) + 3.0 if block.verdict is not None else 0.0
    below = bool(block.remark) and word + line(block.remark).width > room
    remark = wrap_few(block.remark, room, 1)[0] if block.remark else Line((), 0.0)  # in full where it is judged
    if len(clause) < 2 and not below:
        return _VerdictLayout(room, clause, size, remark, below, 5.0, 12.8, ResultPiece.LEAST)
    at = 4.6 + LEADING * max(0, len(clause) - 1) + 6.2
    return _VerdictLayout(room, clause, size, remark, below, 4.6, at, max(ResultPiece.LEAST, at + 2.4 + 4.6 * below))


class BandPiece(Piece):
    """Required, provided, verdict and where it is judged, between two strong rules."""

    kind = "band"
    keep_with_previous = True
    SECOND, VERDICT, WHERE = 53.0, 69.0, 40.0  # start of the second part; the others counted from the right edge

    def __init__(self, block: Band, width: float):
        self.verdict, self.width = block.verdict, width
        self.required = wrap(block.required, self.SECOND - 3, 9.72)
        self.provided = wrap(block.provided, width - self.VERDICT - self.SECOND - 3, 9.72)
        self.where = wrap(block.where, self.WHERE, 9, oblique=True)
        lines = max(len(self.required), len(self.provided), len(self.where))
        self.height = 8.46 + LEADING * (lines - 1)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        base, right = y + 5.5, x + self.width
        pen.across(x, y, self.width, 0.5)
        pen.set_all(self.required, x, base, LEADING)
        pen.set_all(self.provided, x + self.SECOND, base, LEADING)
        size = 9.72 if verdict_width(self.verdict, 9.72) < self.VERDICT - self.WHERE - 1 else 9
        start = right - max(self.VERDICT, self.WHERE + 2 + verdict_width(self.verdict, size))
        verdict_words(pen, self.verdict, start, base, size)
        pen.set_all(self.where, right - self.WHERE, base, LEADING)
        pen.across(x, y + self.height, self.width, 0.5)


class CountPiece(Piece):
    """How often each verdict was given, in one line or more."""

    kind = "count"
    keep_with_previous = True

    def __init__(self, block: VerdictCount, width: float):
        self.rows: list[list] = [[]]
        at = 0.0
        for verdict, count in block.counts:
            wide = verdict_width(verdict) + 1.6 + line(str(count)).width
            if self.rows[-1] and at + wide > width:
                self.rows.append([])
                at = 0.0
            self.rows[-1].append((at, verdict, str(count)))
            at += wide + 5.6
        self.height = LEADING * len(self.rows)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        for row in self.rows:
            for at, verdict, count in row:
                end = verdict_words(pen, verdict, x + at, y + 3.42)
                pen.words(count, end + 1.6, y + 3.42, 9)
            y += LEADING
