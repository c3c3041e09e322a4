"""What people call a word of a closed list in their trade. Read only once a word is not known."""

from collections.abc import Iterable

MEANT = {
    "imperial": "customary", "us": "customary", "inch": "customary", "inches": "customary", "si": "metric",
    "industrial": "workshop", "industry": "workshop", "factory": "workshop", "garage": "storage", "warehouse": "storage",
    "retail": "mercantile", "shop": "mercantile", "store": "mercantile", "business": "office",
    "residential": "house", "dwelling": "house", "single family": "house", "detached": "house",
    "n": "north", "ne": "north-east", "e": "east", "se": "south-east", "s": "south", "sw": "south-west", "w": "west",
    "nw": "north-west",
    "slab on ground": "slab", "slab on grade": "slab", "concrete slab": "slab", "basement wall": "foundation-wall",
    "air barrier": "air control", "vapour barrier": "vapour control", "vapor barrier": "vapour control",
    "vapour retarder": "vapour control", "vapor retarder": "vapour control", "vapor control": "vapour control",
    "water resistive barrier": "water control", "weather barrier": "water control", "wrb": "water control",
    "insulation": "thermal control", "cladding": "weather face", "shear": "bracing",
    "quebec": "qc-r1", "québec": "qc-r1", "qc": "qc-r1", "bc": "bc-2024", "bcbc": "bc-2024", "bcbc 2024": "bc-2024",
    "british columbia": "bc-2024",
    "outdoor air": "outside air", "exterior": "outside air", "attic": "vented space", "soil": "ground",
    "casement": "side-hung", "awning": "top-hung", "hopper": "bottom-hung", "vinyl": "pvc",
}  # fmt: skip


def meant_by(word: str, known: Iterable[str]) -> str:
    """The known word that the trade calls so; empty when there is none among these."""
    plain = " ".join(word[:100].lower().replace("_", " ").replace("-", " ").split())
    names = list(known)
    other = MEANT.get(plain, "")
    if other in names:
        return other
    return next((one for one in names if one.replace("-", "").replace(" ", "") == plain.replace(" ", "")), "")
