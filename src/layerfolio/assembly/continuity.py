"""Whether water, air, vapour and thermal control pass a junction: which layers join, by what, or why the line stops.

By rule from the layers that the project file names for each control; what is done on site is for the site to show.
"""

from collections.abc import Mapping

from layerfolio.assembly.continuity_heat import heat_link
from layerfolio.assembly.continuity_water import water_link
from layerfolio.assembly.joining import HOW, at_frame, joined_by, said, short, way
from layerfolio.assembly.junction_titles import called
from layerfolio.assembly.junction_types import Junction, Letter, Link
from layerfolio.assembly.types import Assembly, Layer

SERVES: dict[Letter, str] = {"W": "water control", "A": "air control", "V": "vapour control"}
PIPE = ("pipe", "pipe")


def links(junction: Junction, assemblies: Mapping[str, Assembly]) -> tuple[Link, ...]:
    """One link for each control that either side has, in the order W, A, V, T."""
    sides = [assemblies[name] for name in junction.of if name in assemblies]
    found = (water_link(junction, sides), _tight("A", junction, sides), _tight("V", junction, sides), heat_link(junction, sides))
    return tuple(one for one in found if one is not None)


def serving(assembly: Assembly, letter: Letter) -> Layer | None:
    """The layer that carries a control; the outermost where several are named."""
    return next((one for one in assembly.layers if SERVES[letter] in one.serves), None)


def _tight(letter: Letter, junction: Junction, sides: list[Assembly]) -> Link | None:
    """Air or vapour control."""
    first = serving(sides[0], letter)
    at = (sides[0].name, first.name) if first else None
    if junction.opening:
        by = at_frame(first) if first else ""
        return first and Link(letter, at, (junction.opening, "frame"), by, said(by, short(first), f"frame of {junction.opening}"))
    if junction.kind == "penetration":
        return first and _collar(letter, at, first)
    if len(sides) == 1 or junction.kind == "rim":
        return first and _same(letter, junction, sides[0], first)
    return _pair(letter, junction, sides)


def _collar(letter: Letter, at: tuple[str, str] | None, layer: Layer) -> Link:
    if way(layer) in ("membrane", "panel", "boards"):
        return Link(letter, at, PIPE, "tape", f"collar taped to {short(layer)} and pipe")
    return Link(letter, at, PIPE, "mesh and tape" if way(layer) == "plaster" else "sealant", f"collar bedded in {short(layer)}")


def _same(letter: Letter, junction: Junction, side: Assembly, layer: Layer) -> Link:
    """One layer on both sides: round a corner, over a ridge, past the edge of a floor."""
    at = (side.name, layer.name)
    if junction.kind == "rim":
        words = f"strip round the rim, joined to {short(layer)}"
        return Link(letter, at, at, "tape" if way(layer) in ("membrane", "panel") else "mesh and tape", words)
    by = joined_by(layer, layer)
    where = {"ridge": "over the ridge"}.get(junction.kind, "round the corner")
    return Link(letter, at, at, by, f"{short(layer)} {where}, {HOW.get(by, 'sealed')}")


def _pair(letter: Letter, junction: Junction, sides: list[Assembly]) -> Link | None:
    """A link where both sides have the layer, a broken one where one side has; none where neither has."""
    layers = [serving(one, letter) for one in sides]
    ends = [(side.name, layer.name) if layer else None for side, layer in zip(sides, layers, strict=True)]
    if not any(layers):
        return None
    if not all(layers):
        lacking = sides[layers.index(None)]
        return Link(letter, *ends, broken=f"no layer of {called(lacking)} serves {SERVES[letter]}")
    return Link(letter, *ends, *_how(junction, sides, layers))


def _how(junction: Junction, sides: list[Assembly], layers: list[Layer]) -> tuple[str, str]:
    first, second = layers
    if junction.kind == "sill" and way(second) == "membrane" and _below_structure(sides[1], second):
        return joined_by(first, second), f"{short(second)} turned up, {_stuck(first, second)} {short(first)}"
    by = joined_by(first, second)
    return by, said(by, short(first), short(second))


def _stuck(first: Layer, second: Layer) -> str:
    by = joined_by(first, second)
    return {"tape": "taped to", "lap and tape": "lapped by", "turned up": "stuck to"}.get(by, "sealed to")


def _below_structure(floor: Assembly, layer: Layer) -> bool:
    """Whether a membrane lies under what carries, so that it has to come up round the edge."""
    return any(one.number > layer.number and one.family == "concrete" for one in floor.layers)
