"""From a dotted path back to the place in the file."""

import re

from layerfolio.reading.report import Place
from layerfolio.reading.tree import Mapping, Node, Sequence

_INDEX = re.compile(r"\[([0-9]+)\]\.?")


def place_of(tree: Mapping, path: str) -> Place:
    """The place of the value at `path`; of the nearest thing above it that exists when it does not."""
    node: Node = tree
    place = tree.place
    while path:
        found = _step(node, path)
        if found is None:
            return node.holder
        node, path = found
        place = node.place
    return place


def _step(node: Node, path: str) -> tuple[Node, str] | None:
    """The child that the path begins with, and the rest of the path. Names may hold dots: the longest fitting wins."""
    if isinstance(node, Sequence) and (match := _INDEX.match(path)):
        index = int(match[1])
        return (node.items[index], path[match.end() :]) if index < len(node.items) else None
    if isinstance(node, Mapping):
        for name in sorted(node.items, key=len, reverse=True):
            rest = path[len(name) :]
            if path.startswith(name) and (not rest or rest[0] in ".["):
                return node.items[name], rest.removeprefix(".")
    return None
