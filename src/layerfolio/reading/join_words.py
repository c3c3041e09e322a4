"""What people call the places where parts meet, and the places that have a drawing."""

WORDS = {
    "sill": ("sill", "foot", "foot of the wall", "base", "base of the wall", "slab edge", "edge of the slab", "plinth", "footing",
             "foundation", "sole plate", "bottom plate", "ground floor", "wall to slab", "wall to floor", "wall on slab",
             "wall on floor", "wall to foundation"),
    "rim": ("rim", "rim joist", "band joist", "floor edge", "edge of the floor", "intermediate floor", "upper floor"),
    "eave": ("eave", "wall plate", "top plate", "top of the wall", "soffit", "wall to roof", "wall to ceiling"),
    "verge": ("verge", "gable", "gable edge", "rake", "barge"),
    "ridge": ("ridge",),
    "outside corner": ("corner", "outside corner", "external corner", "outer corner", "building corner"),
    "inside corner": ("inside corner", "internal corner", "inner corner", "re entrant corner"),
    "window": ("window", "window reveal", "reveal", "opening", "door", "door reveal", "window edge", "window frame"),
    "window head": ("window head", "head", "lintel", "door head"),
    "window sill": ("window sill", "window board", "cill", "sill of the window"),
    "window jamb": ("window jamb", "jamb", "window side", "door jamb"),
    "penetration": ("penetration", "service penetration", "pipe", "duct", "sleeve", "pipe penetration", "service entry",
                    "vent pipe", "flue"),
}  # fmt: skip
"""By place: the first words are its own."""

PLACES = {word: place for place, words in WORDS.items() for word in words}
EDGES = ("sill", "jamb", "head")
"""The edges of a window, from below."""


def place_of_join(at: str, has_opening: bool = False) -> str:
    """The place that the words of a join mean, a key of WORDS; empty when nothing is drawn for them.

    A sill or foot that names an opening is that of the opening.
    """
    words = " ".join(at.casefold().replace("-", " ").replace("_", " ").split())
    found = PLACES.get(words) or PLACES.get(words.removesuffix("s")) or ""
    return "window sill" if found == "sill" and has_opening else found


def is_of_window(place: str) -> bool:
    """Whether an opening meets its wall there."""
    return place.startswith("window")
