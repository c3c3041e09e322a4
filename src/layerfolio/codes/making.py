"""Findings from requirements: what every finding takes from its requirement, said once."""

from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.requirements import Requirement

DECIDES = "authority having jurisdiction"
MEMORY_LIMIT = "rests on memory: confirm against the adopted text"


def finding(requirement: Requirement, context: Context, verdict: Verdict, **said: Any) -> Finding:
    """A finding on a requirement. `said` overrides what the requirement's file says."""
    amended = said.get("amended", "")
    usual = {
        "assembly": None, "asked": "", "given": "", "provided": None, "limit": None, "reason": "",
        "path": "prescriptive", "who_decides": requirement.rule.get("who_decides", DECIDES), "place": requirement.place,
        "mark": "given" if amended else requirement.mark, "source": requirement.source,
    }  # fmt: skip
    return Finding(
        id=requirement.id, edition=context.edition.title, clause=requirement.clause, topic=requirement.topic,
        question=requirement.title, verdict=verdict, **usual | said,
    )  # fmt: skip
