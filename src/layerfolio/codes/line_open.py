"""Answers that every code gives alike while something about a line of bracing is not known."""

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import Facts
from layerfolio.codes.line_types import ENGINEER, FACE, Answer, LineJudged


def place_open(known: Facts, asked: str, given: str, figures: dict[str, object]) -> LineJudged | None:
    """The line while a figure of the place is missing, by its key under `site_loads`; None where all are stated."""
    need = [f"site_loads.{key}" for key, figure in figures.items() if figure is None]
    if not need:
        return None
    reason = "a figure of the place is missing: which path is open is not judged"
    answer = Answer(Verdict.NEEDS_EVIDENCE, "9.23.13", asked, given, reason, f"supply {' and '.join(need)}")
    return LineJudged(known.study.name, "open: a figure of the place is missing", {FACE: answer})


def panel_open(known: Facts, clause: str, asked: str, given: str) -> Answer | None:
    """The answer on the face while it is not known which layer braces, or whether it lies on the studs; None else."""
    if known.panel is None or known.inside is None:
        reason = "which layer braces, or where it lies to the studs, is not stated"
        step = "name the layer (serves: [bracing]) and the studs"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, reason, step)
    if not known.on_studs:
        reason = f"another layer lies between the panel and the studs, on which the tables count: {ENGINEER}"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "have the line designed")
    return None
