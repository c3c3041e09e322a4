"""Layers of a DXF file by the role of what lies on them; line weights and patterns that the format knows."""

LAYERS: dict[str, tuple[int, bool]] = {  # name: colour number, whether it prints
    "LF-CUT": (7, True), "LF-FACES": (7, True), "LF-HATCH": (8, True), "LF-MEMBRANES": (7, True), "LF-CONTROL": (7, True),
    "LF-FASTENERS": (7, True), "LF-AIR": (7, True), "LF-BREAKS": (7, True), "LF-DIMENSIONS": (7, True), "LF-LEADERS": (7, True),
    "LF-TAGS": (7, True), "LF-TEXT": (7, True), "LF-KEY": (7, True), "LF-OTHER": (7, True), "LF-MASK": (7, True),
}  # fmt: skip
WEIGHTS = (0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211)
DASHED: dict[str, list[float]] = {  # strokes and gaps, mm on paper
    "LF-WATER": [5.0, -1.2], "LF-THERMAL": [1.4, -1.0], "LF-CENTRE": [5.0, -1.0, 0.6, -1.0], "LF-HIDDEN": [2.0, -1.0],
    "LF-BEHIND": [1.2, -0.7],
}  # fmt: skip
_BY_ROLE = (
    ("outline", "LF-CUT"), ("member", "LF-CUT"), ("face", "LF-FACES"), ("joint", "LF-FACES"), ("beyond", "LF-FACES"),
    ("torn", "LF-BREAKS"), ("break", "LF-BREAKS"), ("hatch", "LF-HATCH"), ("membrane", "LF-MEMBRANES"),
    ("metal", "LF-MEMBRANES"), ("thin layer", "LF-MEMBRANES"), ("tape", "LF-MEMBRANES"), ("flashing", "LF-MEMBRANES"),
    ("gasket", "LF-MEMBRANES"), ("seal", "LF-MEMBRANES"), ("mesh", "LF-MEMBRANES"), ("control", "LF-CONTROL"),
    ("letter field", "LF-CONTROL"), ("fastener", "LF-FASTENERS"), ("air", "LF-AIR"), ("leader", "LF-LEADERS"),
    ("tag", "LF-TAGS"), ("note", "LF-TEXT"), ("side", "LF-TEXT"), ("slope", "LF-TEXT"), ("title", "LF-TEXT"),
    ("dimension", "LF-DIMENSIONS"), ("extension", "LF-DIMENSIONS"), ("tick", "LF-DIMENSIONS"), ("centre", "LF-DIMENSIONS"),
    ("spacing", "LF-DIMENSIONS"), ("thickness", "LF-DIMENSIONS"), ("overall", "LF-DIMENSIONS"), ("check bar", "LF-KEY"),
    ("key", "LF-KEY"), ("scale", "LF-KEY"),
)  # fmt: skip
_BY_GROUP = {
    "hatches": "LF-HATCH", "faces": "LF-FACES", "members": "LF-CUT", "membranes": "LF-MEMBRANES", "control lines": "LF-CONTROL",
    "dimensions": "LF-DIMENSIONS", "leaders": "LF-LEADERS", "tags": "LF-TAGS", "words": "LF-TEXT", "key": "LF-KEY",
    "check bar": "LF-KEY",
}  # fmt: skip


def layer_of(role: str, group: str) -> str:
    """The layer of a mark by its role, else by the group that it stands in."""
    for start, layer in _BY_ROLE:
        if role.startswith(start):
            return layer
    return _BY_GROUP.get(group, "LF-OTHER")


def material_layer(family: str) -> str:
    """The layer of the outlines of one material family."""
    plain = "".join(one if one.isascii() and one.isalnum() else "-" for one in family.upper())
    return f"LF-MATERIAL-{plain}"
