"""Lines of bracing judged: one finding a question and line. The subject of a finding is the line, by its name."""

from collections.abc import Iterator
from importlib import import_module
from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.line_facts import facts, tables
from layerfolio.codes.line_types import LineJudged, worst
from layerfolio.codes.making import finding
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.studies.structure_types import WallLineStudy

WAYS = {"nbc": ("lines_nbc", "judge_nbc"), "bc": ("lines_bc", "judge_bc"), "irc": ("lines_irc", "judge_irc")}
"""Module and judge by code: imported when it is the one that is judged."""
DECIDES = "a licensed structural engineer and the authority having jurisdiction"


def line_judged(study: WallLineStudy, about: Context) -> LineJudged | None:
    """Every answer on a line under the set of the project; None where the set has no system of bracing."""
    code = about.edition.set_id.partition("-")[0]
    if code not in WAYS:
        return None
    module, function = WAYS[code]
    judge = getattr(import_module(f"layerfolio.codes.{module}"), function)
    return judge(facts(study, about), tables(about.edition.set_id))


def judge_wall_line(requirement: Requirement, study: WallLineStudy, about: Context) -> Finding | None:
    """The answer to the requirement's question; None where the path of the line does not ask it."""
    judged = line_judged(study, about)
    answer = judged.answers.get(requirement.question) if judged else None
    if answer is None:
        return None
    verdict, reason = answer.verdict, answer.reason
    if answer.mark == "memory" and verdict in (Verdict.MEETS, Verdict.DOES_NOT_MEET):
        verdict, reason = Verdict.NEEDS_JUDGEMENT, "; ".join(filter(None, ("a figure rests on memory: confirm it", reason)))
    return finding(
        requirement, about, verdict, assembly=study.name, asked=answer.asked, given=answer.given, reason=reason,
        next_step=answer.next_step, limit=answer.limit, provided=answer.provided, place=answer.clause, who_decides=DECIDES,
    )  # fmt: skip


def judge_lines(about: Context) -> Iterator[tuple[Finding, Requirement]]:
    """Every finding on every line, question by question, with its requirement."""
    for requirement in requirements(about.edition.set_id):
        if requirement.judge == "wall_line":
            for study in about.envelope.wall_lines.values():
                found = judge_wall_line(requirement, study, about)
                if found is not None:
                    yield found, requirement


def line_verdict(findings: tuple[Finding, ...] | list[Finding], name: str) -> Verdict:
    """The verdict of a line: that of its worst finding; *not asked* where none is on it."""
    return worst([one.verdict for one in findings if one.assembly == name and is_on_a_line(one)])


def is_on_a_line(found: Any) -> bool:
    """Whether a finding's subject is a line of bracing."""
    return found.id.rpartition("/")[2].startswith("wall-line")
