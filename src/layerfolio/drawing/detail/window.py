"""A window in a wall: head and sill cut upright, the jamb level."""

from collections.abc import Mapping

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.model import Break, Detail, Measure, Word
from layerfolio.drawing.detail.reveal_lines import sheets, traces
from layerfolio.drawing.detail.reveal_pieces import PANE, reveal_pieces
from layerfolio.drawing.detail.reveal_place import RevealPlace
from layerfolio.drawing.detail.reveal_words import look_at, notes, order_of_work, remarks
from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Point


def head(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """The wall above, the window below."""
    arm = Arm(assemblies[junction.of[0]], turn=90.0)
    return _detail(RevealPlace(junction, arm, "head", scale), units)


def sill(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """The wall below, the window above."""
    arm = Arm(assemblies[junction.of[0]], turn=270.0, left=True)
    return _detail(RevealPlace(junction, arm, "sill", scale), units)


def jamb(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """The wall at the left, the window at the right, outside at the top."""
    arm = Arm(assemblies[junction.of[0]], turn=180.0, left=True, cut="level")
    return _detail(RevealPlace(junction, arm, "jamb", scale), units)


def _detail(place: RevealPlace, units: Units) -> Detail:
    return Detail(
        name=f"window {place.edge} {' '.join(place.junction.of)}",
        kind="level section" if place.edge == "jamb" else "vertical section through a bay",
        pieces=tuple(reveal_pieces(place)),
        sheets=sheets(place),
        traces=traces(place),
        notes=notes(place, units),
        measures=_setback(place),
        breaks=_breaks(place),
        words=_words(place),
        remarks=remarks(place),
        order=order_of_work(place),
        look=look_at(place),
    )


def _setback(place: RevealPlace) -> tuple[Measure, ...]:
    """How far the frame stands behind the face of the cladding, and how deep it is."""
    deep, far = place.window[0] - place.outer, place.far
    if place.edge == "jamb" or deep < 5.0:
        return ()
    y = place.place(far, 0.0)[1]
    line = y + (7 if place.edge == "head" else -7) * place.scale
    return (Measure((place.outer, y), (place.window[0], y), "x", line, deep / 1000),)


def _breaks(place: RevealPlace) -> tuple[Break, ...]:
    over = 4 * place.scale
    middle = sum(place.window) / 2
    return (
        Break(place.place(place.far, place.outer - over), place.place(place.far, place.inner + over)),
        Break(place.place(place.beyond, middle - PANE / 2 - over), place.place(place.beyond, middle + PANE / 2 + over)),
    )


def _words(place: RevealPlace) -> tuple[Word, ...]:
    s, d = place.scale, (place.outer, place.inner)
    if place.edge == "jamb":
        out: Point = place.place(place.beyond + 12 * s, d[0] - 6 * s)
        return Word("OUTSIDE", out), Word("INSIDE", place.place(place.beyond + 12 * s, d[1] + 8 * s))
    at = place.beyond + 6 * s
    return Word("OUTSIDE", place.place(at, d[0] - 8 * s)), Word("INSIDE", place.place(at, d[1] + 4 * s))
