"""The layers of an assembly as courses across its thickness, in building millimetres, each in the zone that junctions go by."""

from dataclasses import dataclass
from typing import Literal

from layerfolio.assembly.types import Assembly, Layer

Zone = Literal["rain", "outer", "frame", "inner"]
SHEET = 0.002  # m: thinner layers are lines
NOMINAL = 60.0  # mm for a solid layer whose thickness nobody gave
MASSIVE = ("concrete", "masonry", "earth", "timber")  # hatch families that may carry without saying so
STRUCTURAL = 0.06  # m: shallower framed layers are battens, not the frame


@dataclass(frozen=True, slots=True)
class Course:
    """One layer across the thickness: `start` at its outer face, `end` at its inner, mm inward from the datum, which is the
    outer face of the frame. `rain`: the ventilated cavity and all outside it; `outer`: between that and the frame; `frame`: from
    the first to the last framed layer (or the structural, massive or thickest one); `inner`: from there to the room."""

    layer: Layer
    start: float
    end: float
    zone: Zone

    @property
    def sheet(self) -> bool:
        """Whether it is a line on the drawing, with no thickness that counts."""
        return self.layer.kind == "membrane" or (self.layer.thickness is not None and self.layer.thickness.value < SHEET)

    @property
    def depth(self) -> float:
        return self.end - self.start

    @property
    def middle(self) -> float:
        return (self.start + self.end) / 2


def courses(assembly: Assembly) -> tuple[Course, ...]:
    """All layers from the outside in. An assembly without layers of any depth gives courses of no depth."""
    first, last = frame_range(assembly.layers)
    vented = [n for n, one in enumerate(assembly.layers) if one.kind == "cavity" and one.cavity != "unventilated"]
    rain = max((n for n in vented if n < first), default=-1)
    depths = [_depth(one) for one in assembly.layers]
    at = -sum(depths[:first])
    found = []
    for number, (layer, depth) in enumerate(zip(assembly.layers, depths, strict=True)):
        found.append(Course(layer, at, at + depth, _zone(number, rain, first, last)))
        at += depth
    return tuple(found)


def frame_range(layers: tuple[Layer, ...]) -> tuple[int, int]:
    """First and last index of the layers that carry: framed and deep, else structural, else massive, else the thickest one."""
    framed = [n for n, one in enumerate(layers) if one.kind == "solid" and one.member and _thick(one) >= STRUCTURAL]
    if not framed:
        framed = [n for n, one in enumerate(layers) if "structure" in one.serves and one.kind == "solid"]
    if not framed:
        massive = [n for n, one in enumerate(layers) if one.family in MASSIVE and _thick(one) >= STRUCTURAL]
        framed = [max(massive, key=lambda n: _depth(layers[n]))] if massive else []
    if not framed:
        framed = [max(range(len(layers)), key=lambda n: (layers[n].kind == "solid", _depth(layers[n])))]
    return framed[0], framed[-1]


def _zone(number: int, rain: int, first: int, last: int) -> Zone:
    if number <= rain:
        return "rain"
    return "outer" if number < first else "frame" if number <= last else "inner"


def _thick(layer: Layer) -> float:
    return layer.thickness.value if layer.thickness else NOMINAL / 1000


def _depth(layer: Layer) -> float:
    """mm; nothing for membranes and sheets."""
    if layer.kind == "membrane" or (layer.thickness is not None and layer.thickness.value < SHEET):
        return 0.0
    return layer.thickness.value * 1000 if layer.thickness else NOMINAL
