"""The nodes of a YAML tree, each with its place."""

from layerfolio.reading.report import Place

_NULLS = {"", "~", "null", "Null", "NULL"}


class Node:
    """`place` is where the value begins, `holder` where its key or list item stands; `size` counts the values in it."""

    __slots__ = ("height", "holder", "place", "size")

    def __init__(self, place: Place):
        self.place = self.holder = place
        self.size = self.height = 1


class Scalar(Node):
    """`lost` is what stands beside the text in the file and was perhaps meant to belong to it: `#4`, `&co`."""

    __slots__ = ("lost", "plain", "text")

    def __init__(self, place: Place, text: str, plain: bool, lost: str = ""):
        super().__init__(place)
        self.text, self.plain, self.lost = text, plain, lost

    @property
    def is_null(self) -> bool:
        return self.plain and self.text in _NULLS


class Sequence(Node):
    __slots__ = ("items",)

    def __init__(self, place: Place):
        super().__init__(place)
        self.items: list[Node] = []


class Mapping(Node):
    """`keys` holds the place of each key."""

    __slots__ = ("items", "keys")

    def __init__(self, place: Place):
        super().__init__(place)
        self.items: dict[str, Node] = {}
        self.keys: dict[str, Place] = {}
