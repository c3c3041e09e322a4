"""The class of a vapour retarder by its dry-cup permeance, as far as the figure may decide; whether it opens wet."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.inputs import FROM_MEMORY
from layerfolio.codes.judges import NOISE, at_least, at_most
from layerfolio.codes.naming import called as layer_called
from layerfolio.codes.permeances import cups, own, published, report
from layerfolio.codes.wording import figure
from layerfolio.studies.types import LayerVapour
from layerfolio.units.table import unit_factor

PERM = unit_factor("perm", "permeance")
"""One US perm, kg/(m2.s.Pa)."""

BARRIER = 60e-12
"""The Canadian limit for a vapour barrier, kg/(m2.s.Pa): a little more than 1.0 US perm (NBC 2020, 9.25.4.2.(1))."""

Classes = Mapping[str, float]
"""Upper limit of each class, US perm, from the tightest on; a limit belongs to its class."""


@dataclass(frozen=True, slots=True)
class Classed:
    """Which classes a layer may have ("" none), the first by the figure in use, and whether it may open wet.

    `doubt` says why more than one is possible; `backing` what the class rests on.
    """

    classes: tuple[str, ...]
    responsive: tuple[bool, ...]
    backing: str
    doubt: str = ""


def class_of(permeance: float, classes: Classes) -> str:
    """The class of a dry-cup permeance; empty above the last one."""
    return next((name for name, most in classes.items() if at_most(permeance, most * PERM)), "")


def opens(permeance: float | None, rule: Mapping[str, float]) -> bool:
    """Whether a wet-cup permeance makes a retarder open: `over` so many US perm, or `from` so many on."""
    if permeance is None or not rule:
        return False
    if "over" in rule:
        return permeance > rule["over"] * PERM * (1 + NOISE)
    return at_least(permeance, rule["from"] * PERM)


def classed(row: LayerVapour, rule: Mapping[str, Any], figures: Mapping[str, Any], context: Context) -> Classed:
    """The class of a layer, or every class it may have while its figure may not decide."""
    classes, wet_rule = rule["classes"], figures.get("responsive", {})
    every = (*classes, "")
    datum = row.layer.vapour.dry if row.layer.vapour else None
    wet = opens(row.permeance_wet, wet_rule)
    for name, materials in rule.get("named", {}).items():
        if row.layer.material in materials and not (datum and own(datum.origin)):
            return Classed((name,), (False,), f"{figures['list']}, which names it")
    if datum is None or row.permeance_dry is None:
        return Classed(every, (False, True), "", "no dry-cup permeance is given for it")
    by_figure = class_of(row.permeance_dry, classes)
    if own(datum.origin):
        return _own(row, by_figure, every, wet, context)
    return _published(row, by_figure, every, wet, classes, context)


def _own(row: LayerVapour, by_figure: str, every: tuple[str, ...], wet: bool, context: Context) -> Classed:
    proof, why = report(row.layer, row.layer.vapour.dry, context.date)
    if proof is not None:
        return Classed((by_figure,), (wet,), f"report {proof.number or proof.file}".strip())
    note = published(row.layer, context.edition.set_id)
    beside = f"; published: {note.shown(context.customary, context.both)}" if note else ""
    rest = tuple(one for one in every if one != by_figure)
    return Classed((by_figure, *rest), (wet, not wet), "", f"the figure is the project's own and {why}{beside}")


def _published(
    row: LayerVapour, by_figure: str, every: tuple[str, ...], wet: bool, classes: Classes, context: Context
) -> Classed:
    datum, note = row.layer.vapour.dry, published(row.layer, context.edition.set_id)
    shown = figure("W", row.permeance_dry, customary=context.customary, both=context.both)
    said = f"{shown} by {datum.origin.source}"
    wet_datum = row.layer.vapour.wet
    maybe = (True, False) if wet and (wet_datum is None or wet_datum.origin.mark == FROM_MEMORY) else (wet,)
    if note is None:
        if datum.origin.mark == FROM_MEMORY:
            return Classed((by_figure, ""), maybe, said, f"{said} rests on memory")
        return Classed((by_figure,), maybe, said)
    others = note.shown(context.customary, context.both)
    ends = (by_figure, class_of(note.lowest, classes), class_of(note.highest, classes))
    places = sorted(every.index(one) for one in ends)
    between = [one for one in every[places[0] : places[-1] + 1] if one != by_figure]
    if not between:
        return Classed((by_figure,), maybe, others)
    doubt = f"published values differ: {said}; {others}; only the product's own report decides"
    return Classed((by_figure, *between), maybe, others, doubt)


def class_words(name: str) -> str:
    """ "Class II", or what a layer without a class is called."""
    return f"Class {name}" if name else "no vapour retarder (over 10 US perm)"


def unit_trap(permeance: float | None) -> str:
    """What must be said of a permeance that passes one code's limit and misses the other's by the units alone."""
    if permeance is None or at_most(permeance, PERM) or not at_most(permeance, BARRIER):
        return ""
    return (
        "within the 60 ng/(Pa·s·m²) of a Canadian vapour barrier, but over 1.0 US perm (57.2 ng/(Pa·s·m²)), so no "
        "Class II retarder"
    )


def given_words(row: LayerVapour, found: Classed, context: Context) -> str:
    """Class, both cups and the layer, as the finding prints what is provided."""
    name = layer_called(row.layer)
    parts = [" or ".join(class_words(one) for one in sorted(found.classes, key=lambda x: (x == "", x)))]
    if len(found.classes) > 3:
        parts = ["class not proved"]
    if found.responsive == (True,) and set(found.classes) <= {"I", "II"}:
        parts.append("opens by the wet cup")
    trap = unit_trap(row.permeance_dry)
    return "; ".join(filter(None, (", ".join(parts), cups(row, context.customary, context.both), trap, name)))
