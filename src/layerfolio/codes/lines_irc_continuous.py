"""Continuous sheathing under the American code: it covers the whole line, and its panels go by the openings beside them."""

from dataclasses import replace
from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import FOOT, INCH, Facts
from layerfolio.codes.line_types import FACE, LAYOUT, LENGTH, Answer

NEAR = 0.01  # m, what rounding of panels and openings may leave of a line
EVERYWHERE = "R602.10.4.2"
ENDS = "each end of a line of continuous sheathing stands as one of the conditions of Figure R602.10.7, which was not read"
HEIGHTS = "state the clear height of every opening"


def is_continuous(method: str) -> bool:
    return method.startswith("CS-")


def least_beside_openings(known: Facts, rows: dict[str, Any]) -> tuple[float | None, str]:
    """The least length, in, beside the tallest opening, else what is open; between two heights of wall the greater."""
    heights, feet = [one.height.value if one.height else None for one in known.line.openings], known.study.height / FOOT
    if None in heights:
        return None, HEIGHTS
    tall = max(heights, default=0.0) / INCH
    row = next((one[1] for one in rows["continuous"] if tall <= one[0] + 1e-3), None)
    beside = [x for x, n in zip(row or (), _weights(feet, rows["heights"]), strict=False) if n]
    return (max(beside) if beside and None not in beside else None), ""


def _weights(feet: float, heights: list[float]) -> list[bool]:
    """Which heights of the table stand beside the wall's: one that it has, else the two around it; the first below them all."""
    above = next((n for n, one in enumerate(heights) if feet <= one + 1e-3), None)
    if above is None:
        return [False] * len(heights)
    exact = above == 0 or feet >= heights[above] - 1e-3
    return [n == above or (not exact and n == above - 1) for n in range(len(heights))]


def uncovered(known: Facts, method: str) -> str:
    """What is left of a line of continuous sheathing beside its panels and openings, in words; empty where nothing is."""
    openings = sum(one.along.value for one in known.line.openings if one.along)
    rest = known.study.length - known.study.total_panels - openings
    if not is_continuous(method) or rest <= NEAR:
        return ""
    left = f"panels and openings leave {rest / FOOT:.1f} ft of the line"
    return f"{left}; continuous sheathing covers every surface that can be sheathed"


def left_open(known: Facts, answers: dict[str, Answer], method: str) -> dict[str, Answer]:
    """The answers of a line that is not stated to be sheathed throughout: what would go by the method waits for it."""
    rest, moved = uncovered(known, method), {}
    if not rest:
        return answers
    step = "state every panel and opening of the line, or take method WSP"
    for name in (FACE, LENGTH, LAYOUT):
        if answers[name].verdict in (Verdict.MEETS, Verdict.NEEDS_JUDGEMENT):
            clause = EVERYWHERE if name == FACE else answers[name].clause
            moved[name] = replace(answers[name], verdict=Verdict.NEEDS_EVIDENCE, clause=clause, reason=rest, next_step=step)
    return answers | moved


def length_open(answer: Answer, words: str) -> Answer:
    """The answer on the length while it is open which panels count."""
    verdict = Verdict.NEEDS_EVIDENCE if words.startswith("state") else Verdict.NEEDS_JUDGEMENT
    given, reason = "which panels count is open", "no length is compared while it is open which panels count"
    return replace(answer, verdict=verdict, given=given, reason=reason, next_step=words, provided=None)
