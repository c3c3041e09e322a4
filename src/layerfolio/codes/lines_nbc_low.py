"""A line of bracing where wind and quake are small (9.23.13.1): panels on the wall, their nails, the tie; no length is asked."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import NOISE, Facts
from layerfolio.codes.line_fasteners import judge_fasteners
from layerfolio.codes.line_layout import lower_panels
from layerfolio.codes.line_tie import judge_tie
from layerfolio.codes.line_types import FACE, FASTENING, LENGTH, PANEL, TIE, Answer, LineJudged
from layerfolio.codes.lines_nbc import by_table, column, edges_supported, face_answer, fasteners_of, row_for


def judge_low(known: Facts, tables: dict[str, Any], given: str) -> LineJudged:
    """Sheathing, or an interior panel-type finish, on exterior walls; nothing is asked of an interior line."""
    place = tables["low"]["place"]
    if known.line.interior:
        return _interior(known, tables, given)
    by = "interior panel-type finish, (2)(a)(iii) with 9.29" if known.inside else "panel-type sheathing, (2)(a)(ii) with 9.23.17"
    fastening = _fastening(known, tables)
    answers = {
        FACE: face_answer(known, f"{place}.(2)", f"panels on the studs: {by}", given), LENGTH: _cover(known, tables),
        PANEL: _thickness(known, tables), FASTENING: fastening, TIE: judge_tie(known, tables, fastening, braced=False),
    }  # fmt: skip
    return LineJudged(known.study.name, f"{place}: {by}", answers, None, known.study.total_panels, "m")


def _interior(known: Facts, tables: dict[str, Any], given: str) -> LineJudged:
    place = tables["low"]["place"]
    memory = tables["mark"] == "memory"
    answer = Answer(
        Verdict.NEEDS_JUDGEMENT if memory else Verdict.NOT_ASKED, f"{place}.(2)", "panels on exterior walls",
        f"{given}; interior line", "the article speaks of exterior walls" + ("; that rests on memory" if memory else ""),
        f"confirm {place}" if memory else "",
    )  # fmt: skip
    return LineJudged(known.study.name, f"{place}: exterior walls", {FACE: answer})


def _cover(known: Facts, tables: dict[str, Any]) -> Answer:
    """The clause asks no length; it speaks of the walls: a line panelled in part, or not up to the plate, is a question."""
    low = tables["low"]
    study, clause = known.study, low["place"]
    openings = sum(one.along.value for one in known.line.openings if one.along)
    covered = study.total_panels + openings
    asked = (
        "no length: the wall is panelled beside its openings, which the article does not limit; strength and rigidity "
        f"({low['strength']}) stay asked"
    )
    given = f"panels {known.long(study.total_panels)} and openings {known.long(openings)} of {known.long(study.length)}"
    if not study.total_panels:
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "no panels are stated", "state the panels of the line")
    if covered < study.length - 0.01:
        reason = "no length is asked, but the clause speaks of the wall, and panels and openings leave a part of it"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "panel the rest of the line, or ask the authority")
    if lower_panels(known):
        reason = "a panel is lower than the wall, and the clause speaks of the wall"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "use panels of full height, or ask the authority")
    if tables["mark"] == "memory":
        reason = "that the article limits no length rests on memory"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, f"confirm {clause}")
    return Answer(Verdict.NOT_ASKED, clause, asked, given, "the article limits no length; panels and openings make up the line")


def _thickness(known: Facts, tables: dict[str, Any]) -> Answer:
    if not known.inside:
        return by_table(known, tables["sheathing"], tables["sheathing"]["place"])
    finish = tables["finish"]
    plain = {grade: row["plain"] for grade, row in finish.items() if isinstance(row, dict)}
    found = by_table(known, plain, finish["place"])
    if found.verdict is not Verdict.DOES_NOT_MEET or known.grade not in plain:
        return found
    blocked = {grade: row["blocked"] for grade, row in finish.items() if isinstance(row, dict)}
    number = column(known)
    least = [row[known.grade][number] for row in (plain, blocked)]
    if None in least or known.thickness * 1000 < min(least[0] - finish["tolerance"], least[1]) - NOISE:
        return found
    reason = "thinner than without blocking; with blocking at 1.2 m or within the tolerance it may do"
    step = "show the blocking, or take a thicker panel"
    return Answer(Verdict.NEEDS_JUDGEMENT, found.clause, found.asked, found.given, reason, step)


def _fastening(known: Facts, tables: dict[str, Any]) -> Answer:
    """Table A; a finish inside with the nails of a lining is what (iii) names, and a question all the same."""
    table = tables["fasteners"]["A"]
    if (open_row := fasteners_of(known, table)) is not None:
        return open_row
    found = judge_fasteners(known, tables, row_for(known, table), table, 1.0)
    if known.inside and found.verdict is Verdict.DOES_NOT_MEET and _as_lining(known, tables["lining_nails"]):
        place = tables["lining_nails"]["place"]
        reason = f"(2)(a)(iii) asks a finish by 9.29 alone, whose nails ({place}) are shorter; by the table: {found.reason}"
        step = "use the fasteners of the table, or ask the authority whether those of a lining are enough here"
        found = Answer(Verdict.NEEDS_JUDGEMENT, found.clause, found.asked, found.given, reason, step)
    return edges_supported(known, found, tables["edges"]["place"])


def _as_lining(known: Facts, lining: dict[str, Any]) -> bool:
    """Whether nails or staples are as long and as close as those that hold a lining; 9.29 names no screws."""
    long = known.pins.kind != "screw" and known.pins.shank.length.value * 1000 >= lining["length"] - NOISE
    return long and known.edge * 1000 <= lining["edge"] + NOISE and known.field * 1000 <= lining["field"] + NOISE
