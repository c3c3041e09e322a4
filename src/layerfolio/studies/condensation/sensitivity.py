"""The balance run again, as expected, with one thing changed at a time: what would turn the answer."""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from layerfolio.assembly.types import Assembly, Layer, VapourFigures
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.studies.climate_year import Outside, Year, outside_of
from layerfolio.studies.condensation.balance import balance
from layerfolio.studies.condensation.section import STILL_AIR_S_D, Part, column, cup_values, parts_of
from layerfolio.studies.condensation.types import Change, CondensationStudy, LayerValue, Run

PAINT_S_D = 3.0
"""Equivalent air layer of gloss paint, m (iso-10456-2007, Table 5, from memory)."""
PAINT = VapourFigures("s_d", *(Datum(PAINT_S_D, Origin("default", "iso-10456-2007", "Table 5", "memory")),) * 2, True)
STILL_AIR = VapourFigures(
    "s_d", *(Datum(STILL_AIR_S_D, Origin("default", "iso-13788-2012", "air layers", "memory")),) * 2, True
)


class Case(NamedTuple):
    """What the changed runs start from; `base` is the run as expected."""

    assembly: Assembly
    found: tuple[Part, ...]
    year: Year
    outside: Outside
    films: tuple[float, float]  # inside, outside, m2.K/W
    fixed: dict[str, str]
    base: Run


def sensitivity(study: CondensationStudy) -> tuple[Change, ...]:
    """Every change that applies to a study's assembly, in a fixed order; empty without a run as expected."""
    if study.year is None or study.expected is None:
        return ()
    basis = study.basis
    films = tuple(film.value for film in basis.films)
    outside = outside_of(study.assembly.faces, study.year)
    case = Case(study.assembly, basis.parts, study.year, outside, films, basis.fixed, study.expected)
    makers: tuple[Callable[[Case], Change | None], ...] = (
        _damper, _old_class_margin, _old_humidity_margin, _wet_control, _blocked_cavity, _painted_inside,
        _painted_outside,
    )  # fmt: skip
    return tuple(change for make in makers if (change := make(case)) is not None)


def _damper(case: Case) -> Change:
    words = "indoor humidity 10 points higher"
    return _again(case, "humidity", words, year=case.year.with_points(0.10, words))


def _old_class_margin(case: Case) -> Change | None:
    if case.year.rule.kind != "class":
        return None
    words = "vapour excess of the class times 1.10, as the edition of 2001 asked"
    return _again(case, "class-margin", words, year=case.year.with_excess_times(1.10, words))


def _old_humidity_margin(case: Case) -> Change | None:
    if case.year.rule.kind not in ("constant", "monthly"):
        return None
    words = "indoor humidity 5 points higher, the margin on a stated humidity"
    return _again(case, "humidity-margin", words, year=case.year.with_points(0.05, words))


def _wet_control(case: Case) -> Change | None:
    control = next((part for part in case.found if "vapour control" in part.layer.serves), None)
    if control is None or control.single:
        return None
    words = f"{control.layer.name} with its wet-cup value"
    return _again(case, "wet-control", words, fixed={**case.fixed, control.layer.name: "wet"})


def _blocked_cavity(case: Case) -> Change | None:
    """The cavity and all outside it count again: still air without a resistance of its own, then the cladding."""
    if all(layer.counts for layer in case.assembly.layers):
        return None
    layers = tuple(layer if layer.counts else _counting(layer) for layer in case.assembly.layers)
    blocked = replace(case.assembly, layers=layers)
    return _again(case, "blocked-cavity", "ventilated cavity blocked", found=parts_of(blocked))


def _counting(layer: Layer) -> Layer:
    if layer.kind != "cavity":
        return replace(layer, counts=True)
    nothing = Datum(0.0, Origin("default", "iso-13788-2012", "blocked cavity, no credit for its air", "derived"))
    return replace(layer, counts=True, resistance=nothing, vapour=STILL_AIR, member=None)


def _painted_inside(case: Case) -> Change | None:
    words = f"a low-permeance coat, s_d {PAINT_S_D:g} m, on the room face"
    return _painted(case, "painted-inside", words, len(case.found))


def _painted_outside(case: Case) -> Change | None:
    if case.assembly.faces == "ground":
        return None
    outermost = case.found[0].layer.name
    words = f"a low-permeance coat, s_d {PAINT_S_D:g} m, on the outside of {outermost}"
    return _painted(case, "painted-outside", words, 0)


def _painted(case: Case, key: str, words: str, at: int) -> Change:
    values, missing = _values(case, case.found, case.fixed)
    if missing:
        return _not_run(key, words, missing)
    coat = _coat(case.found[0 if at == 0 else -1].layer)
    painted = LayerValue(coat, 0.0, PAINT_S_D, "single")
    return _result(case, key, words, (*values[:at], painted, *values[at:]), case.year)


def _coat(beside: Layer) -> Layer:
    """A layer of paint; it shares the number of the layer it is painted on."""
    return replace(
        beside, name="coat of paint", title="Coat of paint", kind="membrane", material="", thickness=None, vapour=PAINT,
        conductivity=None, resistivity=None, resistance=None, density=None, specific_heat=None, member=None, serves=(),
        absorbent=False, timber=False,
    )  # fmt: skip


def _again(
    case: Case, key: str, words: str, *, year: Year | None = None, fixed: dict[str, str] | None = None,
    found: tuple[Part, ...] | None = None,
) -> Change:  # fmt: skip
    values, missing = _values(case, case.found if found is None else found, case.fixed if fixed is None else fixed)
    if missing:
        return _not_run(key, words, missing)
    return _result(case, key, words, values, year or case.year)


def _values(
    case: Case, found: tuple[Part, ...], fixed: dict[str, str]
) -> tuple[tuple[LayerValue, ...], tuple[str, ...]]:
    return cup_values(found, less_favourable=False, fixed=fixed)


def _not_run(key: str, words: str, missing: tuple[str, ...]) -> Change:
    return Change(key, words, None, None, "", False, f"no heat or vapour figure for {', '.join(missing)}")


def _result(case: Case, key: str, words: str, values: tuple[LayerValue, ...], year: Year) -> Change:
    run = balance(values, column(values, *case.films), year, case.outside, profiles=False)
    turns = run.clears != case.base.clears
    return Change(key, words, run.outcome, run.greatest_accumulation, run.greatest_month, turns)
