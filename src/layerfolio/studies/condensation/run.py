"""One monthly balance: the values it takes, its nodes, its months and the state of each at every node. SI.

Records here are named tuples: they are made at every start of the tool, at a tenth of the cost of a dataclass.
"""

from typing import Literal, NamedTuple

from layerfolio.assembly.types import Layer
from layerfolio.studies.climate_year import MONTHS

Outcome = Literal["none", "clears", "does not clear"]


class LayerValue(NamedTuple):
    """One layer as a run takes it: resistance through its main material (m2.K/W), s_d (m), and the cup that was used.

    `cup` is dry, wet, or single where one number serves both; `fixed` when the project file fixes the cup.
    """

    layer: Layer
    resistance: float
    s_d: float
    cup: str
    fixed: bool = False


class Node(NamedTuple):
    """A face of a layer or of a strip in it. `layer` is the layer's number, `fraction` how far through it from outside.

    `depth` and `s_d` count from the outer face of the outermost layer that counts, m. `between` names the two layers,
    twice the same inside a layer, "outside air" and "room air" at the ends.
    """

    between: tuple[str, str]
    layer: int
    fraction: float
    depth: float
    s_d: float


class Plane(NamedTuple):
    """One plane in one month: condensate of the month (negative: evaporation) and amount at its end, kg/m2."""

    node: int
    between: tuple[str, str]
    flow: float
    accumulated: float


class Month(NamedTuple):
    """`inflow` is what came in from the room and `outflow` what left to the outside, kg/m2 of the month.

    `dried_after`: seconds from the start of the month at which a plane ran dry, one entry a plane, in order.
    """

    name: str
    planes: tuple[Plane, ...]
    inflow: float
    outflow: float
    dried_after: tuple[float, ...] = ()

    @property
    def flow(self) -> float:
        return sum(plane.flow for plane in self.planes)

    @property
    def accumulated(self) -> float:
        return sum(plane.accumulated for plane in self.planes)


class Profile(NamedTuple):
    """One month's state at every node of the run, from the outside in: degC, Pa, Pa; `held` are the wet nodes.

    In a month that is split the profile is that of its longest part, `seconds` long.
    """

    month: str
    temperature: tuple[float, ...]
    saturation: tuple[float, ...]
    pressure: tuple[float, ...]
    held: tuple[int, ...]
    seconds: float


class Run(NamedTuple):
    """One monthly balance. `start` is the start month, empty without condensation; `years` how many were computed.

    `months` are those of the last year, `first_year` those before it where a second one was needed. `profiles` are the
    twelve of the last year, January first. `saturated` names months in which the inside surface itself is wet.
    """

    values: tuple[LayerValue, ...]
    nodes: tuple[Node, ...]
    start: str
    years: int
    months: tuple[Month, ...]
    first_year: tuple[Month, ...]
    outcome: Outcome
    greatest_accumulation: float
    greatest_month: str
    profiles: tuple[Profile, ...]
    saturated: tuple[str, ...] = ()

    @property
    def clears(self) -> bool:
        return self.outcome != "does not clear"

    def planes(self) -> tuple[tuple[int, tuple[str, str]], ...]:
        """Node and names of every plane that was wet, from the outside in."""
        return tuple((plane.node, plane.between) for plane in self.months[0].planes)

    def month(self, name: str) -> Month:
        return next(one for one in self.months if one.name == name)

    def profile(self, name: str) -> Profile:
        return self.profiles[MONTHS.index(name)]


def plane_words(between: tuple[str, str]) -> str:
    """A plane named by its two layers."""
    outer, inner = between
    return f"inside {outer}" if outer == inner else f"{outer} / {inner}"
