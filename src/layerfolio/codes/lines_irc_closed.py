"""Methods of bracing of the American code that a line cannot take, whatever its lengths and places: then nothing of it meets."""

from dataclasses import replace
from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import FOOT, INCH, Facts
from layerfolio.codes.line_types import FACE, FASTENING, LAYOUT, LENGTH, PANEL, Answer

LET_IN = ("LIB", "DWB")
"""Boards or straps in the frame: they have no panel and no face."""
DESIGNED = "designed (R301.1.3)"
NO_GYPSUM = "gypsum board is left out, which method LIB may not"
NEAR = 1.001  # half a millimetre that 610 mm stands over 24 in


def ruled_out(known: Facts, tables: dict[str, Any], method: str) -> list[str]:
    """Why the method is not open to the line, in words; empty where it is."""
    from layerfolio.codes.lines_irc_boards import other_board

    found = [NO_GYPSUM] if gypsum_left_out(known, method) else []
    found += [wrong] if (wrong := other_board(known, tables, method)) else []
    row = tables["methods"].get(method) or {}
    if method in LET_IN and "studs" in row and known.studs and known.stud_spacing > row["studs"] * INCH * NEAR:
        found.append(f"its studs stand at {known.stud_spacing / INCH:.3g} in, {row['studs']} in are the most")
    if known.floors in tables["wind"]["not_permitted"].get(method, ()):
        found.append("the table does not permit it under this load")
    if too_high(known, tables, method):
        found.append("the table does not permit it in a wall of this height")
    return found


def gypsum_left_out(known: Facts, method: str) -> bool:
    """Whether the line states that the board is left out which let-in braces take opposite."""
    return method == "LIB" and known.line.gypsum_opposite is False


def too_high(known: Facts, tables: dict[str, Any], method: str) -> bool:
    """Whether the least lengths have no figure for the method at the height of the wall."""
    rows, feet = tables["panels"], known.study.height / FOOT
    row = next((one["least"] for one in rows["rows"] if method in one["methods"]), None)
    column = next((n for n, most in enumerate(rows["heights"]) if feet <= most + 1e-3), None)
    return row is not None and column is not None and row[column] is None


def closed(answers: dict[str, Answer], method: str, against: list[str]) -> dict[str, Answer]:
    """The answers of a line whose method is ruled out, or whose panels are none of the method: what would meet is not asked."""
    if against:
        face = answers[FACE]
        step = f"have the line {DESIGNED}, or build it so that a method of the table is open to it"
        reason = f"method {method} is not open to this line: {'; '.join(against)}"
        moved = {FACE: replace(face, verdict=Verdict.DOES_NOT_MEET, reason=reason, next_step=step)}
        questions, why = (LENGTH, PANEL, FASTENING, LAYOUT), f"method {method} is not open to this line"
    elif answers[PANEL].verdict is Verdict.DOES_NOT_MEET:
        moved, questions = {}, (LENGTH, LAYOUT)
        why = f"the panels are none of method {method}: {answers[PANEL].reason}"
    else:
        return answers
    for name in questions:
        if name in answers and answers[name].verdict is not Verdict.DOES_NOT_MEET:
            moved[name] = replace(answers[name], verdict=Verdict.NOT_ASKED, reason=why, next_step="")
    return answers | moved
