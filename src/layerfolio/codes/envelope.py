"""The envelope judged part by part: every assembly and opening beside the figure that limits it, and what they sum to."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding
from layerfolio.codes.heat import measured
from layerfolio.codes.limits import Resolved, resolve
from layerfolio.codes.requirements import Requirement, requirements

HEAT = ("R_eff", "U")
"""Quantities by which a set limits the heat through a part."""
TRADE_OFF = "trade_off"
"""The judge whose requirement says that the set knows a trade-off between parts."""


@dataclass(frozen=True, slots=True)
class EnvelopeRow:
    """One part: `area` m2, `provided` and `asked` in the set's own quantity (R m2.K/W or U W/(m2.K)), conductances W/K.

    None where a figure is missing or nothing is asked; `note` says which. `requirement` is the id of what limits it.
    """

    name: str
    group: str
    area: float | None
    provided: float | None
    asked: float | None
    provided_conductance: float | None
    asked_conductance: float | None
    note: str = ""
    quantity: str = ""  # R_eff or U
    requirement: str = ""
    question: str = ""  # what is still to be answered before the figure asked is settled; the most demanding one stands in


@dataclass(frozen=True, slots=True)
class EnvelopeJudged:
    """Sums in W/K, None while a part lacks a figure. The trade-off stands only where the set has one.

    `rows` are all parts, `trade_off_rows` those that may be traded, with their own floors in `note`. `lacking` says in
    words what keeps a sum open.
    """

    rows: tuple[EnvelopeRow, ...]
    ua_designed: float | None
    ua_limit: float | None
    trade_off_designed: float | None = None
    trade_off_limit: float | None = None
    trade_off_verdict: str = ""
    trade_off_rows: tuple[EnvelopeRow, ...] = ()
    lacking: tuple[str, ...] = ()


def envelope_judged(about: Context, findings: Sequence[Finding] = ()) -> EnvelopeJudged | None:
    """Every part with its limit under the chosen set; None where no part has one or the project holds no studies.

    `findings` are those of the parts; the verdict of a trade-off is taken from its own finding where that is among them.
    """
    rows = parts(about)
    if not any(row.asked is not None for row in rows):
        return None
    limited = [row for row in rows if row.asked is not None]
    known = EnvelopeJudged(
        rows, total([row.provided_conductance for row in limited]), total([row.asked_conductance for row in limited]),
        lacking=lacking(limited),
    )  # fmt: skip
    if not any(one.judge == TRADE_OFF for one in requirements(about.edition.set_id)):
        return known
    from layerfolio.codes.trade_off import traded

    return traded(known, about, findings)


def parts(about: Context) -> tuple[EnvelopeRow, ...]:
    """A row for each assembly and opening, in the order of the project file."""
    envelope = about.envelope
    areas = _net_areas(about)
    found = [_assembly_row(study, areas.get(name), about) for name, study in envelope.thermal.items()]
    return (*found, *(_opening_row(one, about) for one in envelope.openings.values()))


def total(values: Sequence[float | None]) -> float | None:
    """The sum; None when a value is missing or there is none."""
    return None if not values or any(one is None for one in values) else sum(values)


def lacking(rows: Sequence[EnvelopeRow]) -> tuple[str, ...]:
    """What is missing of the rows, in words."""
    said = (
        *(f"the area of {row.name}" for row in rows if row.area is None),
        *(f"the {_figure_words(row)} of {row.name}" for row in rows if row.provided is None),
    )
    return tuple(dict.fromkeys(said))


def limiting(about: Context, subject: Any, *, opening: bool = False) -> Iterator[Requirement]:
    """The requirements that limit the heat through an assembly, or through an opening."""
    for one in requirements(about.edition.set_id):
        fits = subject.kind in one.of_openings if opening else one.asks(subject)
        if fits and one.quantity in HEAT and one.judge != "figures_only":
            yield one


def limit_of(requirement: Requirement, subject: Any, about: Context) -> Resolved:
    """The limit of that requirement for an assembly or an opening under the answers of the project."""
    return resolve(requirement, subject, about)


def _net_areas(about: Context) -> dict[str, float | None]:
    """m2 by assembly, net of openings: the whole building's own, else as the project file states it."""
    building = about.envelope.building
    if building is not None:
        return {one.name: one.size for one in building.parts if one.kind == "assembly"}
    found = {name: study.assembly.area for name, study in about.envelope.thermal.items()}
    return {name: area.value if area else None for name, area in found.items()}


def _assembly_row(study: Any, area: float | None, about: Context) -> EnvelopeRow:
    one = next(limiting(about, study.assembly), None)
    quantity = one.quantity if one else "U"
    final = study.final
    value = measured(one, study) if one else None if final is None else final.transmittance
    return _row(study.assembly.name, study.assembly.kind, study.assembly, area, value, one, quantity, about)


def _opening_row(opening: Any, about: Context) -> EnvelopeRow:
    one, subject = next(limiting(about, opening, opening=True), None), opening
    if one is None and opening.kind == "hatch":
        one, subject = _host(opening, about)
    quantity = one.quantity if one else "U"
    value = opening.transmittance
    if quantity != "U" and value:
        value = 1 / value
    return _row(opening.name, opening.kind, subject, opening.total_area, value, one, quantity, about)


def _host(opening: Any, about: Context) -> tuple[Requirement | None, Any]:
    """What limits a hatch where the set asks of it what it asks of the assembly that it lies in."""
    study = about.envelope.thermal.get(opening.wall)
    asks = any(one.rule.get("as_what_it_lies_in") for one in requirements(about.edition.set_id))
    if study is None or not asks:
        return None, opening
    return next(limiting(about, study.assembly), None), study.assembly


def _row(
    name: str, group: str, subject: Any, area: float | None, value: float | None, one: Requirement | None, quantity: str,
    about: Context,
) -> EnvelopeRow:  # fmt: skip
    asked, note, question = None, "no figure of the set limits it", ""
    if one is not None:
        settled = limit_of(one, subject, about)
        asked, note, question = settled.limit.value, settled.question or settled.limit.note, settled.question
    return EnvelopeRow(
        name, group, area, value, asked, _conductance(area, value, quantity), _conductance(area, asked, quantity), note,
        quantity, one.id if one else "", question,
    )  # fmt: skip


def _conductance(area: float | None, value: float | None, quantity: str) -> float | None:
    if area is None or value is None or (quantity != "U" and value <= 0):
        return None
    return area * value if quantity == "U" else area / value


def _figure_words(row: EnvelopeRow) -> str:
    return "transmittance" if row.quantity == "U" else "effective resistance"
