"""What was asked, what was provided, and how the two compare. The authority having jurisdiction decides, never we."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    MEETS = "meets"
    NEEDS_JUDGEMENT = "needs judgement"
    NEEDS_EVIDENCE = "needs evidence"
    DOES_NOT_MEET = "does not meet"
    NOT_ASKED = "not asked"


@dataclass(frozen=True, slots=True)
class Measured:
    """A figure of a finding: SI value under a glossary name, and the digits after the point the set compares with."""

    quantity: str  # glossary name in code: R, U, permeance ...
    value: float
    decimals: int | None = None  # the set's rounding rule; None: unrounded


@dataclass(frozen=True, slots=True)
class Finding:
    """One requirement asked of one subject.

    `id` is `<set>/<clause>/<question>`. `topic` is one of applicability, structure, thermal, vapour, air, water, fire,
    openings, materials, administration. `asked`, `given` are short printable sentences; `limit`, `provided` the figures
    behind them. `reason` says why the verdict is what it is; `next_step` what to supply or whom to ask (or empty).
    `step` names where the provided figure was calculated ("W1-T"). `assembly` is the subject's name: an assembly or an
    opening, None for the building; `opening` tells which. `performance` names the performance path and what was calculated
    on it or has to come from elsewhere; `chosen` the path that is taken and why. `answered_by` is the id of a finding on
    the performance path that answers this one. `evidence` lists rows of the evidence register ("E1-03"); `rests`
    says which of those it rests on though they are open.
    """

    id: str
    assembly: str | None
    edition: str
    clause: str
    topic: str
    question: str
    path: str  # prescriptive | performance
    verdict: Verdict
    asked: str
    given: str
    provided: Measured | None
    limit: Measured | None
    reason: str
    next_step: str = ""
    who_decides: str = "authority having jurisdiction"
    source: str = ""  # key of sources.yaml
    place: str = ""
    mark: str = "found"
    amended: str = ""  # source of the project's amendment, when one replaced the limit
    step: str = ""
    opening: bool = False
    performance: str = ""
    chosen: str = ""
    answered_by: str = ""
    evidence: tuple[str, ...] = ()
    rests: str = ""

    @property
    def what_follows(self) -> str:
        """Under the verdict: why it is so, what to supply or whom to ask, which open documents it rests on; when it meets
        the last alone.
        """
        if self.verdict is Verdict.MEETS:
            return self.rests
        return "; ".join(dict.fromkeys(filter(None, (self.reason, self.next_step, self.rests))))


def limits_of_u(findings: Iterable[Finding]) -> dict[str, float]:
    """By subject: the limit that its transmittance is judged by unrounded."""
    found: dict[str, float] = {}
    for one in findings:
        judged = one.provided and one.limit and one.limit.quantity == one.provided.quantity == "U"
        if one.assembly and judged and one.limit.decimals is None:
            found.setdefault(one.assembly, one.limit.value)
    return found
