"""Tags and texts where a wall meets the edge of a roof, made of what is there."""

from collections.abc import Iterator

from layerfolio.drawing.detail.edge_place import EdgePlace
from layerfolio.drawing.detail.model import Note
from layerfolio.drawing.detail.traces import served
from layerfolio.drawing.detail.words import course_note, joined_words, slots, with_choices
from layerfolio.drawing.figures import Units
from layerfolio.drawing.names import layer_words


def notes(place: EdgePlace, units: Units) -> tuple[Note, ...]:
    """Roof layers and inner wall layers at the right, the wall's outer layers and the edge at the left."""
    return (*_roof(place, units), *_wall(place, units), *_edge(place))


def _roof(place: EdgePlace, units: Units) -> Iterator[Note]:
    found = [one for one in place.roof.courses if one.layer.kind != "cavity"]
    for number, one in enumerate(found):
        x = place.right - (5.0 + 4.0 * (number % 3)) * place.scale
        yield course_note(place.roof, one, place.point(one.middle, x), "right", units)


def _wall(place: EdgePlace, units: Units) -> Iterator[Note]:
    low, high = place.bottom + 4 * place.scale, -place.plates
    left = [one for one in place.wall.courses if one.zone in ("rain", "outer") and one.layer.kind != "cavity"]
    named = {layer_words(one.layer, units) for one in place.roof.courses}
    inner = [one for one in place.wall.courses if one.zone in ("frame", "inner") and one.layer.kind != "cavity"]
    right = [one for one in inner if layer_words(one.layer, units) not in named]  # what both have is named once
    for side, found in (("left", left), ("right", right[::-1])):
        for one, y in zip(found, slots(high, low, len(found)), strict=True):
            yield course_note(place.wall, one, (one.middle, y), side, units)


def _edge(place: EdgePlace) -> Iterator[Note]:
    if place.plate:
        framed = [one for one in place.wall.zone("frame") if one.layer.member] or list(place.wall.zone("frame"))
        yield Note("two plates", ((framed[-1].middle, -place.plate / 2),), "right")
    if not place.is_ceiling and place.cover - place.tail > 40.0:
        x = (place.tail + place.outer) / 2
        lookouts = "lookout, over the gable" if place.has_lookouts else "lookouts, seen beyond"
        words = lookouts if place.verge else f"{_rafter(place)} tail, seen beyond"
        deep = min(89.0, place.carries.end) if place.verge else place.carries.end
        yield Note(words, (place.point(deep / 2, x),), "left")
        if not place.verge and place.slope >= 2:
            yield Note("gutter", ((place.tail - 54.0, place.height(0.0, place.tail) - 61.0),), "left")
    for words, letter in joined_words(place.junction, place.wall):
        at = _joined(place, letter)
        if at:
            yield Note(words, (at,), "right" if letter != "W" else "left")
    for one in place.junction.broken:
        yield Note(one.broken, ((place.frame_end, 2.0),), "right")


def _rafter(place: EdgePlace) -> str:
    member = place.carries.layer.member
    return member.name if member else "roof"


def _joined(place: EdgePlace, letter: str) -> tuple[float, float] | None:
    wall, roof = served(place.wall, letter), served(place.roof, letter)
    if wall is None or roof is None:
        return None
    x, d, down = (wall.start, place.under_outer, 8.0) if letter == "W" else (wall.end, roof.end, 0.0)
    return x, place.height(d, x) - down


def remarks(place: EdgePlace) -> tuple[str, ...]:
    added = "Plates, mesh and tape"
    if not place.is_ceiling:
        edge = "lookouts, barge board" if place.verge else "fascia, gutter, mesh"
        added = f"Plates, {edge}, flashing and tape"
    found = [f"{added} are drawn as commonly built; the project file does not give their sizes."]
    if place.is_ceiling:
        found.append("The roof over this ceiling, its baffle and the air path over the plate stand on the drawings of the roof.")
    else:
        found.append(f"Seat, notch and ties of the {_rafter(place)}s are the engineer's.")
    if not place.is_ceiling and place.seat < place.frame_end - 0.5:
        found.append("The notch over the plates is drawn no deeper than a third of the rafter; the engineer sets it.")
    if place.junction.cannot:
        found.append(place.junction.cannot)
    return with_choices(found, place.junction)


def order_of_work(place: EdgePlace) -> tuple[str, ...]:
    found = []
    if served(place.wall, "A") and served(place.roof, "A"):
        found.append("Inner layer of the wall up to the one above, the joint sealed before it is covered.")
    if place.wall.zone("outer") and not place.is_ceiling:
        where = "under the lookouts" if place.has_lookouts else "under the roof's boards, fitted round the rafters"
        found.append(f"Outer layers of the wall up {where}.")
    if served(place.wall, "W") and served(place.roof, "W"):
        found.append("Water control of the wall taped to the underside of the roof's boards before the battens.")
    return tuple(found) or ("Insulation of the roof over the plates before the lining.",)


def look_at(place: EdgePlace) -> tuple[str, ...]:
    found = ["No insulation missing over the plates."]
    if not place.junction.broken:
        found.insert(0, "Each control line turns from wall to roof without a gap.")
    if any(one.layer.cavity == "ventilated" for one in (*place.wall.zone("rain"), *place.roof.zone("rain"))):
        found.append("Cavities open at the edge, mesh in place.")
    return tuple(found)
