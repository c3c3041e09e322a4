"""Layers laid one below the other on paper: where each begins and ends, what is only a line, what is cut short."""

from dataclasses import dataclass
from typing import Literal

from layerfolio.assembly.types import Assembly, Layer

SHEET = 0.002  # m: thinner layers are lines beside the chain, not links of it
THINNEST = 0.7  # mm on paper: below this a layer is drawn solid
NOMINAL = 12.0  # mm on paper for a layer whose thickness nobody gave
GROUND_DEPTH = 9.0  # mm on paper of the ground's strokes
LEAST_CUT, LEAST_OF_ALL = 30.0, 12.0  # mm on paper that a layer cut short keeps; where many have to give
LINE_GAP = 0.5  # white between two lines that lie on each other

Form = Literal["body", "thin", "sheet", "ground"]


@dataclass(frozen=True, slots=True)
class Band:
    """One layer on paper, y upward from the section's upper face. `middle` is where a thin layer's heavy line runs."""

    layer: Layer
    form: Form
    top: float
    bottom: float
    middle: float
    line: float = 0.0  # width of the heavy line of a thin layer or sheet
    cut_short: bool = False
    nominal: bool = False

    @property
    def depth(self) -> float:
        return self.top - self.bottom


@dataclass(frozen=True, slots=True)
class Stack:
    """Bands from the top of the drawing down; `outside_up` is False for floors and slabs, whose room is on top."""

    bands: tuple[Band, ...]
    depth: float
    scale: float
    outside_up: bool
    ground: bool


def form_of(layer: Layer, scale: float) -> Form:
    """How a layer is drawn at a scale."""
    if layer.thickness is None:
        if layer.family == "ground":
            return "ground"
        return "sheet" if layer.kind == "membrane" or layer.family == "membrane" else "body"
    if layer.thickness.value < SHEET and layer.kind != "cavity":
        return "sheet"
    thin = layer.kind != "cavity" and layer.thickness.value * 1000 / scale < THINNEST
    return "thin" if thin else "body"


def paper_depth(layer: Layer, scale: float) -> float:
    """Depth in paper mm before anything is cut short."""
    if form_of(layer, scale) in ("sheet", "ground"):
        return 0.0
    return layer.thickness.value * 1000 / scale if layer.thickness else NOMINAL


def full_depth(assembly: Assembly, scale: float) -> float:
    """Depth of the whole section on paper before anything is cut short, mm."""
    return sum(paper_depth(one, scale) for one in assembly.layers)


def stacked(assembly: Assembly, scale: float, limit: float) -> Stack:
    """All layers at a scale; thick ones are cut short until the section is at most `limit` mm deep, where it can be."""
    outside_up = assembly.kind not in ("floor", "slab")
    layers = assembly.layers if outside_up else assembly.layers[::-1]
    full = [paper_depth(one, scale) for one in layers]
    drawn = _shortened(full, [_can_be_cut(one) for one in layers], limit)
    bands, y = [], 0.0
    for layer, deep, wanted in zip(layers, full, drawn, strict=True):
        form = form_of(layer, scale)
        bottom = y - wanted
        nominal = layer.thickness is None and form == "body"
        bands.append(Band(layer, form, y, bottom, (y + bottom) / 2, 0.0, wanted < deep, nominal))
        y = bottom
    ground = assembly.faces == "ground" or any(one.form == "ground" for one in bands)
    return Stack(_with_lines(_ground_outside(bands, -y, outside_up), scale), -y, scale, outside_up, ground)


def _can_be_cut(layer: Layer) -> bool:
    return layer.thickness is not None and layer.kind == "solid"


def _shortened(full: list[float], can: list[bool], limit: float) -> list[float]:
    """The thickest layers first, one after the other, until the rest fits."""
    drawn = list(full)
    thickest = sorted(range(len(full)), key=lambda one: (-full[one], one))
    for index, least in [*((one, LEAST_CUT) for one in thickest), *((one, LEAST_OF_ALL) for one in thickest)]:
        excess = sum(drawn) - limit
        if excess > 1e-9 and can[index] and drawn[index] > least:
            drawn[index] = max(least, drawn[index] - excess)
    return drawn


def _ground_outside(bands: list[Band], depth: float, outside_up: bool) -> list[Band]:
    """The ground has no depth of its own: its strokes lie outside the section."""
    top, bottom = (GROUND_DEPTH, 0.0) if outside_up else (-depth, -depth - GROUND_DEPTH)
    return [
        Band(one.layer, one.form, top, bottom, (top + bottom) / 2) if one.form == "ground" else one for one in bands
    ]


def _with_lines(bands: list[Band], scale: float) -> tuple[Band, ...]:
    """Gives every run of thin layers and sheets the places of its heavy lines."""
    done = list(bands)
    start = 0
    while start < len(bands):
        end = start
        while end < len(bands) and bands[end].form in ("thin", "sheet"):
            end += 1
        if end > start:
            done[start:end] = _run(bands, start, end, scale)
        start = end + 1
    return tuple(done)


def _run(bands: list[Band], start: int, end: int, scale: float) -> list[Band]:
    """Heavy lines lie on the board below them where air or nothing is above, else under the one above, else astride."""
    widths = [_line_width(one.layer, scale) for one in bands[start:end]]
    room = sum(widths) + LINE_GAP * (len(widths) - 1)
    upper, lower = bands[start].top, bands[end - 1].bottom
    if _open(bands, start - 1):
        y = lower + room
    elif _open(bands, end):
        y = upper
    else:
        y = (upper + lower + room) / 2
    placed = []
    for one, width in zip(bands[start:end], widths, strict=True):
        placed.append(Band(one.layer, one.form, one.top, one.bottom, y - width / 2, width))
        y -= width + LINE_GAP
    return placed


def _open(bands: list[Band], index: int) -> bool:
    """Whether nothing solid is there: the edge of the section, or a cavity."""
    if not 0 <= index < len(bands):
        return True
    return bands[index].form == "body" and bands[index].layer.kind == "cavity"


def _line_width(layer: Layer, scale: float) -> float:
    if layer.family == "membrane" or layer.kind == "membrane":
        return 1.0 if scale <= 5 else 0.9 if scale < 10 else 0.8
    return 0.8 if scale >= 10 and layer.family == "metal" else 0.7
