"""What the project file states of an assembly and no drawing of the package shows: to be seen on plans or on site."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from layerfolio.assembly.types import Layer
from layerfolio.codes.findings import Finding
from layerfolio.codes.stated import metres, square_metres
from layerfolio.codes.wording import figure
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.desk import RECORD, Desk
from layerfolio.sheets.markup import plain

NEAR = ("limiting-distance", "glazed-area", "fire-separation", "openings-near-line")
VENTS = ("roof-vents", "roof-ventilation")
BLOCKS = ("fire-blocks", "fireblocking")
GROUND = ("cladding-to-ground", "wood-to-ground", "strawbale-base")
EDGE = ("placement", "against-ground")
FLOOR = ("ground-floors", *EDGE)
FINISH, INSULATION = ("flame-spread", "finish-flame-spread"), ("insulation-flame-spread", "attic-insulation")
ANSWERS = (
    ("distance_to_boundary", "Distance to the boundary", NEAR), ("face_area", "Area of the face toward the boundary", NEAR),
    ("clearance_to_ground", "Cladding above the ground", GROUND),
    ("clearance_to_roof", "Cladding above a roof", ("cladding-to-roof",)),
    ("vents.low", "Vents, low, net free area", VENTS), ("vents.high", "Vents, high, net free area", VENTS),
    ("vents.roof_area", "Roof that the vents serve", VENTS), ("fire_blocks.vertical", "Fire blocks, apart upwards", BLOCKS),
    ("fire_blocks.horizontal", "Fire blocks, apart along the wall", BLOCKS),
    ("fire_blocks.material", "Fire blocks, material", BLOCKS),
    ("ground.heated", "Floor heated", FLOOR), ("ground.above_frost_line", "Floor above the frost line", FLOOR),
    ("ground.integral_footing", "Slab and footing in one piece", FLOOR), ("ground.permafrost", "Floor on permafrost", FLOOR),
    ("ground.insulated_from_edge", "Insulated in from the edge", EDGE),
    ("ground.edge_insulation.resistance", "Edge insulation, resistance", EDGE),
)  # fmt: skip
"""Key of an assembly, its words, and the questions of the record that rest on it."""


class Answer(NamedTuple):
    """One stated answer: of which assembly, what, its value in print, the questions that rest on it."""

    assembly: str
    words: str
    value: str
    questions: tuple[str, ...]


def stated_answers(desk: Desk) -> Table | None:
    """One row for each answer, with the lines of the record; None where the project file states none that a line asks for."""
    rows = [
        Row((f"**{plain(one.assembly)}**", plain(one.words), plain(one.value), ", ".join(map(str, lines))))
        for one in _answers(desk) if (lines := [desk.line(found) for found in desk.dossier.findings if _rests(found, one)])
    ]  # fmt: skip
    columns = (Column("Part", width=18), Column("What is stated"), Column("As", width=62), Column(f"Lines of {RECORD}", width=28))
    return Table(columns, tuple(rows)) if rows else None


def rests_on_an_answer(finding: Finding, desk: Desk) -> bool:
    """Whether a line rests on such an answer, so that it names the sheet of criteria."""
    return any(_rests(finding, one) for one in _answers(desk) if one.assembly == finding.assembly)


def _rests(finding: Finding, answer: Answer) -> bool:
    return finding.assembly == answer.assembly and finding.id.rpartition("/")[2] in answer.questions


def _answers(desk: Desk) -> Iterator[Answer]:
    project, customary = desk.dossier.project, desk.system == "customary"
    for name in desk.dossier.assemblies:
        own = project.assemblies[name]
        for path, words, questions in ANSWERS:
            value = own
            for key in path.split("."):
                value = getattr(value, key, None)
            if value is not None:
                yield Answer(name, words, _shown(value, customary), questions)
        made = desk.dossier.assemblies[name].layers
        pairs = zip(own.layers, made, strict=True)
        yield from dict.fromkeys(row for one, layer in pairs for row in _flame(name, one, layer, project.materials))


def _shown(value: Any, customary: bool) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value.kind == "resistance":
        return figure("R", value.value, customary=customary)
    return (square_metres if value.kind == "area" else metres)(value.value, customary)


def _flame(name: str, layer: Any, made: Layer, materials: dict[str, Any]) -> Iterator[Answer]:
    """Flame spread and smoke developed of a layer, its own or those of its material, for what it is: finish or insulation."""
    material = materials.get(getattr(layer, "material", None) or "")
    found = [
        next((said for one in (layer, material) if (said := getattr(one, key, None)) is not None), None)
        for key in ("flame_spread", "smoke_developed")
    ]  # fmt: skip
    if found[0] is not None:
        smoke = f", smoke developed {found[1]:g}" if found[1] is not None else ""
        title = layer.title or getattr(material, "title", None) or layer.material
        questions = INSULATION if made.insulating else FINISH
        yield Answer(name, f"Flame spread of {title}", f"{found[0]:g}{smoke}", questions)
