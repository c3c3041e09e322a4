"""Tags and texts at the ridge."""

from collections.abc import Iterator

from layerfolio.drawing.detail.model import Note
from layerfolio.drawing.detail.ridge_place import BOARD, GAP, RISE, RidgePlace
from layerfolio.drawing.detail.words import course_note, joined_words, with_choices
from layerfolio.drawing.figures import Units


def notes(place: RidgePlace, units: Units) -> tuple[Note, ...]:
    """Layers at the right, what joins the slopes at the left."""
    return (*_layers(place, units), *_middle(place))


def _layers(place: RidgePlace, units: Units) -> Iterator[Note]:
    found = [one for one in place.arm.courses if one.layer.kind != "cavity"]
    for number, one in enumerate(found):
        x = place.right - (5.0 + 4.0 * (number % 3)) * place.scale
        yield course_note(place.arm, one, (x, place.height(one.middle, x)), "right", units)


def _middle(place: RidgePlace) -> Iterator[Note]:
    if place.vented:
        x = GAP + 60.0
        at = -x, place.height(place.cover, x) + RISE
        yield Note("ridge cap on spacers, mesh at its edges", (at,), "left")
    if place.has_board:
        at = -BOARD / 2, place.height(place.arm.zone("frame")[-1].end * 0.6, 0.0)
        yield Note("ridge board or beam, by the engineer", (at,), "left")
    for words, letter in joined_words(place.junction, place.arm):
        course = place.served(letter)
        if course and letter != "W":
            yield Note(words, ((-10.0, place.height(course.end, 10.0)),), "left")
    for one in place.junction.broken:
        yield Note(one.broken, ((-4.0, place.height(place.arm.courses[-1].start, 4.0)),), "left")


def remarks(place: RidgePlace) -> tuple[str, ...]:
    found = ["Ridge board, cap and mesh are drawn as commonly built; the project file does not give their sizes."]
    if place.vented:
        found.append("The slot at the ridge is a sign: vents are judged from the areas in the project file.")
    return with_choices(found, place.junction)


def order_of_work(place: RidgePlace) -> tuple[str, ...]:
    found = []
    if place.has_board:
        found.append("Ridge board or beam by the engineer; insulation fitted to it on both sides.")
    if place.served("A"):
        found.append("Inner layer joined over the ridge and sealed before battens and lining.")
    if place.served("W"):
        found.append("Membrane lapped over the ridge before the battens.")
    return tuple(found)


def look_at(place: RidgePlace) -> tuple[str, ...]:
    found = [] if place.junction.broken else ["Control lines pass the ridge without a break."]
    if place.vented:
        found.append("Cavities open under the cap, mesh in place.")
    return tuple(found)
