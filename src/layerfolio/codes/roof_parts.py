"""A roof as the American section on ventilation sees it: the structural sheathing, and whether air passes below it."""

from dataclasses import dataclass

from layerfolio.assembly.types import Layer
from layerfolio.codes.inputs import counted
from layerfolio.codes.requirements import Requirement
from layerfolio.studies.types import LayerHeat, ThermalStudy


@dataclass(frozen=True, slots=True)
class RoofParts:
    """`air`: the ventilated cavity between insulation and sheathing, None in an unvented roof; `deck`: the structural
    sheathing on the rafters; `above`, `below`: insulation on either side of it, from the outside in.
    """

    air: Layer | None
    deck: Layer | None
    above: tuple[LayerHeat, ...]
    below: tuple[LayerHeat, ...]

    @property
    def vented(self) -> bool:
        return self.air is not None


def roof_parts(requirement: Requirement, thermal: ThermalStudy) -> RoofParts:
    """The parts of a roof or ceiling. A ventilated cavity outside the sheathing that lies on the rafters, under the
    covering, is no ventilation of the roof.
    """
    assembly, structural = thermal.assembly, requirement.rule["structural"]
    framed = [one.number for one in assembly.layers if one.counts and one.member and one.kind == "solid"]
    cavities = [
        one for one in assembly.layers if one.kind == "cavity" and (one.cavity == "ventilated" or not one.counts)
    ]
    air = max(cavities, key=lambda one: one.number, default=None)
    edge = min(framed, default=len(assembly.layers) + 1)
    counted_layers = [one for one in assembly.layers if one.counts and not one.is_cladding]
    decks = [one for one in counted_layers if one.family in structural and one.number < edge]
    if not framed:
        decks = [one for one in decks if one.insulating is False]
    deck = max(decks, key=lambda one: one.number, default=None)
    insulation = [one for one in counted(thermal) if one.layer.insulating]
    number = deck.number if deck else 0
    return RoofParts(
        air if deck is None else None, deck,
        tuple(one for one in insulation if one.layer.number < number),
        tuple(one for one in insulation if one.layer.number > number),
    )  # fmt: skip
