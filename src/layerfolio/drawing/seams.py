"""Joints of panels whose seams are taped: where one is drawn, and the tape over it."""

from dataclasses import dataclass

from layerfolio.drawing.layout_framing import Framing, View, main_framing
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.marks import Line, Mark

PANELS = ("plywood", "strand-board", "particle-board", "wood-fibre", "mineral-board", "gypsum", "foam", "cork", "plain")
TAPE, LEAST = 60.0, 5.0  # real mm of tape as drawn, no figure of the project; mm on paper at least
HEAVY = 0.9


@dataclass(frozen=True, slots=True)
class Seam:
    """A joint at `x` of the section, taped on the face at `face`; `outward` is the side of that face, up 1 or down -1."""

    band: Band
    x: float
    face: float
    outward: int
    at_member: bool
    half: float


def seams_of(stack: Stack, framing: tuple[Framing, ...], length: float, view: View) -> tuple[Seam, ...]:
    """One for each taped panel, neighbours at different members; none in an upright section, whose joints nobody states."""
    if view == "upright":
        return ()
    main = main_framing([one for one in framing if one.centres and one.band.layer.kind == "solid"])
    centres = [x for x in main.centres if 3.0 < x < length - 3.0] if main else []
    found: list[Seam] = []
    for band in stack.bands:
        if band.layer.seams == "taped" and band.layer.kind == "solid" and band.layer.family in PANELS and band.form == "body":
            x = centres[len(found) % len(centres)] if centres else length * (0.36 + 0.14 * (len(found) % 2))
            down = (main is not None and band.middle < main.band.middle) or (main is None and stack.outside_up)
            half = max(LEAST, TAPE / stack.scale) / 2
            found.append(Seam(band, x, band.bottom if down else band.top, -1 if down else 1, bool(centres), half))
    return tuple(found)


def seam_marks(one: Seam) -> list[Mark]:
    """The joint and, on the face, the tape."""
    y = one.face + one.outward * HEAVY / 2
    joint = Line(((one.x, one.band.top), (one.x, one.band.bottom)), 0.35, role="joint")
    return [joint, Line(((one.x - one.half, y), (one.x + one.half, y)), HEAVY, role="tape")]


def seam_note(seams: tuple[Seam, ...]) -> list[str]:
    """That joints are shown by way of example."""
    if not seams:
        return []
    numbers = [str(one.band.layer.number) for one in seams]
    words = f"layer {numbers[0]}" if len(numbers) == 1 else f"layers {', '.join(numbers[:-1])} and {numbers[-1]}"
    place = "at a member" if all(one.at_member for one in seams) else "where it serves the drawing"
    return [f"Tape is drawn at one joint of {words}, {place}: places of joints and width of tape are not stated"]
