"""The limit that a set's tables give for an assembly, or the question that must be answered before there is one."""

from dataclasses import dataclass, replace
from itertools import product
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.codes.climate_zones import cell, either
from layerfolio.codes.context import Context
from layerfolio.codes.requirements import Requirement
from layerfolio.units.table import unit_factor

ROW_OF_UNHEATED = "above_frost_line"
BELOW_FROST = "below_frost_line"
NO_VALUE = "n/a"


@dataclass(frozen=True, slots=True)
class Limit:
    """`value` None: nothing is asked. `note`: why, or what was taken off. `has_value` False: the table prints none."""

    value: float | None
    place: str
    note: str = ""
    has_value: bool = True


@dataclass(frozen=True, slots=True)
class Resolved:
    """The limits that are possible: one when all that decides is answered, else `question` asks for the rest."""

    limits: tuple[Limit, ...]
    question: str = ""
    remark: str = ""
    amended: str = ""
    eased: float | None = None  # a limit that would hold if `eased_question` is answered with yes
    eased_question: str = ""
    at_most: bool = False

    @property
    def limit(self) -> Limit:
        """The one limit; of several the most demanding: the least where it must not be passed."""
        if self.at_most:
            return min(self.limits, key=lambda one: float("inf") if one.value is None else one.value)
        return max(self.limits, key=lambda one: -1.0 if one.value is None else one.value)


def resolve(requirement: Requirement, assembly: Assembly, context: Context) -> Resolved:
    """Limits of a requirement for an assembly: the amended figure, a plain figure, or the cells of the set's tables.

    An opening (OpeningStudy) may stand for the assembly where the requirement names neither rows nor reductions.
    """
    amended = context.amended.get(requirement.id)
    if amended is not None and isinstance(amended.value, float):
        return Resolved((Limit(amended.value, "amendment of the project file"),), amended=amended.source)
    figures = requirement.figures
    if "no_limit" in figures:
        return Resolved((Limit(None, requirement.place, figures["no_limit"]),))
    if "tables" not in figures:
        return Resolved((Limit(figures.get("at_most", figures.get("at_least")), requirement.place),))
    return _from_tables(requirement, assembly, context)


def _from_tables(requirement: Requirement, assembly: Assembly, context: Context) -> Resolved:
    recovery = (context.heat_recovery,) if context.heat_recovery is not None else (False, True)
    rows = requirement.rule.get("rows")
    scale = to_si(requirement)
    cells = []
    for table in requirement.figures["tables"]:
        if table.get("heat_recovery", recovery[0]) in recovery:
            for zone in context.zones:
                found = _rows(_of_mass(table, requirement, assembly), rows, zone, assembly, scale)
                cells += [(table.get("heat_recovery"), zone, *row) for row in found]
    found = {(r, z, a): _reduced(limit, requirement, assembly) for r, z, a, limit in cells}
    question, remark = _open(found, context, rows)
    limits = tuple(dict.fromkeys(found.values()))
    settled = Resolved(limits, question, remark, at_most=requirement.judge == "at_most" or requirement.quantity == "U")
    return settled if question else _eased(settled, requirement, assembly, context)


def to_si(requirement: Requirement) -> float:
    """What one of the units that the requirement's tables print in is in SI."""
    kind = {"U": "transmittance", "W": "permeance"}.get(requirement.quantity, "resistance")
    return unit_factor(requirement.rule["unit"], kind) if "unit" in requirement.rule else 1.0


def _eased(settled: Resolved, requirement: Requirement, assembly: Assembly, context: Context) -> Resolved:
    """The milder limit that one more answer would bring: an enclosed unheated space, a wall that is no frame wall."""
    rule, top = requirement.rule.get("reduction"), settled.limit.value
    if rule and not rule["sure"] and assembly.faces in rule["faces"] and top is not None:
        return replace(settled, eased=round(top - rule["by"], 6), eased_question=f"{rule['words']} ({rule['clause']})?")
    if "mass" in requirement.rule:
        return _eased_mass(settled, requirement, assembly, context)
    words = requirement.rule.get("easier_if_unframed")
    tables = [one["easier"] for one in requirement.figures["tables"] if "easier" in one]
    if words and tables and not any(layer.member and layer.kind == "solid" for layer in assembly.layers):
        values = [cell(table, zone) * to_si(requirement) for table in tables for zone in context.zones]
        return replace(settled, eased=min(values), eased_question=f"{words} ({requirement.clause})?")
    return settled


def _of_mass(table: dict[str, Any], requirement: Requirement, assembly: Assembly) -> dict[str, Any]:
    """The table with the row of mass walls, where the wall is one: by the side of its insulation."""
    if "mass" not in requirement.rule:
        return table
    from layerfolio.codes.mass_walls import row_of

    return row_of(table, requirement, assembly)


def _eased_mass(settled: Resolved, requirement: Requirement, assembly: Assembly, context: Context) -> Resolved:
    """The milder limit where one more answer would make a mass wall of it, or where two printed figures disagree."""
    from layerfolio.codes.mass_walls import milder

    found = [milder(table, requirement, assembly, zone) for table in requirement.figures["tables"] for zone in context.zones]
    if not all(found):
        return settled
    value, question = min(found)
    return replace(settled, eased=value * to_si(requirement), eased_question=f"{question} ({requirement.clause})?")


def _reduced(limit: Limit, requirement: Requirement, assembly: Assembly) -> Limit:
    rule = requirement.rule.get("reduction")
    if not rule or not rule["sure"] or limit.value is None or assembly.faces not in rule["faces"]:
        return limit
    return Limit(round(limit.value - rule["by"], 6), limit.place, f"{rule['words']}, {rule['clause']}")


Answers = tuple[tuple[str, bool], ...]


def _rows(
    table: dict[str, Any], rows: dict | None, zone: str, assembly: Assembly, scale: float
) -> list[tuple[Answers, Limit]]:
    """The cells that may be meant in one table and zone, each with the answers it supposes."""
    if rows is None:
        return [((), Limit(cell(table["by_zone"], zone) * scale, table["place"], table.get("note", "")))]
    by_row = table["by_row"]
    known = {name: assembly.ground.get(name) for name in rows}
    if known["permafrost"] is None and by_row["permafrost"][zone] == NO_VALUE:
        known["permafrost"] = False  # the table knows no permafrost in this zone, so nothing needs to be asked
    unknown = [name for name in rows if known[name] is None]
    found = []
    for guess in product((False, True), repeat=len(unknown)):
        supposed = tuple(zip(unknown, guess, strict=True))
        found.append((supposed, _ground_limit(known | dict(supposed), by_row, zone, table["place"], rows)))
    return found


def _ground_limit(answers: dict, by_row: dict, zone: str, place: str, rows: dict) -> Limit:
    """A floor in two rows takes the stricter figure; an unheated one below the frost line is asked what the table has for it."""
    named = [name for name in rows if name != ROW_OF_UNHEATED and answers[name]]
    if not answers["heated"] and not answers["permafrost"] and answers[ROW_OF_UNHEATED]:
        named.append(ROW_OF_UNHEATED)
    if not named and BELOW_FROST in by_row:
        return Limit(by_row[BELOW_FROST][zone], place, "unheated floor below the frost line")
    if not named:
        return Limit(None, place, "an unheated floor below the frost line may stay uninsulated")
    if any(by_row[name][zone] == NO_VALUE for name in named):
        return Limit(None, place, f"the table has no figure for a floor on permafrost in zone {zone}", has_value=False)
    top = max(named, key=lambda name: by_row[name][zone])
    return Limit(by_row[top][zone], place, rows[top]["words"])


def _open(found: dict, context: Context, rows: dict | None) -> tuple[str, str]:
    """The question that is left when the possible limits differ, and a remark where two zones are stated."""
    questions, remark = [], ""
    if not _same(found, 0):
        questions.append("does the ventilation have heat-recovery equipment (code.heat_recovery)")
    if not _same(found, 1):
        if len(context.named_zones) > 1:
            remark = f"zones {context.zone_words} are both stated; the more demanding decides"
        elif context.zone_words:
            questions.append(f"is the place in {' or '.join(context.zones)} (write {either(context.zones)} in code.zone)")
        else:
            questions.append("which zone is the place in (code.zone, or climate.heating_degree_days)")
    unknown = dict.fromkeys(name for *_, answers in found for name, _ in answers)
    for name in unknown:
        if not _same_without(found, name):
            questions.append(f"{rows[name]['ask']} (ground.{name})")
    return "; ".join(questions), remark


def _same(found: dict, place: int) -> bool:
    """Whether the answer at that place of the key never changes the limit."""
    groups: dict[tuple, set] = {}
    for key, limit in found.items():
        groups.setdefault(key[:place] + key[place + 1 :], set()).add((limit.value, limit.has_value))
    return all(len(values) == 1 for values in groups.values())


def _same_without(found: dict, name: str) -> bool:
    groups: dict[tuple, set] = {}
    for (recovery, zone, answers), limit in found.items():
        rest = tuple(one for one in answers if one[0] != name)
        groups.setdefault((recovery, zone, rest), set()).add((limit.value, limit.has_value))
    return all(len(values) == 1 for values in groups.values())
