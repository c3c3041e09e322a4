"""The trade-off of NBC 9.36.2.11: opaque parts above the ground among each other, windows of one orientation among each other."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, NamedTuple

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.envelope import EnvelopeJudged, EnvelopeRow, envelope_judged, lacking, parts, total
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.stated import metres
from layerfolio.codes.wording import conductances, figure, listed

SETTLED = (Verdict.MEETS, Verdict.NOT_ASKED)
OPAQUE = "opaque"
STEP = "C3"


class Group(NamedTuple):
    """Parts that may be traded with each other: all opaque ones, or the windows of one orientation. W/K."""

    name: str
    rows: tuple[EnvelopeRow, ...]
    designed: float | None
    limit: float | None
    below_floor: tuple[str, ...]  # rows whose figure the trade may not leave

    @property
    def holds(self) -> bool | None:
        """Whether the sum and every floor hold; None while a figure is missing."""
        if self.designed is None or self.limit is None:
            return None
        return judges.at_most(self.designed, self.limit) and not self.below_floor


def rule_of(about: Context) -> Requirement | None:
    """The set's own trade-off; None where it has none."""
    return next((one for one in requirements(about.edition.set_id) if one.judge == "trade_off"), None)


def groups(rows: Sequence[EnvelopeRow], about: Context) -> tuple[Group, ...]:
    """The opaque group first, then windows by orientation, each with what may be traded."""
    rule = rule_of(about).rule
    opaque = tuple(_floored(row, about, rule) for row in rows if _question(row) in rule["floors"] and _tradable(row, about))
    found = [_group(OPAQUE, opaque, about, rule)] if opaque else []
    by_point: dict[str, list[EnvelopeRow]] = {}
    for row in rows:
        if row.group == "window" and _question(row) == rule["windows"]:
            by_point.setdefault(about.envelope.openings[row.name].orientation or "of no stated orientation", []).append(row)
    return (*found, *(_group(name, tuple(some), about, rule) for name, some in by_point.items()))


def _question(row: EnvelopeRow) -> str:
    return row.requirement.rpartition("/")[2]


def _tradable(row: EnvelopeRow, about: Context) -> bool:
    """An assembly with a figure asked of it; one with heating cables or pipes in it may not be traded (sentence 7)."""
    return row.asked is not None and not about.envelope.thermal[row.name].assembly.ground.get("heated")


def floor_share(row: EnvelopeRow, about: Context, rule: dict[str, Any]) -> float:
    """Least share of the required resistance: roofs with insulated joist spaces take the share of walls."""
    question, joists = _question(row), rule["joist_roofs"]
    layers = about.envelope.thermal[row.name].assembly.layers
    if question in joists["questions"] and any(x.member and x.member.name.lower() in joists["members"] for x in layers):
        return joists["share"]
    return rule["floors"][question]


def _floored(row: EnvelopeRow, about: Context, rule: dict[str, Any]) -> EnvelopeRow:
    share = floor_share(row, about, rule)
    least = figure("R_eff", share * row.asked, customary=about.customary, digits=3)
    return replace(row, note=f"no less than {least} ({share * 100:.0f} %)")


def _group(name: str, rows: tuple[EnvelopeRow, ...], about: Context, rule: dict[str, Any]) -> Group:
    below: list[str] = []
    if name == OPAQUE:
        below = [
            row.name for row in rows
            if row.provided is not None and not judges.at_least(row.provided, floor_share(row, about, rule) * row.asked)
        ]  # fmt: skip
    designed, limit = (total([getattr(row, key) for row in rows]) for key in ("provided_conductance", "asked_conductance"))
    return Group(name, rows, designed, limit, tuple(below))


def traded(known: EnvelopeJudged, about: Context, findings: Sequence[Finding] = ()) -> EnvelopeJudged:
    """The envelope with its trade-off: sums of the opaque parts, and the verdict of its finding or by arithmetic alone."""
    if rule_of(about) is None:
        return known
    some = groups(known.rows, about)
    first = next((one for one in some if one.name == OPAQUE), None)
    said = next((one for one in findings if one.id.endswith("/trade-off")), None)
    by_sums = {True: Verdict.MEETS, False: Verdict.DOES_NOT_MEET, None: Verdict.NEEDS_EVIDENCE}
    verdict = by_sums[first.holds] if first else Verdict.NOT_ASKED
    if said is not None and said.verdict != Verdict.NOT_ASKED:
        verdict = said.verdict
    rows = tuple(row for group in some for row in group.rows)
    return replace(
        known, trade_off_designed=first.designed if first else None, trade_off_limit=first.limit if first else None,
        trade_off_verdict=str(verdict), trade_off_rows=rows,
    )  # fmt: skip


def judge_trade_off(requirement: Requirement, about: Context, findings: Sequence[Finding]) -> Finding:
    """Whether the parts together lose no more than they may; not asked where each reaches its own figure."""
    some = groups(parts(about), about)
    by_name = {one.assembly: one for one in findings if one.id.endswith(tuple(f"/{q}" for q in _questions(requirement)))}
    short = tuple(group for group in some if any(_wants(group, by_name.get(row.name)) for row in group.rows))
    found = _outcome(some, short, by_name, requirement, about)
    first = next((one for one in some if one.name == OPAQUE), None)
    sums = [_sums(one, about) for one in (short or some[:1])]
    return finding(
        requirement, about, found.verdict, path="performance", reason=found.reason, next_step=found.next_step, step=STEP,
        asked="the sum of area over resistance is no more than with the required resistances, and none below its floor",
        given="; ".join(sums) or "no part above the ground with a figure of its own",
        provided=_measured(first.designed if first else None), limit=_measured(first.limit if first else None),
    )  # fmt: skip


def _questions(requirement: Requirement) -> tuple[str, ...]:
    return (*requirement.rule["floors"], requirement.rule["windows"])


def _open(said: Finding | None) -> bool:
    return said is not None and said.verdict not in SETTLED


def _wants(group: Group, said: Finding | None) -> bool:
    """Whether a part's own finding leaves something to trade; a window whose rating is open does not lack resistance."""
    return _open(said) if group.name == OPAQUE else said is not None and said.verdict == Verdict.DOES_NOT_MEET


def _measured(value: float | None) -> Measured | None:
    return None if value is None else Measured("H_x", value)


def _sums(group: Group, about: Context) -> str:
    name = "opaque parts" if group.name == OPAQUE else f"windows {group.name}"
    if group.designed is None or group.limit is None:
        return f"{name}: not summed, {listed(lacking(group.rows)) or 'a limit is open'}"
    designed, limit = _heat(about, group.designed, group.limit)
    return f"{name}: {designed} against {limit}"


def _heat(about: Context, *values: float) -> list[str]:
    return conductances(*values, customary=about.customary, both=about.both)


def _outcome(
    some: tuple[Group, ...], short: tuple[Group, ...], by_name: dict, requirement: Requirement, about: Context
) -> Outcome:
    if not some:
        return Outcome(Verdict.NOT_ASKED, "no part above the ground has a figure that could be traded")
    if not short:
        return Outcome(Verdict.NOT_ASKED, "every part reaches its own figure, nothing has to be traded")
    for group in short:
        told = [by_name[row.name] for row in group.rows if row.name in by_name]
        unsure = [one for one in told if _open(one) and one.verdict != Verdict.DOES_NOT_MEET]
        missing = lacking(group.rows)
        if missing:
            return Outcome(Verdict.NEEDS_EVIDENCE, f"not summed without {listed(missing)}", f"supply {listed(missing)}")
        if unsure:
            return Outcome(unsure[0].verdict, f"{unsure[0].assembly} is open: {unsure[0].reason}", unsure[0].next_step)
        if not group.holds:
            return _fails(group, requirement, about)
    return Outcome(Verdict.MEETS, "the parts together lose no more than with the required figures, and none is below its floor")


def _fails(group: Group, requirement: Requirement, about: Context) -> Outcome:
    if group.below_floor:
        return Outcome(
            Verdict.DOES_NOT_MEET, f"{listed(group.below_floor)} is below the floor that no trade may pass",
            "more insulation there, or show it by the performance path",
        )  # fmt: skip
    over = group.designed - group.limit
    credit = _credit(group, over, requirement, about)
    if credit is not None:
        return credit
    return Outcome(
        Verdict.DOES_NOT_MEET, f"{_heat(about, over)[0]} more than the required figures lose",
        "more insulation in one of the parts, or show it by the performance path",
    )  # fmt: skip


def _credit(group: Group, over: float, requirement: Requirement, about: Context) -> Outcome | None:
    """The credit of a one-storey building with few openings; it may serve ceilings below attics and floors alone."""
    rule, rows = requirement.rule["small_building"], group.rows
    weak = [row for row in rows if row.provided < row.asked]
    fits = group.name == OPAQUE and about.storeys == rule["storeys"] and all(_question(x) in rule["questions"] for x in weak)
    openings = [one for one in parts(about) if one.group in ("window", "door", "glass-block", "vehicle-door")]
    walls = [one for one in rows if one.group == "wall"]
    if not fits or not walls or any(one.area is None or one.asked is None or one.quantity != "U" for one in openings):
        return None
    glazed = sum(one.area for one in openings)
    gross = sum(one.area for one in walls) + glazed
    limit = max((one.asked for one in openings), default=None)
    if limit is None or glazed > rule["openings_at_most"] * gross:
        return None
    credit = (rule["credit_to"] * gross - glazed) * limit
    if over > credit:
        return None
    low, chord = metres(rule["ceiling_height"], about.customary), metres(rule["chord_height"], about.customary)
    much, given = _heat(about, over, credit)
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"{much} too much, within the credit of {given} that "
        f"{rule['clause']} gives a low building of one storey",
        f"answer: is the ceiling at most {low} above the floor, and the underside of the roof members at most {chord}?",
    )  # fmt: skip


__all__ = ["Group", "envelope_judged", "groups", "judge_trade_off", "traded"]
