"""The energy path that the project file states: a line that it would answer waits with it, where its sum holds and is open."""

from dataclasses import replace

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.judges import at_most

OPEN = (Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE)


def carried(found: Finding, other: Finding | None) -> bool:
    """Whether a line that misses its figure waits with `other`, the calculation of the whole envelope."""
    if other is None or found.verdict != Verdict.DOES_NOT_MEET or other.verdict not in OPEN:
        return False
    return other.provided is not None and other.limit is not None and at_most(other.provided.value, other.limit.value)


def by_stated_path(found: Finding, other: Finding, name: str, performance: str) -> Finding:
    """The line under the verdict of the calculation that the project file takes for it; `name`: "total UA"."""
    return replace(
        found, verdict=other.verdict, next_step=f"settle the line of the {name}", performance=performance,
        reason=f"{found.reason}; the {name}, the path that the project file takes, holds in sum and is open",
        chosen=f"performance: {name}, as the project file says",
    )  # fmt: skip
