"""The tables of the whole building: every part with its size, figure and conductance, joins, and what they come to."""

from collections.abc import Mapping

from layerfolio.codes.envelope import EnvelopeRow
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.figures import NONE, NOT_GIVEN, cell, u_beside, u_cell, unit_of, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import SourceBook
from layerfolio.studies.envelope_types import BuildingStudy, EnvelopePart
from layerfolio.units.show import fixed, in_units

NOT_KNOWN = "not known"
"""For a figure that is computed here and lacks something."""
METRIC = (18.0, 20.0, 19.0, 14.0, 17.0, 19.0)  # size, figure, conductance, share, heat loss, where from
CUSTOMARY = (25.0, 26.0, 27.0, 12.0, 27.0, 14.0)
NAME = {"metric": 17.0, "customary": 13.0}


def parts(
    study: BuildingStudy, counts: Mapping[str, int], system: str, book: SourceBook, limits: Mapping[str, float] | None = None
) -> Table:
    """Assemblies and openings in the order of the project file, and their sum; `counts` tells how many openings are alike,
    `limits` what a transmittance has to be told from.
    """
    limits = limits or {}
    found = [part for part in study.parts if part.kind != "join"]
    rows = []
    for part in found:
        figures = _figures(study, part, "area", "U", system, book, limits.get(part.name))
        rows.append(Row((f"**{plain(part.name)}**", plain(_title(part, counts)), *figures)))
    total = _total(found)
    if len(found) > 1:
        rows.append(Row(("", "Assemblies and openings", NONE, NONE, *_sum_cells(study, total, system), ""), total=True))
    columns = (Column("Part", width=NAME[system]), Column("What it is"), *_columns("area", "U", system))
    return Table(columns, tuple(rows), top_rule=False)


def joins(study: BuildingStudy, system: str, book: SourceBook) -> Table | None:
    """The joins that state a linear transmittance, and their sum; None where there are none."""
    found = [part for part in study.parts if part.kind == "join"]
    if not found:
        return None
    rows = [Row((plain(part.name), *_figures(study, part, "l_j", "psi_j", system, book))) for part in found]
    if len(found) > 1:
        rows.append(Row(("Joins", NONE, NONE, *_sum_cells(study, _total(found), system), ""), total=True))
    return Table((Column("Join"), *_columns("l_j", "psi_j", system)), tuple(rows))


def sums(study: BuildingStudy, system: str) -> Table:
    """Transmission, air and both together."""
    loss = study.heat_loss
    air = air_conductance(study)
    changes = _last(study, "n_a") or _last(study, "n_inf")
    per_hour = f"{cell(changes, 'n_a', 'metric', 2)} air changes per hour" if changes is not None else ""
    whole = study.conductance + air if air is not None and study.conductance is not None else None
    lines = [("Transmission", "all parts and joins", study.conductance, loss.transmission if loss else None)]
    lines.append(("Air", per_hour or NOT_GIVEN, air, loss.air if loss else None))
    rows = [Row((what, how, *_sum_cells(study, value, system, watts))) for what, how, value, watts in lines]
    together = _sum_cells(study, whole, system, loss.total if loss else None)
    rows.append(Row(("Building", "transmission and air", *together), total=True))
    widths = METRIC if system == "metric" else CUSTOMARY
    columns = (
        Column(f"Heat per {'kelvin' if system == 'metric' else 'degree'}", width=58), Column("How much"),
        *_columns("area", "U", system)[2:5],
        Column("", width=widths[5]),
    )  # fmt: skip
    return Table(columns, tuple(Row((*row.cells, ""), row.total) for row in rows))


def air_conductance(study: BuildingStudy) -> float | None:
    """W/K that the change of air takes away, as its step has it."""
    return _last(study, "H_V")


def _last(study: BuildingStudy, quantity: str) -> float | None:
    """The value of the last step that gives the quantity."""
    return next((step.value for step in reversed(study.trace.steps()) if step.formula.result == quantity), None)


def whole(study: BuildingStudy) -> float | None:
    """All of it, W/K: with the air where that is known; None while a part lacks something."""
    if study.conductance is None:
        return None
    return study.conductance + (air_conductance(study) or 0.0)


def _columns(size: str, figure: str, system: str) -> tuple[Column, ...]:
    widths = METRIC if system == "metric" else CUSTOMARY
    align = "decimal" if system == "metric" else "right"
    loss = "W" if system == "metric" else "Btu/h (W)"
    unit = lambda name: unit_of(name, system)  # noqa: E731
    return (
        Column("{" + size + "}", unit(size), widths[0], align), Column("{" + figure + "}", unit(figure), widths[1], align),
        Column("{H_x}", unit("H_x"), widths[2], align), Column("Share", "%", widths[3], "decimal"),
        Column("{Phi}", loss, widths[4], align), Column("From", width=widths[5]),
    )  # fmt: skip


def _title(part: EnvelopePart, counts: Mapping[str, int]) -> str:
    words = part.title or part.group.replace("-", " ").capitalize()
    return f"{words} ({counts[part.name]})" if counts.get(part.name, 1) > 1 else words


def _figures(
    study: BuildingStudy, part: EnvelopePart, size: str, figure: str, system: str, book: SourceBook, limit: float | None = None
) -> tuple[str, ...]:
    source = " ".join(filter(None, (part.step, book.mark(part.datum) if not part.step else "")))
    return (
        _size(part, size, system), _figure(part, figure, system, limit),
        *_sum_cells(study, part.conductance, system), source or NONE,
    )  # fmt: skip


def _figure(part: EnvelopePart, figure: str, system: str, limit: float | None) -> str:
    """A computed figure that lacks something is not known, a stated one not given."""
    if part.figure is None:
        return NOT_KNOWN if part.step else NOT_GIVEN
    return u_cell(part.figure, system, limit) if figure == "U" else cell(part.figure, figure, system, 3)


def _summed(value: float | None, system: str) -> str:
    return NOT_KNOWN if value is None else cell(value, "H_x", system, 2)


def _size(part: EnvelopePart, size: str, system: str) -> str:
    """Openings to a hundredth of a square metre, what is larger to a tenth, and in feet with one digit less."""
    decimals = 2 if part.kind == "opening" else 1
    return NOT_GIVEN if part.size is None else cell(part.size, size, system, decimals, decimals - 1)


def _known(value: float | None, quantity: str, system: str, decimals: int) -> str:
    return NOT_GIVEN if value is None else cell(value, quantity, system, decimals)


def _sum_cells(study: BuildingStudy, value: float | None, system: str, watts: float | None = None) -> tuple[str, str, str]:
    """Conductance, its share of the whole, and the heat it loses on a design winter day."""
    if value is None:
        return NOT_KNOWN, NONE, NONE
    everything, loss = whole(study), study.heat_loss
    share = fixed(100 * value / everything, 1) if everything else NONE
    if loss is not None and watts is None:
        watts = value * (loss.indoor - loss.outdoor)
    return cell(value, "H_x", system, 2), share, _watts(watts, system)


def _watts(value: float | None, system: str) -> str:
    if value is None:
        return NONE
    metric = fixed(value, 0)
    return metric if system == "metric" else f"{fixed(in_units(value, 'Btu/h'), 0)} ({metric})"


def _total(parts: list[EnvelopePart]) -> float | None:
    values = [part.conductance for part in parts]
    return None if any(one is None for one in values) else sum(values)


def code_rows(judged: object, system: str) -> Table | None:
    """Every part that the set limits: figure provided and asked, and what both come to over its area."""
    rows = [row for row in judged.rows if row.asked is not None]
    if not rows:
        return None
    quantities = {row.quantity for row in rows}
    alike = quantities.pop() if len(quantities) == 1 else ""
    titles = [f"{words} {{{alike}}}" if alike else words for words in ("Provided", "Asked")]
    columns = (
        Column("Part", width=15), Column("{area}", unit_of("area", system), 30 if system == "customary" else 20, "right"),
        *(Column(title, unit_of(alike, system) if alike else "", 36 if alike else 40, "right") for title in titles),
        Column("{H_x} provided", unit_of("H_x", system), 0, "right"), Column("{H_x} asked", unit_of("H_x", system), 0, "right"),
    )  # fmt: skip
    made = [
        Row((
            f"**{plain(row.name)}**", _known(row.area, "area", system, 1), _own(row.provided, row, alike, system),
            _own(row.asked, row, alike, system), _summed(row.provided_conductance, system),
            _summed(row.asked_conductance, system),
        ))
        for row in rows
    ]  # fmt: skip
    sums_ = (_summed(judged.ua_designed, system), _summed(judged.ua_limit, system))
    return Table(columns, (*made, Row(("Sum", NONE, NONE, NONE, *sums_), total=True)))


def _own(value: float | None, row: EnvelopeRow, alike: str, system: str) -> str:
    """A figure in the set's own quantity; with its symbol and unit where resistances and transmittances stand in one column."""
    if value is None:
        return NOT_GIVEN
    quantity = row.quantity
    if alike == "U" and row.provided is not None:
        return u_beside(value, row.provided, row.asked, system)
    return cell(value, quantity, system, 3) if alike else f"{{{quantity}}} {with_unit(value, quantity, system)}"
