"""Tags and texts at one edge of a window, made of what is there."""

from collections.abc import Iterator

from layerfolio.drawing.detail.model import Note, Side
from layerfolio.drawing.detail.reveal_lines import OVER
from layerfolio.drawing.detail.reveal_place import FALL, JOINT, RevealPlace
from layerfolio.drawing.detail.words import course_note, joined_words, slots, with_choices
from layerfolio.drawing.figures import Units


def notes(place: RevealPlace, units: Units) -> tuple[Note, ...]:
    return (*_layers(place, units), *_window(place), *_shed(place), *_joined(place))


def _layers(place: RevealPlace, units: Units) -> Iterator[Note]:
    """Upright walls: outer layers at the left, the rest at the right. In plan all at the left, from the outside down."""
    found = [one for one in place.wall.courses if one.layer.kind != "cavity"]
    if place.edge == "jamb":
        for number, one in enumerate(found):
            s = place.far - (5.0 + 3.0 * (number % 3)) * place.scale
            yield course_note(place.wall, one, place.place(s, one.middle), "left", units)
        return
    near = max(place.closing, place.rain_from) + 3 * place.scale
    left = [one for one in found if one.zone in ("rain", "outer")]
    right = [one for one in found if one.zone in ("frame", "inner")][::-1]
    for side, some in (("left", left), ("right", right)):
        heights = slots(place.far - 3 * place.scale, near, len(some))
        for one, s in zip(some, heights, strict=True):
            yield course_note(place.wall, one, place.place(s, one.middle), side, units)


def _window(place: RevealPlace) -> Iterator[Note]:
    side: Side = "right"
    d0, d1 = place.window
    yield Note(f"frame of {place.junction.opening or 'the window'}", (place.place(-JOINT - place.width / 2, d1 - 8.0),), side)
    if place.edge == "sill":
        yield Note("packers, joint sealed inside", (place.place(-JOINT / 2, d1 - 12.0),), side)
    else:
        yield Note("joint filled, sealed inside", (place.place(-JOINT / 2, (d0 + d1) / 2),), side)
    if place.closing:
        names = {"head": "header, by the engineer", "sill": "sill plate", "jamb": "studs at the jamb"}
        frame = place.wall.zone("frame")[0]
        yield Note(names[place.edge], (place.place(place.closing / 2, frame.end - 12.0),), side)
    if place.edge == "jamb" and d0 - place.outer > 12.0:
        yield Note("reveal board", (place.place(-9.0, place.outer + 12.0),), side)
    if place.inner - d1 > 5.0:
        words = "window board" if place.edge == "sill" else "reveal lining"
        yield Note(words, (place.place(-place.reveal / 2, (d1 + place.inner) / 2),), side)


def _shed(place: RevealPlace) -> Iterator[Note]:
    if place.edge == "sill":
        d = place.outer - OVER / 2
        high = 16.0 + FALL * (d - place.window[0])
        yield Note("sill, falls outward, with drip", (place.place(-high, d),), "left")
        d = (place.cover + place.window[0]) / 2
        at = place.place(FALL * (place.window[1] - d) - 1.5, d)
        yield Note("sill pan, turned up at back and ends", (at,), "left")
    elif place.edge == "head":
        d = place.outer - OVER / 4
        water = place.served("W")
        words = "head flashing behind the membrane" if water and water.sheet else "head flashing, upper edge taped"
        yield Note(words, (place.place(6.0 + FALL * (d - place.cover), d),), "left")


def _joined(place: RevealPlace) -> Iterator[Note]:
    for words, letter in joined_words(place.junction, place.wall):
        course = place.served(letter)
        if course and letter in "AV":
            yield Note(words, (place.place(20.0, course.end + 1.0),), "right")
    for one in place.junction.broken:
        yield Note(one.broken, (place.place(2.0, place.frame_end),), "right")


def remarks(place: RevealPlace) -> tuple[str, ...]:
    found = [
        "The window is a sign of its kind: frame, sash, brackets and fixing follow its maker's drawings; joint, flashing, "
        "packers and pan are drawn as commonly built."
    ]
    return with_choices(found, place.junction)


def order_of_work(place: RevealPlace) -> tuple[str, ...]:
    found = []
    if place.edge == "sill":
        found.append("Pan first, turned up at its back and ends, then the window on packers.")
    if place.edge == "head":
        found.append(_flashed(place))
    if place.edge == "jamb" and (water := place.served("W")):
        found.append("Membrane turned into the opening." if water.sheet else "Face of the board taped to the frame.")
    if place.served("A"):
        found.append("Joint filled, then tape from the air control layer to the window, then the reveal's lining.")
    return tuple(found)


def _flashed(place: RevealPlace) -> str:
    water = place.served("W")
    if water and water.sheet:
        return "Head flashing before the membrane, which laps over it."
    return "Head flashing against the board, its upper edge taped, before battens and cladding."


def look_at(place: RevealPlace) -> tuple[str, ...]:
    found = []
    if place.edge == "sill":
        found.append("Water poured on the pan comes out in the cavity.")
    if place.served("A") and not (place.junction.link("A") and place.junction.link("A").broken):
        found.append("Tape without folds in the corners before it is covered.")
    found.append("Clear opening and safety glazing as on C4.")
    return tuple(found)
