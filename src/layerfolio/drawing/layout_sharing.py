"""Too many tags for a column: thin neighbours share a leader, their circles side by side."""

from collections.abc import Sequence
from dataclasses import replace

from layerfolio.drawing.layout_tags import Tag
from layerfolio.drawing.marks import Point


def shared(tags: list[Tag], thin: Sequence[bool], room: float) -> list[Tag]:
    """Consecutive tags of thin layers on one leader, two and two from the outside in, until the column fits `room`."""
    done, thin = list(tags), list(thin)
    while sum(one.size for one in done) > room:
        pair = next(
            (one for one in range(len(done) - 1) if thin[one] and thin[one + 1] and _single(done, one)), None
        )
        if pair is None:
            break
        first, second = done[pair], done[pair + 1]
        offset = _offset(first, second)
        places = tuple(one for one in first.places)
        merged = replace(first, labels=first.labels + second.labels, places=places, further=(offset,))
        done[pair : pair + 2] = [merged]
        thin[pair : pair + 2] = [True]
    return done


def _single(tags: list[Tag], index: int) -> bool:
    return len(tags[index].labels) == 1 and len(tags[index + 1].labels) == 1


def _offset(first: Tag, second: Tag) -> Point:
    (ax, ay), (bx, by) = first.places[0], min(second.places, key=lambda one: abs(one[0] - first.places[0][0]))
    return bx - ax, by - ay
