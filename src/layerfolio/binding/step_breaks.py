"""Where one step of a calculation sheet may break: between its parts, or between the rows of a long table."""

from collections.abc import Iterator
from dataclasses import replace

from layerfolio.binding.calc_steps import LEADING, StepLines
from layerfolio.binding.piece import CONTINUED_NOTE, Piece
from layerfolio.binding.tables import TablePiece

WHITE = 30.0  # at the foot of a page; a step is broken rather than leave more
SHORT, LOW = 5, 40.0  # a table of few rows that is not high stays whole
_ABOVE = 0.5  # from the repeated title to what goes on

Halves = tuple[StepLines, StepLines]


def part_step(step: StepLines, room: float) -> Halves | None:
    """The step in two, the first as high as `room` allows; None where it may not break that early."""
    for at in range(len(step.parts) - 1, 0, -1):
        for halves in (_inside(step, at, room), _before(step, at)):
            if halves and halves[0].height <= room:
                return halves
    return None


def least_of(step: StepLines) -> float:
    """The height of the smallest beginning of a step that may stand at the foot of a page."""
    return min((first.height for first, _ in _earliest(step)), default=step.height)


def _earliest(step: StepLines) -> Iterator[Halves]:
    for at in range(1, len(step.parts)):
        gap, part = step.parts[at]
        least = _top(step, at) + gap + part.least - CONTINUED_NOTE
        found = _before(step, at) or _inside(step, at, least)
        if found:
            yield found
            return


def _top(step: StepLines, at: int) -> float:
    """Where part number `at` begins, the gap above it left out."""
    return len(step.title) * LEADING + sum(gap + part.height for gap, part in step.parts[:at])


def _before(step: StepLines, at: int) -> Halves | None:
    """Title and two parts stay together; so do a text and what it announces, a closing text and what it concludes."""
    kinds = [part.kind for _, part in step.parts]
    if at < 2 or kinds[at - 1] == "text" or all(kind == "text" for kind in kinds[at:]):
        return None
    first, rest = halve(step, step.parts[:at], step.parts[at][1], at)
    return (first, rest) if rest.body > 2 * LEADING else None


def _inside(step: StepLines, at: int, room: float) -> Halves | None:
    """A long table breaks by its own rules."""
    gap, part = step.parts[at]
    if not isinstance(part, TablePiece) or (len(part.rows) <= SHORT and part.height < LOW):
        return None
    left = room - _top(step, at) - gap
    halves = part.split(left + CONTINUED_NOTE) if part.height > left else None
    return halve(step, (*step.parts[:at], (gap, unsigned(halves[0]))), halves[1], at) if halves else None


def force_step(step: StepLines, room: float) -> Halves | None:
    """A step that no page holds, in two: between its parts, else inside a table or text."""
    used = len(step.title) * LEADING
    for at, (gap, part) in enumerate(step.parts):
        if used + gap + part.height > room:
            more = CONTINUED_NOTE if part.kind == "table" else 0.0
            halves = part.split(room - used - gap + more, True)
            if halves:
                return halve(step, (*step.parts[:at], (gap, unsigned(halves[0]))), halves[1], at)
            return halve(step, step.parts[:at], part, at) if at else None
        used += gap + part.height
    return None


def unsigned(piece: Piece) -> Piece:
    """A table says where it goes on; inside a step the calculation says so for it."""
    if isinstance(piece, TablePiece):
        piece.signed = False
    return piece


def halve(step: StepLines, first: tuple[tuple[float, Piece], ...], begins: Piece, at: int) -> Halves:
    """`begins` opens the second half, the parts behind number `at` follow it."""
    rest = ((_ABOVE, begins), *step.parts[at + 1 :])
    return replace(step, parts=first), replace(step, parts=rest, title=step.again, source=())
