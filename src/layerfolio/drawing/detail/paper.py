"""A junction's detail painted on paper: pieces, heavy lines, control lines, tags, dimensions, signs and the foot."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from layerfolio.drawing.detail import arrow_places, foot, sign_marks
from layerfolio.drawing.detail.around import around_of
from layerfolio.drawing.detail.body import body_of
from layerfolio.drawing.detail.control_layer import cleared, controls_of, legs_in, letters_used
from layerfolio.drawing.detail.control_letters import Taken
from layerfolio.drawing.detail.ends import break_marks, clip_of, edges_of
from layerfolio.drawing.detail.fit import Fit, fitted
from layerfolio.drawing.detail.model import Detail
from layerfolio.drawing.detail.on_paper import on_paper
from layerfolio.drawing.detail.sheet_marks import ground_marks, sheet_marks
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import moved
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.marks import Clip, Drawing, Group, Mark
from layerfolio.drawing.signs import AIR_ALONG, AIR_TOWARDS, CONTROL

TOP = 1.0  # mm of white above the highest mark


@dataclass(frozen=True, slots=True)
class Cut:
    """The detail itself as marks, with what the sheet and its legend must know."""

    groups: tuple[Group, ...]
    families: tuple[str, ...]
    notes: tuple[str, ...]


def drawing_of(
    detail: Detail,
    *,
    units: Units = "metric",
    width: float = 180.0,
    room: float = 190.0,
    scale: float | None = None,
    light: bool = False,
) -> Drawing:
    """A detail on paper, `width` mm wide and where it can at most `room` mm high.

    `scale`: the denominator; None: the largest of 2, 5, 10, 20 (customary 4, 8, 12, 16) that leaves the tags their room.
    `light`: half the hatching. `Drawing.notes` holds what the painter had to change; the detail's own remarks stay with it.
    """
    fit = fitted(detail, units, width, room, scale)
    page = on_paper(detail, fit.scale, (fit.shift, 0.0))
    page = replace(page, traces=cleared(page))
    page = replace(page, arrows=arrow_places.placed(page, legs_in(page)))
    around = around_of(page, fit, units, width)
    letters = letters_used(page)
    _, low, _, high = extent([*around.marks(), *break_marks(edges_of(page)), *around.content])
    rise = foot.foot_height(letters) - low
    cut = _cut(on_paper(page, 1.0, (0.0, rise)), fit, around.moved(rise), width, light)
    outer = [moved(one, 0.0, (0.0, rise)) for one in around.groups]
    feet = foot.foot_groups(low + rise, fit.scale, units, width, letters)
    signs = tuple(CONTROL[one] for one in letters)
    marks = (*cut.groups, *outer, *feet)
    text = scale_text(fit.scale, units)
    return Drawing(detail.name, width, high + rise + TOP, marks, fit.scale, text, (*cut.families, *signs), cut.notes)


def _cut(page: Detail, fit: Fit, taken: Taken, width: float, light: bool) -> Cut:
    """Everything that the clip cuts, then what stands over its edge."""
    edges = edges_of(page)
    body = body_of(page.pieces, edges, fit.scale, light)
    controls = controls_of(page, body.outlines, taken)
    arrows = [mark for one in page.arrows for mark in sign_marks.arrow_marks(one)]
    ground = list(ground_marks(page.sheets, page.pieces, (0.5, width - 0.5)))
    inside = _groups((
        ("beyond", body.beyond), ("hatches", body.hatches), ("control white", controls.whites), ("outlines", body.outlines),
        ("thin layers", body.thin), ("sheets", sheet_marks(page.sheets, edges, fit.scale)), ("control lines", controls.lines),
        ("air", arrows),
    ))  # fmt: skip
    groups = (
        *_groups((("ground", ground),)),
        Group("section", (Clip(clip_of(page, edges), inside),)),
        *_groups((("breaks", break_marks(edges)), ("letters", controls.letters))),
    )
    families = {**body.families, **({"ground": None} if ground else {})}
    air = [AIR_TOWARDS if one.towards_viewer else AIR_ALONG for one in page.arrows]
    return Cut(groups, (*families, *(one for one in (AIR_TOWARDS, AIR_ALONG) if one in air)), tuple(body.notes))


def _groups(named: Iterable[tuple[str, Iterable[Mark]]]) -> tuple[Group, ...]:
    found = [(name, tuple(marks)) for name, marks in named]
    return tuple(Group(name, marks) for name, marks in found if marks)


