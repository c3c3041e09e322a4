"""Details made by hand, in building millimetres: the foot of a wall on a slab, an eave at 30 degrees, a small one."""

from math import cos, radians, tan

from layerfolio.drawing.detail.model import Arrow, Break, Bubble, Detail, Measure, Note, Piece, Sheet, Trace, Word
from layerfolio.drawing.geometry import rectangle

TOP, LOW, RIGHT = 500.0, -280.0, 310.0  # of the foot of the wall


def upright(family, layer, x0, x1, low, high=TOP, **rest):
    return Piece(rectangle(x0, low, x1, high), family, layer, 90.0, **rest)


def level(family, layer, y0, y1, left, right=RIGHT, **rest):
    return Piece(rectangle(left, y0, right, y1), family, layer, **rest)


def sill() -> Detail:
    """Wall W1 on the edge of slab F1: the slab's top is y = 0, the outer face of the studs x = 0."""
    boards = [
        upright("timber", "W1/larch", -107, -88, max(18, y), min(y + 140, TOP), edge=0.5, number=n)
        for n, y in enumerate(range(18, 500, 140))
    ]
    return Detail(
        "sill by hand", "vertical section through a stud bay",
        (
            *boards,
            upright("air", "W1/cavity", -88, -50, 18), upright("mineral-board", "W1/mineral wool", -50, 0, 0),
            upright("timber", "plate", 0, 184, 0, 38, edge=0.5), upright("batt", "W1/hemp", 0, 184, 38),
            upright("strand-board", "W1/panel-15", 184, 199, 0), upright("air", "W1/service", 199, 237, 38),
            Piece(rectangle(199, 0, 237, 38), "timber", "nailer", edge=0.5, number=1),
            upright("gypsum", "W1/gypsum", 237, 249.7, 16), level("cork", "F1/cork", 0, 6, 237),
            level("concrete", "F1/concrete", -120, 0, 0), level("gravel", "F1/gravel", LOW, -120, 0),
            upright("foam", "edge board", -80, 0, LOW, 0),
        ),
        sheets=(
            Sheet(((-50, TOP), (-50, 0)), "membrane", "W1/membrane"),
            Sheet(((RIGHT, -120), (0, -120), (0, 0), (199, 0)), "membrane", "F1/membrane"),
            Sheet(((200, 42), (200, 1)), "tape"), Sheet(((-50, 70), (-50, 2), (-112, -4), (-114, -18)), "flashing"),
            Sheet(((-88, 21), (-50, 21)), "mesh"), Sheet(((-280, -180), (-80, -180)), "ground"),
        ),
        traces=(
            Trace("W", (((-58.75, TOP), (-58.75, 6)),)),
            Trace("AV", (((207.75, TOP), (207.75, -10), (10, -10), (10, -110), (RIGHT, -110)),)),
            Trace("T", (((67, TOP), (67, 62), (-40, 62), (-40, -250), (RIGHT, -250)),)),
        ),
        notes=(
            Note("larch 19 on battens 38", ((-97, 480),), "left", "W1/1"), Note("mineral wool 50", ((-25, 280),), "left", "W1/4"),
            Note("sheathing membrane", ((-50, 400),), "left", "W1/3"), Note("plate 38 × 184, on membrane", ((60, 20),), "left"),
            Note("flashing, mesh above", ((-108, -5),), "left"), Note("edge board 80, protected", ((-60, -130),), "left"),
            Note("panel-15, seams taped", ((191, 420),), "right", "W1/6"), Note("membrane, turned up", ((280, -120),), "right"),
            Note("concrete 120, cork tile 6", ((270, -50),), "right", "F1/3"), Note("tape, to membrane", ((200, 30),), "right"),
            Note("foam-glass gravel 350", ((260, -230),), "right", "F1/1"),
        ),
        measures=(
            Measure((-107, -180), (-107, 18), "y", -170, text="200 min."),
            Measure((-80, LOW), (0, LOW), "x", LOW - 50, 0.08),
        ),
        breaks=(
            Break((-127, TOP), (270, TOP)), Break((RIGHT, 26), (RIGHT, LOW - 20)), Break((-100, LOW), (RIGHT + 20, LOW)),
        ),
        arrows=(Arrow((-75, 140)),), words=(Word("OUTSIDE", (-230, 530)), Word("INSIDE", (340, 530))),
    )  # fmt: skip


def eave(slope: float = 30.0) -> Detail:
    """Wall W1 under roof R1; the inner face of the wall's studs is x = 184."""
    t, right = tan(radians(slope)), 900.0

    def strip(low, high, left):  # vertical heights over the roof's lower face at x = 0
        return (left, low + t * left), (right, low + t * right), (right, high + t * right), (left, high + t * left)

    def at(height, x):
        return x, height + t * x

    c = cos(radians(slope))
    deep = 286 / c
    return Detail(
        "eave by hand", "vertical section through a bay",
        (
            Piece(strip(deep - 200, deep, -330), "timber-board", "rafter tail", slope, beyond=True),
            Piece(strip(0, deep, 0), "batt", "R1/hemp", slope),
            Piece(strip(deep, deep + 35 / c, -330), "wood-fibre", "R1/wood-fibre", slope),
            Piece(strip(deep + 99 / c, deep + 118 / c, -360), "timber", "R1/boarding", slope, 0.5),
            Piece(((0, -400), (184, -400), (184, 0), (0, 0)), "batt", "W1/hemp", 90.0),
            Piece(rectangle(184, -400, 199, -2), "strand-board", "W1/panel-15", 90.0),
        ),
        sheets=(
            Sheet((at(deep + 118 / c, -360), at(deep + 118 / c, right)), "metal", "R1/steel"),
            Sheet((at(deep + 35 / c, -330), at(deep + 35 / c, right)), "membrane", "R1/underlay"),
        ),
        traces=(
            Trace("W", ((at(deep + 35 / c + 20, -320), at(deep + 35 / c + 20, right)),)),
            Trace("AV", (((216, -400), (216, -40), at(-40, right)),)),
            Trace("T", (((92, -400), (92, deep / 2), at(deep / 2, right)),)),
        ),
        notes=(
            Note("standing-seam steel", (at(deep + 118 / c, 800),), "right", "R1/1"),
            Note("boarding 19", (at(deep + 108 / c, 800),), "right", "R1/2"),
            Note("wood-fibre 35", (at(deep + 16 / c, 800),), "right", "R1/5"),
            Note("hemp batts 286", (at(deep / 2 - 60, 800),), "right", "R1/6"),
            Note("rafter tail, seen beyond", (at(deep - 100, -200),), "left"), Note("hemp batts 184", ((60, -250),), "left"),
        ),
        measures=(Measure(at(deep - 200, -330), (0, -300), "x", -440, 0.33),),
        breaks=(Break((-40, -400), (240, -400)), Break((right, t * right - 60), (right, deep + 130 + t * right))),
        arrows=(Arrow(at(deep + 75 / c, 250), slope),),
        words=(Word("OUTSIDE", (-300, 700)), Word("INSIDE", (500, -300))), slope=((480, -150), slope),
    )  # fmt: skip


def small() -> Detail:
    """Little of everything: also an interrupted control line, a bubble, a family without a hatch."""
    return Detail(
        "small", "plan section",
        (
            Piece(rectangle(0, 0, 400, 50), "foam", "W1/foam"), Piece(rectangle(0, 50, 400, 52), "gypsum", "W1/skim"),
            Piece(rectangle(180, -120, 220, 0), "timber", "W1/quark/stud", edge=0.5),
            Piece(rectangle(0, -120, 180, 0), "air", "W1/gap"), Piece(rectangle(220, -120, 400, 0), "quark", "W1/quark"),
        ),
        sheets=(Sheet(((0, 0), (400, 0)), "membrane", "W1/sheet"),),
        traces=(Trace("A", (((0, -9), (150, -9)), ((250, -9), (400, -9))), ((150, -9), (250, -9))),),
        notes=(
            Note("foam 50", ((60, 25),), "left", "W1/1"), Note("membrane, stops here", ((100, 0),), "left"),
            Note("stud 40 × 120", ((200, -60),), "right"), Note("of a family that has no hatch", ((330, -70),), "right"),
        ),
        measures=(Measure((0, 52), (400, 52), "x", 110, 0.4), Measure((0, 0), (0, 50), "y", -40, 0.05)),
        breaks=(Break((0, -140), (0, 70)), Break((400, -140), (400, 70))), arrows=(Arrow((90, -60), towards_viewer=True),),
        words=(Word("OUTSIDE", (200, 160)), Word("INSIDE", (200, -170))), bubbles=(Bubble("3", "D3", (300, -120)),),
    )  # fmt: skip
