"""A piece of a page: it knows its height, may be split, and paints itself. All lengths in millimetres, y downward."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from layerfolio.binding.pen import Pen

CONTINUED_NOTE = 9.0  # kept free below a table that goes on elsewhere


@dataclass(frozen=True, slots=True)
class Place:
    """Where a piece is painted: what it needs to know to speak of other pages. Pages count from 1."""

    number: str
    page: int
    pages: int
    last_field: bool
    first_pages: Sequence[int] = field(default=())

    @property
    def goes_on(self) -> str:
        """Where a table that breaks here continues."""
        if not self.last_field:
            return "continued at the right"
        return f"continued on {self.number}, sheet {self.page + 1} of {self.pages}"


class Piece:
    """What the filler sees. `under_head` is set when the rule of a head lies directly above."""

    kind = ""
    height = 0.0
    keep_with_next = False
    keep_with_previous = False
    under_head = False
    squeezed = False  # reduced, because nothing else helped
    stretch = 0.0  # how much higher it may grow where height is left

    def stays_with(self, above: "Piece") -> bool:
        """Whether it must stand on the page of the piece above it."""
        return self.keep_with_previous

    @property
    def least(self) -> float:
        """The height of the smallest first part that may stand at the foot of a page."""
        return self.height

    def grow(self, more: float) -> None:
        """Take more height; only called on pieces that stretch."""

    def split(self, room: float, force: bool = False) -> "tuple[Piece, Piece] | None":
        """Two parts, the first no higher than `room`; None when that is not allowed. `force` bends the rules."""
        return None

    def split_between(self, room: float) -> "tuple[Piece, Piece] | None":
        """Two parts where nothing that belongs together is broken, for two fields that are evened out."""
        return None

    def closer(self, share: float) -> "Piece":
        """The same with less air, for a sheet that would else spill a few lines on another page; `share` up to 1."""
        return self

    def tighten(self, room: float) -> bool:
        """Close up so as to fit; tells whether that was possible. Otherwise nothing changes."""
        return False

    def squeeze(self, room: float) -> None:
        """Fit an empty page all the same; called only when nothing else helps."""

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        raise NotImplementedError


class Gap(Piece):
    """White space; vanishes at the top of a field."""

    kind = "space"

    def __init__(self, height: float):
        self.height = height

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pass


class Break(Piece):
    """What follows begins the next field of a wide sheet."""

    kind = "break"

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pass
