"""The path of every requirement: which performance path it has, what was calculated on it, and which path is taken.

The words come from the requirement's own file (`performance`), else from paths.yaml of its code, by topic. They decide
nothing: a verdict stays as it was judged, but where one of two tables is enough and the other is met.
"""

from dataclasses import dataclass, field, replace
from functools import cache
from typing import Any

from layerfolio.catalogue.code_sets import code_folder
from layerfolio.catalogue.files import load
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.occupancies import UNKNOWN
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.stated_path import by_stated_path, carried

ENERGY = ("9.36", "N11", "R402")
"""Beginnings of the articles that ask about energy."""
WITHOUT = ("applicability", "administration")
"""Topics without a performance path: they say which code is asked, and which papers."""
ANSWERS = {"trade-off": ("trade-off", False), "total-ua": ("total UA", True)}
"""A calculation of the whole envelope by the end of its id: its name, and whether it answers openings too."""
TRADING = ("trade-off", "total UA", "performance")  # of code.energy_path
DWELLINGS = ("house", "dwelling-unit")
NO_CHOICE, BESIDE = "no path to choose", "beside the code set"
BALANCES = {"condensation": "monthly balance", "two-period": "two-period method"}
SAID = {
    Verdict.MEETS: "clears", Verdict.DOES_NOT_MEET: "does not clear", Verdict.NEEDS_JUDGEMENT: "is open",
    Verdict.NEEDS_EVIDENCE: "not evaluated", Verdict.NOT_ASKED: "not asked",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Known:
    """What the findings of one project are read against. `ways` is paths.yaml of the code, edition by edition resolved."""

    findings: tuple[Finding, ...]
    rules: dict[str, Requirement]
    ways: dict[str, Any]
    energy_path: str
    answering: Finding | None  # the calculation of the whole envelope
    tradable: frozenset[str] | None = None  # parts that a trade may reach, where the set says which
    other_table: dict[str, str] = field(default_factory=dict)  # of two tables, of which one has to be met: each id's other
    use: str = "unknown"  # dwelling, other or unknown: some paths are for dwellings alone


def with_paths(findings: tuple[Finding, ...], project: Any, envelope: Any = None) -> tuple[Finding, ...]:
    """The findings with `performance`, `chosen` and `answered_by` filled, in the same order.

    What a judge has said of its own accord stays. `envelope` is that of codes.envelope (EnvelopeJudged), or None: it tells
    which parts may be traded. The calculation of the whole building is read from the findings, so that the record and the
    sheet never differ.
    """
    set_id = project.code.set
    rules = {one.id: one for one in requirements(set_id)}
    known = _Known(
        findings, rules, ways(set_id),
        str(getattr(project.code, "energy_path", None) or ""),
        next((one for one in findings if _ending(one) in ANSWERS), None), _tradable(envelope),
        _pairs(rules), _use(project),
    )  # fmt: skip
    return tuple(_with_path(one, known) for one in findings)


@cache
def ways(set_id: str) -> dict[str, Any]:
    """The performance paths of a set by topic, and the note that explains them; empty for a set of methods."""
    path = code_folder(set_id) / "paths.yaml"
    content = load(path) if path.is_file() else {}
    return {name: _of_edition(row, set_id) if isinstance(row, dict) else row for name, row in content.items()}


def _of_edition(row: dict[str, Any], set_id: str) -> dict[str, Any]:
    return {key: value for key, value in row.items() if key != "editions"} | row.get("editions", {}).get(set_id, {})


def _use(project: Any) -> str:
    occupancy = str(getattr(getattr(project, "building", None), "occupancy", None) or "")
    return "unknown" if occupancy in UNKNOWN else "dwelling" if occupancy in DWELLINGS else "other"


def _tradable(envelope: Any) -> frozenset[str] | None:
    """Names of the parts that the set's trade-off reaches: none below the ground, none with heating in it, no doors."""
    rows = getattr(envelope, "trade_off_rows", ())
    return frozenset(row.name for row in rows) if rows else None


def _pairs(rules: dict[str, Requirement]) -> dict[str, str]:
    """Ids of requirements of which one has to be met (`either` names the other's question), both ways."""
    by_question = {one.question: one.id for one in rules.values()}
    found = {one.id: by_question[one.rule["either"]] for one in rules.values() if "either" in one.rule}
    return found | {other: one for one, other in found.items()}


def _by_other_table(found: Finding, known: _Known) -> str:
    """The id of the other table's line on the same part, where that is met and this is not."""
    other = known.other_table.get(found.id)
    if other is None or found.verdict in (Verdict.MEETS, Verdict.NOT_ASKED):
        return ""
    met = any(one.id == other and one.assembly == found.assembly and one.verdict == Verdict.MEETS for one in known.findings)
    return other if met else ""


def _shown_by(found: Finding, table: str, known: _Known) -> Finding:
    """A line whose other table is met: one of the two is enough, so that nothing is left to ask of it."""
    rule = known.rules.get(table)
    name = "insulation R-values" if rule and "either" in rule.rule else "transmittances"
    return replace(
        found, verdict=Verdict.NOT_ASKED, reason=f"shown by the table of {name}", next_step="", answered_by=table
    )  # fmt: skip


def _ending(found: Finding) -> str:
    return found.id.rpartition("/")[2]


def _with_path(found: Finding, known: _Known) -> Finding:
    if table := _by_other_table(found, known):
        return replace(_shown_by(found, table, known), chosen="prescriptive: one of the two tables is met")
    other = known.answering
    if carried(found, other) and known.energy_path == ANSWERS[_ending(other)][0] and _traded(found, other, known):
        return by_stated_path(found, other, known.energy_path, _performance(found, known))
    answered = found.answered_by or _answered_by(found, known)
    found = replace(found, answered_by=answered)
    return replace(
        found, performance=found.performance or _performance(found, known), chosen=found.chosen or _chosen(found, known)
    )


def _answered_by(found: Finding, known: _Known) -> str:
    """The id of the calculation of the whole envelope, where it meets and this figure does not."""
    other = known.answering
    if other is None or other.verdict != Verdict.MEETS or not _traded(found, other, known):
        return ""
    return other.id if found.verdict == Verdict.DOES_NOT_MEET else ""


def _traded(found: Finding, other: Finding, known: _Known) -> bool:
    """Whether the calculation of the whole envelope stands for this line."""
    if known.tradable is not None:
        return _is_traded(found) and found.assembly in known.tradable
    _, openings_too = ANSWERS[_ending(other)]
    rule = known.rules.get(found.id)
    if rule is not None and rule.rule.get("untraded"):
        return False
    return is_energy(found) and _is_traded(found) and (openings_too or not found.opening)


def _is_traded(found: Finding) -> bool:
    """A resistance or transmittance asked of one part of the envelope."""
    figure = found.limit or found.provided
    return (
        found.path == "prescriptive" and found.assembly is not None and found.topic in ("thermal", "openings")
        and figure is not None and figure.quantity in ("R", "R_eff", "U")
    )  # fmt: skip


def is_energy(found: Finding) -> bool:
    """Whether the energy articles of the code ask it."""
    article = found.id.split("/")[1] if found.id.count("/") >= 2 else ""
    return article.startswith(ENERGY) and found.topic in ("thermal", "openings", "air")


def _way(found: Finding, known: _Known) -> str:
    """The performance path in words, with what of it comes from elsewhere."""
    rule = known.rules.get(found.id)
    own = (rule.figures.get("performance") or rule.rule.get("performance")) if rule else None
    name = ("traded" if _is_traded(found) else "energy") if is_energy(found) else found.topic
    row = known.ways.get(name) or known.ways.get("other") or {}
    return str(own or row.get("words", "")).replace("{model}", known.ways.get("model", {}).get(known.use, ""))


def _performance(found: Finding, known: _Known) -> str:
    if found.verdict == Verdict.NOT_ASKED:
        return ""
    if found.path == "performance":
        return f"calculated on this line, {found.step}" if found.step else "calculated on this line"
    if found.topic in WITHOUT:
        return "none"
    calculated = _calculated(found, known)
    if found.verdict == Verdict.MEETS:
        return "; ".join(filter(None, ("not needed", calculated)))
    return "; ".join(filter(None, (_way(found, known) or "none named by the set", calculated)))


def _calculated(found: Finding, known: _Known) -> str:
    """What was calculated on the performance path, with its sheet; empty where nothing was."""
    if found.topic == "vapour" and found.assembly:
        return "; ".join(_balance(one) for one in known.findings if _is_balance(one, found.assembly))
    other = known.answering
    if other is not None and found.verdict != Verdict.MEETS and _traded(found, other, known):
        where = f", {other.step}" if other.step else ""
        return f"{ANSWERS[_ending(other)][0]}: {other.verdict}{where}"
    return ""


def _is_balance(one: Finding, assembly: str) -> bool:
    return one.path == "performance" and one.assembly == assembly and _ending(one) in BALANCES


def _balance(one: Finding) -> str:
    return f"{BALANCES[_ending(one)]} {SAID[one.verdict]}, {one.step}"


def _chosen(found: Finding, known: _Known) -> str:
    if found.verdict == Verdict.NOT_ASKED:
        return "not asked"
    if found.answered_by:
        return f"performance: {ANSWERS[_ending(known.answering)][0]}"
    if found.path == "performance":
        return _on_performance(found, known)
    if found.topic in WITHOUT and found.verdict == Verdict.MEETS:
        return NO_CHOICE
    if found.verdict == Verdict.MEETS:
        return "prescriptive: the limit is met" if found.limit else "prescriptive: what is asked is there"
    if is_energy(found) and known.energy_path == "performance":
        return "performance, as the project file says; the energy model comes from elsewhere"
    return f"open: {_why(found)}"


def _on_performance(found: Finding, known: _Known) -> str:
    """Of a finding that is itself a calculation on the performance path."""
    if found is not known.answering and found.id != getattr(known.answering, "id", ""):
        return BESIDE
    count = sum(_answered_by(one, known) == found.id for one in known.findings)
    if count:
        return f"performance: it answers {count} line{'s' * (count != 1)} of this record"
    if known.energy_path in TRADING:
        return f"performance: {known.energy_path}, as the project file says"
    return "not taken: no line needs it" if found.verdict == Verdict.MEETS else f"open: {_why(found)}"


def _why(found: Finding) -> str:
    if found.verdict == Verdict.DOES_NOT_MEET:
        return "the limit is not met"
    if found.verdict == Verdict.NEEDS_EVIDENCE:
        return "evidence is missing"
    return "an engineer is asked" if "engineer" in found.who_decides else "the authority is asked"


__all__ = ["BESIDE", "NO_CHOICE", "is_energy", "ways", "with_paths"]
