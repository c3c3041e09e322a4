"""What an assembly may state beside its plain layers. A module of its own: most projects never load it."""

from dataclasses import dataclass
from typing import NamedTuple

from layerfolio.assembly.types import Choice
from layerfolio.catalogue.completions import Completions
from layerfolio.catalogue.datum import Datum


@dataclass(frozen=True, slots=True)
class Fasteners:
    """Fasteners that go through a layer. A figure is None where nothing tells it; `lacking` names the keys that would.

    Diameter and depth in m; `spacing` and `rows` (m) stand where the number comes from them; `depth` None: all through.
    """

    title: str
    conductivity: Datum | None
    diameter: float | None
    per_area: float | None  # number per m2
    spacing: float | None
    rows: float | None
    depth: float | None
    lacking: tuple[str, ...] = ()
    conducts_poorly: bool = False  # plastic and the like, which need no correction
    kind: str = ""  # in the project file's words
    outer: float | None = None  # diameter of shank or thread, m
    root: float | None = None  # diameter at the root of the thread, m
    length: float | None = None  # m
    bending_yield: Datum | None = None  # bending yield strength, Pa, where a report states it


@dataclass(frozen=True, slots=True)
class UnheatedSpace:
    """A space without heating between the assembly and the outside air: (m2, W/(m2.K)) of its envelope, m3, changes per hour."""

    envelope: tuple[tuple[float, float], ...]
    volume: float
    air_changes: float


@dataclass(frozen=True, slots=True)
class InvertedRoof:
    """Rain under the insulation: mm a day in the heating season, and the drainage factor f.x, W.d/(m2.K.mm)."""

    precipitation: float
    drainage: Datum


class Stated(NamedTuple):
    """What an assembly states beside its layers and its set counts, and the choices that say what it does not count."""

    completions: Completions | None = None  # None: no correction that the set would count is stated
    roof_space: Datum | None = None
    unheated_space: UnheatedSpace | None = None
    inverted_roof: InvertedRoof | None = None
    choices: tuple[Choice, ...] = ()
