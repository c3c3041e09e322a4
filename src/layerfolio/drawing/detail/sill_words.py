"""Tags and texts at the foot of a wall, made of what is there."""

from collections.abc import Iterator

from layerfolio.drawing.detail.model import Note
from layerfolio.drawing.detail.sill_floor import finish_from, rim_end
from layerfolio.drawing.detail.sill_place import SillPlace
from layerfolio.drawing.detail.sill_wall import plates
from layerfolio.drawing.detail.traces import served
from layerfolio.drawing.detail.words import course_note, joined_words, slots, with_choices
from layerfolio.drawing.figures import Units


def notes(place: SillPlace, units: Units) -> tuple[Note, ...]:
    """Wall layers up to the frame at the left, from there at the right; then floor, plate, flashing, tape."""
    return (*wall_notes(place, units), *_foot(place), *_floor(place, units))


def wall_notes(place: SillPlace, units: Units) -> Iterator[Note]:
    """Layers of the wall over its foot."""
    low, high = place.plate + 60.0, place.top - 6 * place.scale
    left = [one for one in place.wall.courses if one.zone in ("rain", "outer") and not _plain(one)]
    right = [one for one in place.wall.courses if one.zone in ("frame", "inner") and not _plain(one)]
    for side, found in (("left", left), ("right", right[::-1])):
        for one, y in zip(found, slots(high, low, len(found)), strict=True):
            yield course_note(place.wall, one, (one.middle, y), side, units)


def _plain(course) -> bool:
    """Cavities need no tag of their own: what lies on either side has one."""
    return course.layer.kind == "cavity"


def _foot(place: SillPlace) -> Iterator[Note]:
    found = plates(place)
    if found:
        a, b = found[0]
        yield Note("plate" + (", on the membrane" if _membrane_below(place) else ""), (((a + b) / 2, place.plate / 2),), "left")
    y = place.gap - 3.0
    middle = (place.cover + place.drip) / 2
    yield Note("flashing, mesh above", ((middle, y - 0.09 * (place.cover - middle)),), "left")
    if place.edge:
        material = (place.slab.ground.get("edge_insulation") or {}).get("material")
        words = f"edge insulation: {material}" if material else "edge insulation"
        yield Note(words, ((place.edge_face / 2, max(place.bottom, -place.edge[1]) * 0.45),), "left")
    for words, letter in joined_words(place.junction, place.wall):
        course = served(place.wall, letter)
        if course and letter != "W":
            yield Note(words, ((course.end + 1.0, 24.0),), "right")
    for one in place.junction.broken:
        yield Note(one.broken, ((place.frame_end + 2.0, 2.0),), "right")


def _membrane_below(place: SillPlace) -> bool:
    return not place.below and any(one.sheet and one.start < place.base for one in place.floor.courses)


def _floor(place: SillPlace, units: Units) -> Iterator[Note]:
    left = finish_from(place) + 40.0
    for one in place.floor.courses[::-1]:
        low = max(one.start - place.base, place.bottom)
        high = one.end - place.base
        if high <= place.bottom or _plain(one):
            continue
        x = max(left, place.bears_from + 30.0) if place.below else left
        yield course_note(place.floor, one, (min(x, place.right - 20.0), (low + high) / 2), "right", units)
    if place.below and place.has_joists:
        yield Note("rim joist", ((rim_end(place) / 2, place.underside * 0.6),), "left")
        kind = {"wall": "foundation wall", "piers": "beam on piers", "piles": "beam on piles"}.get(place.founded)
        if kind:
            yield Note(kind, ((40.0, place.underside - 120.0),), "left")


def remarks(place: SillPlace) -> tuple[str, ...]:
    """What is drawn without being in the project file."""
    found = ["Plate, flashing, tape and mesh are drawn as commonly built; anchors of the plate are the engineer's."]
    if place.below and not place.junction.foundation:
        found.append("What carries the floor is not stated and not drawn.")
    elif place.below:
        found.append("The foundation is drawn as a sign of its kind: its size, fixing and reinforcement are the engineer's.")
    if place.edge:
        stated = (place.slab.ground.get("edge_insulation") or {}).get("material")
        unsaid = "" if stated else "The material of the edge insulation is not stated: it has no hatch. "
        found.append(f"{unsaid}Above the ground edge insulation needs a coating.")
    if place.junction.cannot:
        found.append(place.junction.cannot)
    return with_choices(found, place.junction)


def order_of_work(place: SillPlace) -> tuple[str, ...]:
    found = []
    if _membrane_below(place):
        found.append("Membrane under the slab, up its edge and over its top; plate on it.")
    elif place.below:
        found.append("Rim and deck first, then the plate on the deck.")
    if (course := served(place.wall, "A")) and course.start >= place.frame_end - 0.01:
        found.append("Air control layer down to the floor, its foot sealed before it is covered.")
    if place.wall.zone("rain"):
        found.append(f"Flashing {_after(place)}, then battens and cladding.")
    return tuple(found)


def _after(place: SillPlace) -> str:
    water = served(place.wall, "W")
    if water is None:
        return "at the foot of the cladding"
    return "before the membrane, the membrane lapped over it" if water.sheet else "against the board, its upper edge taped"


def look_at(place: SillPlace) -> tuple[str, ...]:
    found = []
    if place.junction.link("A") and not place.junction.link("A").broken:
        found.append("Air line unbroken from wall to floor.")
    if (water := served(place.wall, "W")) and water.sheet:
        found.append("Membrane laps the flashing and not the other way round.")
    elif water:
        found.append("Tape over the upper edge of the flashing sticks to the board without folds.")
    if any(one.layer.cavity == "ventilated" for one in place.wall.zone("rain")):
        found.append("Cavity open at the foot, mesh in place.")
    if place.edge:
        found.append("Edge insulation tight under the flashing, no gap to the slab.")
    return tuple(found)
