"""The narrow section above the charts: layers side by side at true scale, the outside at the left."""

from dataclasses import dataclass, replace

from layerfolio.assembly.types import Assembly
from layerfolio.drawing.control import SOFT
from layerfolio.drawing.faces import STRONG, WEAK
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.hatches import FAMILIES, hatch
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.layout_stack import Band, Stack, full_depth, stacked
from layerfolio.drawing.marks import Area, Clip, Curve, Group, Line, Mark, Point
from layerfolio.studies.condensation.types import Node

SCALES = {"metric": (1, 2.5, 5, 10, 20, 50, 100), "customary": (1, 2, 4, 8, 12, 16, 24, 48, 96)}
WIDEST = 95.0  # mm on paper
AIR = 3.0  # mm of air drawn on each side
OVER = 2.0  # break lines beyond the outer faces, inside the air
SWING, ZIGZAG = 1.7, 4.8  # of a break line: across, along
ARROW, HEAD, HALF_HEAD = 5.0, 2.0, 0.8


@dataclass(frozen=True, slots=True)
class Strip:
    """The section on paper: `left` is the outermost face, `panel` the stretch with the air on both sides."""

    assembly: Assembly
    stack: Stack
    left: float
    panel: tuple[float, float]

    @property
    def right(self) -> float:
        return self.left + self.stack.depth

    def span(self, number: int) -> tuple[float, float]:
        """Outer and inner face of a layer, mm."""
        band = next(one for one in self.stack.bands if one.layer.number == number)
        return self.left - band.top, self.left - band.bottom

    def x(self, node: Node) -> float:
        """Where a node of the balance lies."""
        outer, inner = self.span(node.layer)
        return outer + node.fraction * (inner - outer)

    @property
    def faces(self) -> tuple[float, ...]:
        """Every face between two layers, and both outer faces."""
        at = [self.left, *(self.left - band.bottom for band in self.stack.bands if band.form in ("body", "thin"))]
        return tuple(dict.fromkeys(round(x, 4) for x in at))


def strip_of(assembly: Assembly, units: Units, left: float, least: float) -> Strip:
    """The largest scale that fits, at most `WIDEST`; the panel is at least `least` mm wide."""
    outside_left = replace(assembly, kind="wall")  # every assembly reads from the outside in
    full = full_depth(outside_left, 1.0)
    scale = next((one for one in SCALES[units] if _drawn(outside_left, one) <= WIDEST), max(1.0, full / WIDEST))
    stack = stacked(outside_left, scale, 1e9)
    panel = max(stack.depth + 2 * AIR, least)
    return Strip(assembly, stack, left + (panel - stack.depth) / 2, (left, left + panel))


def _drawn(assembly: Assembly, scale: float) -> float:
    return full_depth(assembly, scale)


def strip_scale(strip: Strip, units: Units) -> str:
    """As it is written: `1 : 5`."""
    return scale_text(strip.stack.scale, units)


def strip_marks(strip: Strip, top: float, bottom: float) -> tuple[Mark, ...]:
    """Hatches, faces, membranes, arrows of moving air, break lines."""
    zig = _zigzag_at(strip)
    upper, lower = (_level(strip, y, zig) for y in (top, bottom))
    inner: list[Mark] = []
    for band in strip.stack.bands:
        inner += _material(strip, band, top + SWING, bottom - SWING, (top + bottom) / 2)
    inner += _faces(strip, top + SWING, bottom - SWING)
    inner += [mark for band in strip.stack.bands if band.line for mark in _heavy(strip, band, top + SWING, bottom - SWING)]
    lines = tuple(Line(edge, 0.25, role="break") for edge in (upper, lower))
    return Group("strip", (Clip((*upper, *lower[::-1]), tuple(inner)), *lines)).marks


def _zigzag_at(strip: Strip) -> float:
    """In the widest layer, off its middle, where its number stands."""
    band = max(strip.stack.bands, key=lambda one: one.depth)
    outer, inner = strip.span(band.layer.number)
    return outer + 0.32 * (inner - outer)


def _level(strip: Strip, y: float, x: float) -> tuple[Point, ...]:
    """A break line along the strip from left to right, with one zigzag at `x`."""
    half = min(ZIGZAG, 0.6 * strip.stack.depth) / 2
    turns = ((-half, 0.0), (-half / 3, SWING), (half / 3, -SWING), (half, 0.0))
    return (
        (strip.left - OVER, y), *((x + dx, y + dy) for dx, dy in turns), (strip.right + OVER, y),
    )  # fmt: skip


def _material(strip: Strip, band: Band, top: float, bottom: float, middle: float) -> list[Mark]:
    if band.form != "body":
        return []
    left, right = strip.span(band.layer.number)
    outline = rectangle(left, bottom, right, top)
    family = band.layer.family
    if band.layer.kind == "cavity":
        air = Area(outline, band.layer.name, "air")
        return [air, *(_arrows((left + right) / 2, middle, right - left) if band.layer.cavity == "ventilated" else ())]
    marks: list[Mark] = [Area(outline, band.layer.name, family)]
    if family not in FAMILIES:
        return marks
    inset = rectangle(left, bottom + SWING, right, top - SWING)  # bulbs stay inside the break lines
    shape = inset if family in SOFT else outline
    turn = 0.0 if family == "batt" and right - left > top - bottom else 90.0
    seed = band.layer.name
    return [*marks, *hatch(family, shape, seed=seed, piece=band.layer.number, turn=turn, scale=strip.stack.scale)]


def _arrows(x: float, middle: float, room: float) -> list[Mark]:
    """Three upright arrows, where the cavity is wide enough."""
    if room < 2.4:
        return []
    marks: list[Mark] = []
    for dy in (-6.2, 0.0, 6.2):
        y = middle + dy
        tip = y + ARROW / 2
        head = (("M", x, tip), ("L", x - HALF_HEAD, tip - HEAD), ("L", x + HALF_HEAD, tip - HEAD), ("Z",))
        marks += [Line(((x, y - ARROW / 2), (x, tip - HEAD)), 0.25, role="air"), Curve(head, fill="black", role="air")]
    return marks


def _faces(strip: Strip, top: float, bottom: float) -> list[Mark]:
    """Outer faces strong, as is a solid face beside air."""
    solid = [band for band in strip.stack.bands if band.form == "body"]
    marks: list[Mark] = []
    for index, band in enumerate(solid):
        before = solid[index - 1] if index else None
        for edge, neighbour in (
            (band.top, before),
            (band.bottom, solid[index + 1] if index + 1 < len(solid) else None),
        ):
            if edge == band.top and before is not None and abs(before.bottom - edge) < 1e-6:
                continue  # drawn with the layer before
            outer = neighbour is None or "cavity" in (band.layer.kind, neighbour.layer.kind)
            x = strip.left - edge
            marks.append(Line(((x, bottom), (x, top)), STRONG if outer else WEAK, role="outline" if outer else "face"))
    return marks


def _heavy(strip: Strip, band: Band, top: float, bottom: float) -> list[Mark]:
    x = strip.left - band.middle
    half = band.line / 2
    area = Area(rectangle(x - half, bottom, x + half, top), band.layer.name, band.layer.family)
    return [area, Line(((x, bottom), (x, top)), band.line, role="membrane" if band.form == "sheet" else "thin layer")]
