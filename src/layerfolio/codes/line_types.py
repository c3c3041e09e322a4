"""What the judges of a line of bracing give: answers to single questions, and the whole line."""

from dataclasses import dataclass, field

from layerfolio.codes.findings import Measured, Verdict
from layerfolio.steps.trace import Trace

FACE, LENGTH, PANEL, FASTENING, LAYOUT, TIE = (
    "wall-line", "wall-line-length", "wall-line-panel", "wall-line-fastening", "wall-line-layout", "wall-line-tie",
)  # fmt: skip
"""Questions on a line, as the requirements of the sets name them: path and face first."""
WORST_FIRST = (Verdict.DOES_NOT_MEET, Verdict.NEEDS_EVIDENCE, Verdict.NEEDS_JUDGEMENT, Verdict.MEETS)
ENGINEER = "to be designed by a licensed professional"


@dataclass(frozen=True, slots=True)
class Answer:
    """One question on a line: verdict, the words of a finding, the figures behind them. Lengths in m, shares as 1."""

    verdict: Verdict
    clause: str
    asked: str
    given: str
    reason: str = ""
    next_step: str = ""
    limit: Measured | None = None
    provided: Measured | None = None
    mark: str = "found"


@dataclass(frozen=True, slots=True)
class LineJudged:
    """`path` in words with its clause; `answers` by question, only those that the path asks. `required` is None where it
    asks no length; `unit` is m or 1. `trace` holds the steps of the demand.
    """

    name: str
    path: str
    answers: dict[str, Answer]
    required: float | None = None
    provided: float | None = None
    unit: str = ""
    trace: Trace = field(default_factory=lambda: Trace(()))


def worst(verdicts: list[Verdict]) -> Verdict:
    """The verdict of a line: that of its worst question; *not asked* where none is asked."""
    return next((one for one in WORST_FIRST if one in verdicts), Verdict.NOT_ASKED)
