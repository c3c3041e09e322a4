"""What a fastener is by the words of the project file. Words that are not known name nothing: many screws are no wood screws."""

import re
from itertools import pairwise

NOUNS = {
    "nail": "nail", "nails": "nail", "screw": "screw", "screws": "screw", "woodscrew": "screw", "woodscrews": "screw",
    "lag": "lag", "bolt": "bolt", "bolts": "bolt",
}  # fmt: skip
BARRED = frozenset((
    "drywall", "plasterboard", "gypsum", "sheet", "metal", "masonry", "concrete", "brick", "machine", "anchor", "shield", "plug",
    "finish", "finishing", "brad", "panel", "roofing", "cap", "duplex", "staple", "staples", "tie", "ties", "rivet", "rivets",
    "no", "not", "without", "tapping", "drilling",
))  # fmt: skip
"""Words beside which a nail or a screw is none of the tables'."""
OF_A_PLAIN_SCREW = frozenset((
    "wood", "timber", "partial", "partially", "full", "fully", "thread", "threads", "threaded", "with", "countersunk",
    "countersink", "flat", "pan", "hex", "washer", "head", "headed", "steel", "stainless", "galvanised", "galvanized", "zinc",
    "plated", "coated", "coarse",
))  # fmt: skip
"""Words that leave a plain screw what it is: its thread, its head, its steel."""

NUMBERED = re.compile(r"\bno\.? ?(?=\d)")
"""The "No." of a size."""


def kind_of(words: str) -> str:
    """nail, screw (of wood) or lag by the words of the project file; empty for anything else, and for two of them."""
    plain = NUMBERED.sub(" ", words.lower())
    said = [one for one in re.findall(r"[^\W\d_]+", plain) if len(one) > 1]
    found = {NOUNS[one] for one in said if one in NOUNS}
    if BARRED & set(said):
        return ""
    if "lag" in found:
        return "lag" if found in ({"lag", "screw"}, {"lag", "bolt"}) else ""
    if found == {"nail"}:
        return "nail"
    return "screw" if found == {"screw"} and _of_wood(said) else ""


def _of_wood(said: list[str]) -> bool:
    """Whether a screw is called one of wood, or nothing that it is called makes it another."""
    named = any(one == "wood" and after.startswith("screw") for one, after in pairwise(said))
    if named or any(one.startswith("woodscrew") for one in said):
        return True
    return all(one in OF_A_PLAIN_SCREW or one in NOUNS for one in said)
