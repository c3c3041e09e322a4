"""Where the parts of a moisture picture stand: panels across the page, charts down it."""

from dataclasses import dataclass

from layerfolio.drawing.figures import Units
from layerfolio.drawing.lettering import wide
from layerfolio.drawing.moisture_axes import axis
from layerfolio.drawing.moisture_charts import Panel
from layerfolio.drawing.moisture_key import PITCH as KEY_PITCH
from layerfolio.drawing.moisture_list import list_height
from layerfolio.drawing.moisture_strip import AIR, Strip, strip_of
from layerfolio.drawing.names import sides
from layerfolio.studies.condensation.types import CondensationStudy, Node, Run

LEFT = 16.0  # of the first panel, from the field's edge
BETWEEN = 6.0  # the two panels
LABELS = 31.0  # kept for values at the right
WORDS, LABEL_ROW = 7.4, 4.6  # above the strip: words of both sides; another row for names of planes
NUMBERS = 6.0  # below the strip
STRIP = (20.0, 30.0)
TITLE, GAP = 4.9, 1.4  # above a chart, below the one before
SCALE_ROW = 5.4
MONTHS = 4.6  # below the bars
WEIGHTS = {"temperature": 1.0, "worst": 1.9, "best": 1.15, "bars": 1.7}
LEAST = {"temperature": 14.0, "worst": 26.0, "best": 15.5, "bars": 22.0}
SIDE_SPACED = 0.9 * 72 / 25.4


@dataclass(frozen=True, slots=True)
class Across:
    """Panels across the page: by thickness under the strip, by equivalent air layer beside it, values at the right."""

    strip: Strip
    thickness: Panel
    air_layer: Panel
    labels: float
    words: tuple[str, str]

    @property
    def panels(self) -> tuple[Panel, Panel]:
        return self.thickness, self.air_layer


def across(study: CondensationStudy, run: Run, units: Units, width: float) -> Across:
    """The strip at the largest scale that leaves room for the second panel."""
    first, second = sides(study.assembly)
    named = (first, second) if study.assembly.kind not in ("floor", "slab") else (second, first)
    least = sum(wide(one, "bold", SIDE_SPACED) for one in named) + 6.0
    strip = strip_of(study.assembly, units, LEFT, least)
    left = strip.panel[1] + BETWEEN
    right = width - LABELS
    return Across(strip, _by_thickness(strip, run), _by_air_layer(run, left, right), right + 2.0, named)


def _by_thickness(strip: Strip, run: Run) -> Panel:
    return Panel(*strip.panel, strip.x, strip.faces, strip.x(run.nodes[0]), strip.x(run.nodes[-1]))


def _by_air_layer(run: Run, left: float, right: float) -> Panel:
    whole = run.nodes[-1].s_d
    start, end = left + AIR, right - AIR

    def place(node: Node) -> float:
        return start + (end - start) * node.s_d / whole

    faces = [place(node) for node in run.nodes if node.fraction in (0.0, 1.0)]
    apart: list[float] = []
    for x in faces:
        if not apart or x - apart[-1] > 0.45:  # closer faces would print as one
            apart.append(x)
    return Panel(left, right, place, tuple(apart), start, end)


def air_layer_ticks(panel: Panel, whole: float) -> tuple[tuple[float, str], ...]:
    """Places and figures of the second panel's scale; `whole` in the printed unit."""
    room = panel.right - panel.left
    values = axis(0.0, whole, panel.first, panel.last, lines=max(3, min(7, int(room / 9))))
    scale = (panel.last - panel.first) / whole
    return tuple((panel.first + tick * scale, values.figure(tick)) for tick in values.ticks if tick <= whole * 1.0001)


@dataclass(frozen=True, slots=True)
class Down:
    """Heights from the top (0) downward: strip, and top and bottom of each chart."""

    strip: tuple[float, float]
    charts: dict[str, tuple[float, float]]
    bars: tuple[tuple[float, float], ...]
    sentence: float  # baseline of the first line of words in place of bars or above them
    key: float
    bottom: float


def down(layers: int, label_row: bool, bars: int, lines: int, key_rows: int, height: float) -> Down:
    """All heights; charts share what `height` leaves them, and never less than each needs.

    `bars` charts of bars, `lines` of words in place of them or above them.
    """
    above = WORDS + (LABEL_ROW if label_row else 0.0)
    listed = list_height(layers)
    strip = min(max(listed - above - NUMBERS, STRIP[0]), STRIP[1])
    head = max(above + strip + NUMBERS, listed + 1.5)
    fixed = head + 3 * TITLE + 2 * GAP + SCALE_ROW + 4.5 * lines + (2.0 if lines else 0.0)
    fixed += bars * (TITLE + GAP + MONTHS) + KEY_PITCH * key_rows + 1.5
    names = ["temperature", "worst", "best"]
    weights = [WEIGHTS[name] for name in names] + [max(WEIGHTS["bars"], 0.9 * bars)] * bool(bars)
    least = [LEAST[name] for name in names] + [max(LEAST["bars"], 14.0 * bars)] * bool(bars)
    tall = _shared(weights, least, height - fixed)
    y = -head
    charts = {}
    for name, one in zip(names, tall, strict=False):
        y -= TITLE
        charts[name] = (y, y - one)
        y -= one + (GAP if name != "best" else 0.0)
    y -= SCALE_ROW
    sentence = y - 4.4
    y -= 4.5 * lines + (2.0 if lines else 0.0)
    found = []
    for _ in range(bars):
        y -= GAP + TITLE
        found.append((y, y - tall[-1] / bars))
        y -= tall[-1] / bars + MONTHS
    key = y - KEY_PITCH / 2 - 1.0
    y -= KEY_PITCH * key_rows + 1.5
    return Down((-above, -above - strip), charts, tuple(found), sentence, key, y)


def _shared(weights: list[float], least: list[float], room: float) -> list[float]:
    """The room by weight; who would get less than needed gets that, and the others share what is left."""
    fixed: dict[int, float] = {}
    while True:
        open_ = [k for k in range(len(weights)) if k not in fixed]
        rest = room - sum(fixed.values())
        share = {k: rest * weights[k] / sum(weights[j] for j in open_) for k in open_}
        short = [k for k in open_ if share[k] < least[k]]
        if not short:
            return [fixed.get(k, share.get(k, 0.0)) for k in range(len(weights))]
        fixed |= {k: least[k] for k in short}
        if len(fixed) == len(weights):
            return [fixed[k] for k in range(len(weights))]
