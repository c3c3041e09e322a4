"""Where the panels of a line stand: distance of the lines, clear distances, distances from the ends. Metres."""

from itertools import pairwise

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import NOISE, Facts
from layerfolio.codes.line_types import Answer

GAP_AT_PLATES = 0.05  # m


def gaps_and_ends(known: Facts, counted: list[tuple[float, float]]) -> tuple[float, float] | None:
    """The widest gap and the farther end of the panels that count; None while their places are not stated."""
    if not counted or not known.study.laid_out:
        return None
    edges = [(at, at + size) for at, size in counted]
    gaps = [after[0] - before[1] for before, after in pairwise(edges)]
    return max(gaps, default=0.0), max(edges[0][0], known.study.length - edges[-1][1])


def lower_panels(known: Facts) -> bool:
    """Whether a panel is stated to be lower than the wall by more than the gap at the plates."""
    return any(one.height and one.height.value < known.study.height - GAP_AT_PLATES - NOISE for one in known.line.panels)


def measured(
    known: Facts, counted: list[tuple[float, float]], spacing: float, gap: float, end: float, clause: str, closer: str = ""
) -> Answer:
    """The places against their limits; `closer` says what a line too far away may still do."""
    asked = (
        f"lines {known.long(spacing)} apart at most, panels {known.long(gap)} apart at most, the first and last within "
        f"{known.long(end)} of the ends"
    )
    stated, places = known.line.line_spacing, gaps_and_ends(known, counted)
    given = f"next line {known.long(stated.value, stated.text) if stated else 'not stated'}"
    if places:
        given += f", widest gap {known.long(round(places[0], 4))}, farther end {known.long(round(places[1], 4))}"
    if not counted:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "no panel is long enough to count", "use longer panels")
    far = bool(stated) and stated.value > spacing + NOISE
    wrong = ["the next line is too far"] if far else []
    wrong += ["a gap is too wide"] if places and places[0] > gap + NOISE else []
    wrong += ["the first or last panel is too far from the end"] if places and places[1] > end + NOISE else []
    if wrong:
        step = f"add a line between{closer}" if wrong == ["the next line is too far"] else "move or add panels"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "; ".join(wrong), step)
    need = [word for word, there in (("line_spacing", stated), ("panels.at", places)) if not there]
    if need:
        reason = f"not stated: {', '.join(need)}"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, reason, f"state {' and '.join(need)}")
    if lower_panels(known):
        reason = "a panel is lower than the wall: braced panels reach from plate to plate"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "use panels of full height, or ask the authority")
    return Answer(Verdict.MEETS, clause, asked, given)
