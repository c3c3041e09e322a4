"""A line of bracing under the American code: where the method ends, and every question within it."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import Facts
from layerfolio.codes.line_open import panel_open
from layerfolio.codes.line_types import ENGINEER, FACE, FASTENING, LAYOUT, LENGTH, PANEL, Answer, LineJudged
from layerfolio.codes.lines_irc_boards import board_answer, method_of
from layerfolio.codes.lines_irc_closed import LET_IN, closed, ruled_out
from layerfolio.codes.lines_irc_continuous import left_open, length_open
from layerfolio.codes.lines_irc_length import length_answer
from layerfolio.codes.lines_irc_nails import nails_answer
from layerfolio.codes.lines_irc_panels import counted_panels, layout_answer
from layerfolio.codes.lines_irc_place import beyond, category, exposure, speed, tall

CARRIED = ("WSP", "CS-WSP", "GB", "LIB", "DWB", "SFB", "PBS")
"""Methods whose rows are carried; of LIB and DWB the fasteners were not read."""


def judge_irc(known: Facts, tables: dict[str, Any]) -> LineJudged:
    """Every question where the figures of the place are within the method; else the path alone."""
    given = _given(known)
    if (found := _outside(known, tables, given)) is not None:
        return found
    method = method_of(known, tables)
    answers = {FACE: _face(known, tables, method, given)}
    if method not in CARRIED:
        return LineJudged(known.study.name, f"R602.10, method {method or 'not known'}", answers)
    counted, words = counted_panels(known, tables, method)
    length, required, provided, trace = length_answer(known, tables, method, counted)
    answers |= {
        LENGTH: length_open(length, words) if words and method == "CS-WSP" else length,
        PANEL: board_answer(known, tables, method), FASTENING: nails_answer(known, tables, method),
        LAYOUT: layout_answer(known, tables, method, counted, words),
    }  # fmt: skip
    against = ruled_out(known, tables, method)
    path = f"R602.10, method {method}" + (", not open to this line" if against else "")
    found = closed(left_open(known, answers, method), method, against)
    return LineJudged(known.study.name, path, found, required, provided, "m", trace)


def _outside(known: Facts, tables: dict[str, Any], given: str) -> LineJudged | None:
    """The line while a figure is missing, or beyond the method; None where its questions are asked."""
    clause, need = tables["ends"]["place"], _missing(known)
    if need:
        reason = "a figure of the place or the building is missing: which tables hold is not judged"
        answer = Answer(Verdict.NEEDS_EVIDENCE, clause, "wind speed, exposure, seismic category, storeys", given, reason,
                        f"supply {', '.join(need)}")  # fmt: skip
        return LineJudged(known.study.name, "open: a figure is missing", {FACE: answer})
    passed = beyond(known, tables)
    if passed:
        answer = Answer(Verdict.NEEDS_JUDGEMENT, clause, "the limits of the method", given, f"{passed}: {ENGINEER}",
                        "have the part that is beyond it designed (R301.1.3)")  # fmt: skip
        return LineJudged(known.study.name, f"beyond the method: {passed}", {FACE: answer})
    return None


def _given(known: Facts, face: bool = True) -> str:
    blown, faces = speed(known), {True: "panel on the inner face", False: "panel on the outer face", None: "face not known"}
    said = [
        f"wind {blown:.0f} mph, taken as the ultimate speed" if blown else "wind speed not given",
        f"exposure {exposure(known)}" if exposure(known) else "exposure not given",
        f"category {category(known)}" if category(known) else "seismic category not given",
    ]  # fmt: skip
    return ", ".join([*said, faces[known.inside]] if face else said)


def _missing(known: Facts) -> list[str]:
    asked = {
        "site_loads.wind_speed": speed(known), "site_loads.exposure (B, C or D)": exposure(known),
        "site_loads.seismic.category": category(known), "building.storeys": known.about.storeys,
        "storeys_above of the line": known.floors is not None,
    }  # fmt: skip
    return [name for name, there in asked.items() if not there]


def _face(known: Facts, tables: dict[str, Any], method: str, given: str) -> Answer:
    """The code is silent on the face; its row for interior sheathing takes a panel inside."""
    clause, asked = tables["methods"]["place"], "a bracing method of the table, its panels on the studs"
    if not method:
        step = "state method, or the grade of the panel"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "the method is not known", step)
    said = f"{given}, method {method}"
    if method in LET_IN:
        asked, said = "a bracing method of the table", f"{_given(known, face=False)}, method {method}, let into the studs"
    if method not in CARRIED:
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, said, f"the rows of method {method} are not judged here",
                      "have the line checked against the adopted text")  # fmt: skip
    found = None if method in LET_IN else _on_the_studs(known, method, clause, asked, said)
    found = found or tall(known, tables, clause, asked, said)
    asked += "; the row names exterior and interior sheathing, and no face is asked" if method == "WSP" else ""
    return found or Answer(Verdict.MEETS, clause, asked, said)


def _on_the_studs(known: Facts, method: str, clause: str, asked: str, said: str) -> Answer | None:
    """What keeps the panels themselves from being those of the method; None where nothing does."""
    if (answer := panel_open(known, clause, asked, said)) is not None:
        return answer
    if known.another:
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, said, known.another, "show the stamp of the panel")
    if known.inside and method == "CS-WSP":
        reason = "continuous sheathing is read for one side of the line; whether the inner side may be it is not said"
        return Answer(Verdict.NEEDS_JUDGEMENT, "R602.10.4.2", asked, said, reason, "ask the authority")
    return None
