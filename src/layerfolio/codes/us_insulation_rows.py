"""What the table of insulation R-values may ask of a part: its own row, and those that one more answer would open."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from layerfolio.codes import judges
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.inputs import counted
from layerfolio.codes.mass_walls import mass_of
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import square_metres
from layerfolio.studies.types import LayerHeat, ThermalStudy
from layerfolio.units.table import unit_factor

RSI = unit_factor("h.ft2.F/Btu", "resistance")


@dataclass(frozen=True, slots=True)
class Insulation:
    """Resistance of insulation between framing and of insulation without it, h.ft2.F/Btu; names of layers without a figure."""

    cavity: float
    continuous: float
    missing: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Row:
    """Ways of reaching it, pairs of cavity and continuous insulation; or their sum. `question`: it holds if that is so."""

    ways: tuple[tuple[float, float], ...]
    summed: bool = False
    question: str = ""

    def holds(self, found: Insulation) -> bool:
        """Whether the insulation reaches it."""
        if self.summed:
            return judges.at_least(found.cavity + found.continuous, self.ways[0][0])
        return any(judges.at_least(found.cavity, a) and judges.at_least(found.continuous, b) for a, b in self.ways)

    @property
    def asks_nothing(self) -> bool:
        return (0, 0) in self.ways

    @property
    def least(self) -> float | None:
        """The one figure of a row that has one."""
        return self.ways[0][0] if self.summed else None

    @property
    def words(self) -> str:
        if self.summed:
            return f"R-{self.ways[0][0]:g}"
        return ", or ".join(_pair(*one) for one in self.ways)


def _pair(cavity: float, continuous: float) -> str:
    if not cavity and not continuous:
        return "none"
    named = [f"R-{cavity:g} in cavities"] if cavity else []
    return " and ".join(named + ([f"R-{continuous:g} continuous"] if continuous else []))


def insulation_of(thermal: ThermalStudy, without: str = "") -> Insulation:
    """What of a part counts: its layers of insulation, films, air, cladding and boards left out; `without` one layer."""
    some = [one for one in counted(thermal) if one.layer.insulating and one.layer.name != without]
    framed, plain = (_sum(x for x in some if (x.layer.member is not None) == is_framed) for is_framed in (True, False))
    return Insulation(framed, plain, tuple(one.layer.name for one in some if one.resistance is None))


def _sum(layers: Iterator[LayerHeat]) -> float:
    return sum(one.resistance or 0.0 for one in layers) / RSI


def rows(requirement: Requirement, thermal: ThermalStudy, about: Context, zone: str) -> list[Row]:
    """The rows for a zone, those that hold for sure first."""
    figures, question = requirement.figures, requirement.question
    amended = about.amended.get(requirement.id)
    if amended is not None and isinstance(amended.value, float):
        value = round(amended.value / RSI, 6)
        return [Row(((value, 0),), summed=True)] if "least" in figures else [Row(((value, 0), (0, value)))]
    if question == "wall-insulation":
        return list(_walls(requirement, thermal, zone))
    if question == "ceiling-insulation":
        return list(_ceilings(requirement, thermal, about, zone))
    if question == "foundation-wall-insulation":
        return list(_foundations(requirement, zone))
    return [_summed(cell(figures["least"], zone)) if "least" in figures else _ways(figures["ways"], zone)]


def _summed(value: float, question: str = "") -> Row:
    return Row(((value, 0),), summed=True, question=question)


def _ways(table: dict[str, Any], zone: str, question: str = "") -> Row:
    return Row(tuple(tuple(one) for one in cell(table, zone)), question=question)


def _walls(requirement: Requirement, thermal: ThermalStudy, zone: str) -> Iterator[Row]:
    """A framed wall is asked as one; one without framing as a mass wall where it is one, else that is a question."""
    rule = requirement.rule["mass"]
    found = mass_of(thermal.assembly, rule)
    outer, inner = cell(requirement.figures["mass_walls"], zone)
    mass = inner if found.heavy is None or found.inside else outer
    if found.heavy and not found.framed:
        yield _summed(mass)
        return
    yield _ways(requirement.figures["ways"], zone)
    if found.heavy or (found.heavy is None and not found.framed):
        yield _summed(mass, f"is it a mass wall (of concrete, masonry, earth or logs, or of {rule['words']})")


def _ceilings(requirement: Requirement, thermal: ThermalStudy, about: Context, zone: str) -> Iterator[Row]:
    figures, assembly = requirement.figures, thermal.assembly
    least = cell(figures["least"], zone)
    yield _summed(least)
    if assembly.kind == "ceiling" and assembly.faces != "outside air":
        if least in figures["full_depth"]:
            words = "does the insulation keep its full depth over the wall plate at the eaves (N1102.2.1)"
            yield _summed(figures["full_depth"][least], words)
        return
    rule = requirement.rule["no_attic"]
    if least > rule["least"] and _small(thermal, about, rule):
        most = square_metres(rule["area"], about.customary)
        yield _summed(rule["least"], (
            f"is there no room for more, over at most {most} and {rule['share'] * 100:.0f} % of the insulated ceilings "
            f"({rule['clause']})"
        ))  # fmt: skip
    if "above_deck" in figures and not insulation_of(thermal).cavity:
        yield Row(((0, cell(figures["above_deck"], zone)),), question="does all insulation lie above the roof deck")


def _small(thermal: ThermalStudy, about: Context, rule: dict[str, Any]) -> bool:
    """Whether the part is small enough for the reduction, or that is not known."""
    own = thermal.assembly.area
    all_ = [one.assembly.area for one in about.envelope.thermal.values() if one.assembly.kind in ("roof", "ceiling")]
    if own is None:
        return True
    whole = None if not all_ or any(one is None for one in all_) else sum(one.value for one in all_)
    return judges.at_most(own.value, rule["area"]) and (whole is None or judges.at_most(own.value, rule["share"] * whole))


def _foundations(requirement: Requirement, zone: str) -> Iterator[Row]:
    figures = requirement.figures
    yield _ways(figures["ways"], zone)
    memory = figures.get("ways_from_memory", {})
    if zone in memory or zone.rstrip("ABC") in memory:
        yield _ways(memory, zone, "does the note of the adopted table allow it, which was not read")
    if zone.startswith(requirement.rule["warm_humid"]) and zone != "3C":
        yield Row(((0, 0),), question="is the place warm-humid by the list of counties, and the wall that of a basement")
