"""What joins two control layers where they meet, by the families of their materials: common practice of the trade, no source."""

from typing import Literal

from layerfolio.assembly.types import Layer

Way = Literal["membrane", "panel", "boards", "plaster", "concrete", "soft"]
WAYS: dict[Way, tuple[str, ...]] = {
    "membrane": ("membrane",),
    "panel": ("plywood", "strand-board", "particle-board", "wood-fibre", "gypsum", "mineral-board", "foam", "timber", "metal",
              "cork", "glass"),
    "boards": ("timber-board", "tile"),
    "plaster": ("plaster", "earth"),
    "concrete": ("concrete", "masonry"),
}  # fmt: skip
BY: dict[frozenset[Way], str] = {
    frozenset(("membrane",)): "lap and tape",
    frozenset(("panel",)): "tape",
    frozenset(("plaster",)): "mesh",
    frozenset(("concrete",)): "sealant",
    frozenset(("panel", "membrane")): "tape",
    frozenset(("plaster", "membrane")): "mesh and tape",
    frozenset(("plaster", "panel")): "mesh and gasket",
    frozenset(("plaster", "boards")): "mesh and gasket",
    frozenset(("plaster", "concrete")): "mesh and sealant",
    frozenset(("concrete", "membrane")): "turned up",
    frozenset(("concrete", "panel")): "gasket",
    frozenset(("boards", "membrane")): "tape",
}
SAID = {
    "lap and tape": "{a} lapped and taped to {b}",
    "tape": "{a} taped to {b}",
    "mesh": "{a} worked into {b}, with mesh",
    "mesh and tape": "{a} on mesh taped to {b}",
    "mesh and gasket": "{a} on mesh, gasket at {b}",
    "mesh and sealant": "{a} on mesh, sealed to {b}",
    "sealant": "{a} sealed to {b}",
    "gasket": "{a} on a gasket to {b}",
    "turned up": "{b} turned up to {a}",
    "collar": "collar taped to {a}",
    "lap": "{a} laps {b}",
}
HOW = {"lap and tape": "lapped and taped", "tape": "taped", "mesh": "with mesh", "lap": "lapped"}
AT_FRAME = {"plaster": "mesh and sealant", "concrete": "sealant", "soft": "sealant", "boards": "sealant"}


def way(layer: Layer) -> Way:
    """The way a layer is handled when it is joined to another."""
    if layer.kind == "membrane":
        return "membrane"
    return next((name for name, families in WAYS.items() if layer.family in families), "soft")


def joined_by(first: Layer, second: Layer) -> str:
    """What joins two layers: tape, lap, gasket, sealant ..."""
    return BY.get(frozenset((way(first), way(second))), "sealant")


def at_frame(layer: Layer) -> str:
    """What joins a layer to the frame of a window."""
    return AT_FRAME.get(way(layer), "tape")


def said(by: str, first: str, second: str) -> str:
    """The words of a schedule: "panel-15 taped to slab membrane"."""
    if first == second:
        return f"{first} of both sides, {HOW.get(by, 'sealed')}"
    return SAID.get(by, "{a}, " + by + ", {b}").format(a=first, b=second)


def short(layer: Layer) -> str:
    """A layer's name inside a sentence: its title up to the first comma, without a capital that is no abbreviation."""
    title = layer.title.split(",")[0].split("(")[0].strip() or layer.name
    return title if len(title) > 1 and (title[1].isupper() or title[1].isdigit()) else title[0].lower() + title[1:]
