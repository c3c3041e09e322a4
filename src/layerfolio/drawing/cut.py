"""A section before it is drawn: what lies where, in its own directions."""

from dataclasses import dataclass

from layerfolio.drawing import control
from layerfolio.drawing.air import air_signs
from layerfolio.drawing.control import ControlLine
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_framing import Framing, View
from layerfolio.drawing.layout_stack import Stack
from layerfolio.drawing.marks import Mark, Point


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

    @property
    def corners(self) -> tuple[Point, ...]:
        deep = -self.stack.depth
        return (0.0, deep), (self.length, deep), (self.length, 0.0), (0.0, 0.0)


def cut(stack: Stack, framing: tuple[Framing, ...], length: float, view: View, units: Units) -> Cut:
    """Everything that lies between the break lines."""
    controls = control.control_lines(stack)
    signs = tuple(air_signs(stack, framing, controls, length, view))
    return Cut(stack, framing, length, view, units, controls, signs)
