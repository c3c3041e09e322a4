"""The board of a line's panels under the American code: that of its method, its thickness, its stamp, its studs."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import INCH, Facts
from layerfolio.codes.line_types import Answer
from layerfolio.codes.lines_irc_closed import DESIGNED, NEAR

SLACK = 1.2e-4
"""Metres: 11 mm is sold as 7/16 in, 9.5 mm as 3/8 in, a tenth of a millimetre short."""
RATED = ("WSP", "CS-WSP")
"""Methods whose panels carry a span rating on the outer face."""


def method_of(known: Facts, tables: dict[str, Any]) -> str:
    """The method as stated, else that of the panel's grade: a wood panel or gypsum board."""
    rows = tables["methods"]
    return known.line.method or next((one for one in ("WSP", "GB") if known.grade in rows[one]["grades"]), "")


def other_board(known: Facts, tables: dict[str, Any], method: str) -> str:
    """Why the panel is none of the method, by its grade, in words; empty where it is, or is not graded."""
    row = tables["methods"].get(method) or {}
    if not known.grade or known.grade in row.get("grades", (known.grade,)):
        return ""
    return f"the panel is graded {known.grade}, the method takes {row['board']}"


def most(inches: float) -> float:
    """A greatest spacing in m, with the half millimetre that 610 mm stands over 24 in."""
    return inches * INCH * NEAR


def board_answer(known: Facts, tables: dict[str, Any], method: str) -> Answer:
    """Thickness of the method, stamp, and studs as the tables of the face have them."""
    row, clause = tables["methods"].get(method), tables["methods"]["place"]
    if row is None or "thickness" not in row:
        return _let_in(known, row or {}, clause, method)
    asked, given = f"{row['thickness']:g} in at least", _given(known)
    if known.thickness is None or known.studs is None or not known.grade:
        step = "supply thickness, panel.grade and framing.spacing"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "the panel is not fully stated", step)
    if wrong := other_board(known, tables, method):
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, wrong, f"use {row['board']}, or state its own method")
    if known.thickness < row["thickness"] * INCH - SLACK:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "the panel is too thin", "take a thicker panel")
    if method == "GB":
        return _on_wide_studs(known, row, (clause, asked, given)) or _stamp(known, tables, method, (clause, asked, given))
    widest = row.get("studs") or next(s for t, s in tables["inside"]["studs"] if known.thickness < t * INCH - SLACK or t > 1)
    asked = f"{asked}, studs at {widest:g} in at most"
    if known.stud_spacing > most(widest):
        reason = "the studs stand too far apart for the panel"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "take a thicker panel or closer studs")
    return _stamp(known, tables, method, (clause, asked, given))


def _on_wide_studs(known: Facts, row: dict[str, Any], words: tuple[str, str, str]) -> Answer | None:
    """Gypsum board has no studs in the table of methods; beyond the usual spacing its own table would have to be read."""
    if known.stud_spacing <= most(row["usual_studs"]):
        return None
    reason = f"studs over {row['usual_studs']} in apart: the table of interior gypsum board (R702.3.5) was not read"
    return Answer(Verdict.NEEDS_JUDGEMENT, *words, reason, "show the board on these studs against R702.3.5")


def _given(known: Facts) -> str:
    thick = f"{known.thickness / INCH:.4g} in" if known.thickness else "thickness not stated"
    apart = f"studs at {known.stud_spacing / INCH:.3g} in" if known.studs else "stud spacing not stated"
    stamp = known.line.panel.span_rating if known.line.panel else None
    return ", ".join(filter(None, (known.grade or "grade not stated", thick, f"rated {stamp}" if stamp else "", apart)))


def _stamp(known: Facts, tables: dict[str, Any], method: str, words: tuple[str, str, str]) -> Answer:
    """What the stamp says: a grade of another code, the span rating of the outer face, and what the layer is."""
    clause, asked, given = words
    if method in RATED and known.grade.startswith(("CSA", "OSB O")):
        reason = "a Canadian grade: whether its stamp is one that the code names is for the authority"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "show the stamp")
    if method in RATED and known.inside is not True:
        clause = tables["outside"]["place"]
        asked += "; on the outer face a span rating of 24/0, of 24/16 for studs at 24 in"
        if not known.line.panel.span_rating:
            step = "state panel.span_rating, as stamped"
            return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "the span rating is not stated", step)
        if not rated_rows(known, tables):
            reason = f"a span rating of {known.line.panel.span_rating} has no row for these studs"
            return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "take a panel stamped 24/16")
    if known.another:
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, known.another, "show the stamp of the panel")
    return Answer(Verdict.MEETS, clause, asked, given)


def rated_rows(known: Facts, tables: dict[str, Any]) -> list[dict[str, Any]]:
    """Rows of the table of the outer face for the panel's thickness, its rating where it is stated, and the studs."""
    table, stamp = tables["outside"], known.line.panel.span_rating if known.line.panel else None
    rating = _rating(table, stamp) if stamp else (99, 99)
    return [
        row for row in table["rows"]
        if known.thickness >= row["thickness"] * INCH - SLACK and known.stud_spacing <= most(row["studs"])
        and all(own >= least for own, least in zip(rating, row["rating"], strict=True))
    ]  # fmt: skip


def _rating(table: dict[str, Any], stamp: str) -> tuple[int, ...]:
    """Greatest spans of roof and floor; a rating for walls stands for what the note puts it in place of."""
    return tuple(table["for_walls"].get(stamp) or map(int, stamp.split("/")))


def _let_in(known: Facts, row: dict[str, Any], clause: str, method: str) -> Answer:
    """Boards and straps: only the studs are stated in the project file."""
    apart = f"studs at {known.stud_spacing / INCH:.3g} in" if known.studs else "stud spacing not stated"
    widest = row.get("studs")
    asked = f"the row of method {method}" + (f", studs at {widest} in at most" if widest else "")
    if widest and known.studs and known.stud_spacing > most(widest):
        step = f"set the studs closer, or have the line {DESIGNED}"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, apart, "the studs stand too far apart", step)
    step = "show the boards or straps, their angle and their fixing"
    return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, apart, "their sizes and fixing are not stated here", step)
