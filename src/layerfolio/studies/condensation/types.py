"""What the moisture studies give. SI; months of a run start with its start month; planes from the outside in."""

from dataclasses import dataclass
from functools import cached_property
from typing import Literal, NamedTuple

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.datum import Datum
from layerfolio.steps.trace import Trace
from layerfolio.studies.climate_year import MONTHS, Year
from layerfolio.studies.condensation.run import LayerValue, Month, Node, Outcome, Plane, Profile, Run
from layerfolio.studies.condensation.section import Part
from layerfolio.studies.types import LayerHeat

Verdict = Literal["meets", "does not meet", "needs judgement", "needs evidence"]
MONTHLY, TWO_PERIOD = "monthly", "two-period"


class Need(NamedTuple):
    """Temperature factor that one limit of surface humidity asks, month by month (None where nothing is asked).

    `beyond` names the months in which the room air itself is over the limit (factor 1 and more): no section can answer
    that, so they take no part in `required`.
    """

    limit: float
    monthly: tuple[float | None, ...]
    required: float | None
    critical_month: str
    beyond: tuple[str, ...] = ()


class SurfaceStudy(NamedTuple):
    """`provided` is the lowest factor; through the insulation always, through framing where there is any."""

    provided: float
    through_insulation: float
    through_framing: float | None
    mould: Need
    corrosion: Need

    @property
    def keeps_dry(self) -> bool:
        """Whether the surface stays at or below the mould limit in every month."""
        return not self.mould.beyond and (self.mould.required is None or self.provided >= self.mould.required)


class Check(NamedTuple):
    """One comparison of the two-period method; `mark` is that of the limit, `value` None where it is unknown."""

    name: str
    value: float | None
    limit: float
    verdict: Verdict
    mark: str
    source: str
    reason: str


class Period(NamedTuple):
    """The two-period balance with one choice of cups, kg/m2; `planes` with their share of the condensate."""

    values: tuple[LayerValue, ...]
    planes: tuple[tuple[tuple[str, str], float], ...]
    condensed: float
    evaporated: float
    reserve: float
    checks: tuple[Check, ...]
    verdict: Verdict


class TwoPeriodStudy(NamedTuple):
    """`limit` is that on the condensate as expected, `reserve_limit` None where no timber is enclosed.

    `outside` says why the method does not reach this assembly; then the verdict is needs judgement.
    """

    expected: Period
    less_favourable: Period
    limit: float
    reserve_limit: float | None
    verdict: Verdict
    outside: tuple[str, ...] = ()


class Change(NamedTuple):
    """The balance run again with one thing changed. `outcome` None: it could not be run, and `why` says so."""

    key: str
    words: str
    outcome: Outcome | None
    greatest_accumulation: float | None
    greatest_month: str
    turns: bool
    why: str = ""


class Condition(NamedTuple):
    """One condition of a construction, in words, and whether the section meets it."""

    words: str
    holds: bool


class Construction(NamedTuple):
    """A construction that DIN 4108-3 accepts without a calculation; it is this one where all conditions hold."""

    title: str
    source: str
    conditions: tuple[Condition, ...]

    @property
    def fits(self) -> bool:
        return all(one.holds for one in self.conditions)


class Basis(NamedTuple):
    """What the study was run from: parts of the section, heat of its layers, films (inside, outside), fixed cups, and
    the values of both runs; those are empty where a figure is missing."""

    parts: tuple[Part, ...]
    heat: tuple[LayerHeat, ...]
    films: tuple[Datum, Datum]
    fixed: dict[str, str]
    expected: tuple[LayerValue, ...]
    less_favourable: tuple[LayerValue, ...]


@dataclass(frozen=True)
class CondensationStudy:
    """Moisture in one assembly. A part that could not be computed is None; the two `missing_` say why.

    `method` is the one the project asks to decide. `cautions` are limits of the method that this assembly touches.
    What only sheets print (trace, sensitivity, construction) is worked out when it is first asked for.
    """

    assembly: Assembly
    method: str
    year: Year | None
    expected: Run | None
    less_favourable: Run | None
    surface: SurfaceStudy | None
    two_period: TwoPeriodStudy | None
    cautions: tuple[str, ...]
    missing_layers: tuple[str, ...]
    missing_inputs: tuple[str, ...]
    basis: Basis

    @cached_property
    def trace(self) -> Trace:
        """The printed steps: values of both runs, one month at one plane, the surface, two periods."""
        from layerfolio.studies.condensation.printed import trace_of

        return trace_of(self)

    @cached_property
    def sensitivity(self) -> tuple[Change, ...]:
        """The balance as expected, run again with one thing changed at a time; empty without such a run."""
        from layerfolio.studies.condensation.sensitivity import sensitivity

        return sensitivity(self)

    @cached_property
    def construction(self) -> Construction | None:
        """The row for this kind of assembly in the table of constructions that need no calculation."""
        from layerfolio.studies.condensation.no_calculation import construction

        return construction(self.assembly, self.basis.less_favourable)

    @property
    def evaluated(self) -> bool:
        """Whether the method that decides has a result."""
        return self.clears is not None

    @property
    def months(self) -> tuple[Month, ...]:
        """The twelve months; January first and empty where the monthly balance finds nothing or is not the method."""
        if self.method == MONTHLY and self.expected:
            return self.expected.months
        return tuple(Month(name, (), 0.0, 0.0) for name in MONTHS)

    @property
    def greatest_accumulation(self) -> float | None:
        if self.method == TWO_PERIOD:
            return self.two_period.expected.condensed if self.two_period else None
        return self.expected.greatest_accumulation if self.expected else None

    @property
    def one_reading(self) -> bool:
        """Whether both runs take the same vapour values: one is known of each layer, or the file fixes the cups."""
        both = (self.expected, self.less_favourable)
        return None not in both and [one.s_d for one in both[0].values] == [one.s_d for one in both[1].values]

    @property
    def clears(self) -> bool | None:
        """As expected; None when it was not computed."""
        if self.method == TWO_PERIOD:
            return _dries(self.two_period.expected) if self.two_period else None
        return self.expected.clears if self.expected else None

    @property
    def clears_less_favourable(self) -> bool | None:
        if self.method == TWO_PERIOD:
            return _dries(self.two_period.less_favourable) if self.two_period else None
        return self.less_favourable.clears if self.less_favourable else None

    @property
    def greatest_less_favourable(self) -> float | None:
        if self.method == TWO_PERIOD:
            return self.two_period.less_favourable.condensed if self.two_period else None
        return self.less_favourable.greatest_accumulation if self.less_favourable else None


def _dries(period: Period) -> bool:
    return period.condensed <= period.evaporated


__all__ = [
    "MONTHLY",
    "TWO_PERIOD",
    "Basis",
    "Change",
    "Check",
    "CondensationStudy",
    "Condition",
    "Construction",
    "LayerValue",
    "Month",
    "Need",
    "Node",
    "Outcome",
    "Period",
    "Plane",
    "Profile",
    "Run",
    "SurfaceStudy",
    "TwoPeriodStudy",
    "Verdict",
]
