"""Findings on moisture: what each takes from its standard, said once."""

from typing import Any

from layerfolio.codes.findings import Finding, Verdict

BALANCE, TWO_PERIODS, RESERVE = "iso-13788-2012", "din-4108-3-2018", "din-68800-2"
STANDARDS = {BALANCE: "ISO 13788:2012", TWO_PERIODS: "DIN 4108-3:2018", RESERVE: "DIN 68800-2, edition not known"}
"""How each standard is named, with its edition where its source tells it."""
PRACTICE = "common-practice"
"""The source of what no standard asks: practice takes it for granted where the simple method is used."""
ADD = "add to the project file: "


def moisture_finding(name: str, question: str, clause: str, title: str, verdict: Verdict, **said: Any) -> Finding:
    """A finding that rests on a standard (`source`, ISO 13788 where none is said), which no code set asks for."""
    usual = {"asked": "", "given": "", "provided": None, "limit": None, "reason": "", "step": f"{name}-V"}
    source = said.pop("source", BALANCE)
    part = clause.rpartition(", ")[2]
    if said.pop("practice", False):
        said |= {"source": PRACTICE, "clause": f"common practice beside {STANDARDS[source]}; beside the code set"}
    usual |= {"source": source, "clause": f"{STANDARDS[source]}, {part}; beside the code set"}
    return Finding(
        id=f"{source}/{part.replace(' ', '-')}/{question}", assembly=name, edition=source, topic="vapour", question=title,
        path="performance", verdict=verdict, **usual | said,
    )  # fmt: skip
