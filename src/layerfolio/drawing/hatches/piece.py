"""A piece of material as a hatch sees it: its outline turned so that x runs along the layer and y across it."""

from dataclasses import dataclass
from random import Random

from layerfolio.drawing.geometry import Outline, bounds, contains, moved, parallels, turned
from layerfolio.drawing.hatches.scatter import RECIPES, fill, places
from layerfolio.drawing.hatches.strokes import FINE, merged, strokes
from layerfolio.drawing.marks import Clip, Mark, Point, Stipple
from layerfolio.drawing.seeds import generator

CLEAR = 0.2  # loose dots keep off the faces by this much, so that none melts into a line


@dataclass(frozen=True, slots=True)
class Piece:
    """`outline` on paper; `local` the same turned back by `turn` about the drawing's origin."""

    outline: Outline
    turn: float
    seed: str
    number: int
    alternate: bool
    local: Outline
    box: tuple[float, float, float, float]  # of `local`

    @property
    def length(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def depth(self) -> float:
        return self.box[3] - self.box[1]

    def generator(self, kind: str) -> Random:
        return generator(kind, self.seed, self.number)

    def paper(self, marks: tuple[Mark, ...] | list[Mark]) -> tuple[Mark, ...]:
        """Marks given along and across the layer, put on paper and cut off at the outline."""
        if not marks:
            return ()
        return (Clip(self.outline, tuple(moved(one, self.turn) for one in marks) if self.turn else tuple(marks)),)

    def lines(self, degrees: float, pitch: float, *, width: float = FINE, offset: float = 0.0) -> tuple[Mark, ...]:
        """Straight lines in phase with the drawing's origin. `degrees` is meant for a level or upright layer, where 45°
        stays 45°; a sloped layer turns its lines with it."""
        return strokes(parallels(self.outline, self.slant(degrees), pitch, offset), width)

    def slant(self, degrees: float) -> float:
        """The direction on paper of a slanted hatch: turned with a slope, but the same in level and upright layers."""
        return degrees + (self.turn + 45) % 90 - 45

    def holds(self, *points: Point) -> bool:
        """Whether all points (along and across the layer) lie inside."""
        return all(contains(self.local, one) for one in points)

    def scattered(self, name: str, finer: float = 1.0) -> tuple[Mark, ...]:
        """A scattered hatch: in rows of its own, or as a repeated tile whose rows start at the layer's inner face."""
        rng = self.generator(name)
        x0, y0, x1, y1 = self.box
        if places(name, self.length, self.depth) > RECIPES[name].loose and finer == 1.0:
            shift = turned((x0 + rng.uniform(0, 24), y0), self.turn)
            return (Stipple(self.outline, name, shift, self.turn),)
        return self.paper(merged(fill(name, rng, (x0, y0 + CLEAR, x1, y1 - CLEAR), finer=finer)))


def piece_of(outline: Outline, turn: float, seed: str, number: int, alternate: bool) -> Piece:
    """The piece with its outline as the layer sees it."""
    local = tuple(turned(one, -turn) for one in outline) if turn else outline
    return Piece(outline, turn, seed, number, alternate, local, bounds(local))

