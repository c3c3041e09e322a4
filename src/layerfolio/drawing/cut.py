"""A section before it is drawn: what lies where, in its own directions."""

from dataclasses import dataclass

from layerfolio.drawing import control
from layerfolio.drawing.air import air_signs
from layerfolio.drawing.control import ControlLine
from layerfolio.drawing.fasteners import Pins, pins_of
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_framing import Framing, View
from layerfolio.drawing.layout_stack import GROUND_DEPTH, Stack
from layerfolio.drawing.marks import Mark, Point
from layerfolio.drawing.seams import Seam, seams_of

LETTER = 1.7  # mm that a letter stands out from its line


@dataclass(frozen=True, slots=True)
class Cut:
    """Bands, members, control lines and signs for moving air of a section `length` mm long on paper."""

    stack: Stack
    framing: tuple[Framing, ...]
    length: float
    view: View
    units: Units
    controls: tuple[ControlLine, ...]
    signs: tuple[tuple[Point, tuple[Mark, ...]], ...]
    pins: tuple[Pins, ...] = ()
    seams: tuple[Seam, ...] = ()

    @property
    def above(self) -> float:
        """How far the ground, a sheet or a control line with its letters stands above the upper face, mm."""
        lines = [one.y + LETTER for one in self.controls]
        lines += [one.middle + one.line / 2 for one in self.stack.bands if one.line]
        lines += [max(one.head, one.tip) + 0.4 for one in self.pins] + [one.face + 1.0 for one in self.seams]
        ground = [GROUND_DEPTH] if self.stack.ground and self.stack.outside_up else []
        return max([0.0, *lines, *ground])

    @property
    def below(self) -> float:
        """The same under the lower face."""
        deep = self.stack.depth
        lines = [LETTER - one.y - deep for one in self.controls]
        lines += [one.line / 2 - one.middle - deep for one in self.stack.bands if one.line]
        lines += [0.4 - min(one.head, one.tip) - deep for one in self.pins] + [1.0 - one.face - deep for one in self.seams]
        ground = [GROUND_DEPTH] if self.stack.ground and not self.stack.outside_up else []
        return max([0.0, *lines, *ground])

    @property
    def corners(self) -> tuple[Point, ...]:
        deep = -self.stack.depth
        return (0.0, deep), (self.length, deep), (self.length, 0.0), (0.0, 0.0)


def cut(stack: Stack, framing: tuple[Framing, ...], length: float, view: View, units: Units) -> Cut:
    """Everything that lies between the break lines."""
    controls = control.control_lines(stack)
    signs = tuple(air_signs(stack, framing, controls, length, view))
    pins, seams = pins_of(stack, framing, length, view), seams_of(stack, framing, length, view)
    return Cut(stack, framing, length, view, units, controls, signs, pins, seams)
