"""Nails of a line's panels under the American code: interior sheathing by Table R602.3(1), exterior by Table R602.3(3)."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import INCH, Facts
from layerfolio.codes.line_fasteners import fasteners_given
from layerfolio.codes.line_types import Answer
from layerfolio.codes.lines_irc_boards import RATED, SLACK, most, rated_rows
from layerfolio.codes.lines_irc_place import category, exposure, speed


def nails_answer(known: Facts, tables: dict[str, Any], method: str) -> Answer:
    """The nails of the face against those of the table."""
    pins, row = known.pins, tables["methods"].get(method)
    clause = tables["inside"]["place"] if known.inside else tables["outside"]["place"]
    given = fasteners_given(known)
    if row is None or method not in RATED:
        return _other(known, tables, method, given)
    nail, bite = _nail(known, tables)
    if nail is None:
        reason = "the tables have no row for this panel and these studs at this wind"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, "nails by thickness", given, reason, "confirm against the adopted text")
    asked = f"nails of {nail[0]:g} × {nail[1]:g} in at {row['edge']} in along edges and {row['field']} in between"
    if pins is None or not pins.kind or known.edge is None or known.field is None:
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "fasteners are not stated", "state panel_fastening")
    glued = _glued(known, tables, asked, given)
    if glued:
        return glued
    if pins.kind != "nail":
        reason = f"the rows that were read name nails, not {pins.kind}s"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "show the row of the adopted text for them")
    wrong = _nail_wrong(known, nail, bite) or _apart(known, row)
    if wrong:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, wrong, "use the nails of the table")
    return Answer(Verdict.MEETS, clause, asked, given)


def _nail(known: Facts, tables: dict[str, Any]) -> tuple[list[float] | None, float]:
    """Length and diameter, and the penetration asked (0 inside), in."""
    thick = known.thickness
    if thick is None or known.studs is None:
        return None, 0.0
    if known.inside:
        return next((nail for upto, nail in tables["inside"]["rows"] if thick <= upto * INCH + SLACK), None), 0.0
    number = "BCD".index(exposure(known))
    fits = [row for row in rated_rows(known, tables) if speed(known) <= row["speed"][number] + 1e-3]
    best = fits[-1] if fits else None
    return (best["nail"], best["bite"]) if best else (None, 0.0)


def _nail_wrong(known: Facts, nail: list[float], bite: float) -> str:
    shank = known.pins.shank
    if shank.length.value < nail[0] * INCH - SLACK or shank.diameter.value < nail[1] * INCH * 0.995:
        return f"a nail of {shank.text} is shorter or thinner than the table's"
    if shank.length.value - known.thickness < bite * INCH - SLACK:
        return f"it goes less than {bite:g} in into the stud"
    return ""


def _apart(known: Facts, row: dict[str, Any]) -> str:
    if known.pins.edge.value > most(row["edge"]) or known.pins.field.value > most(row["field"]):
        return f"the nails stand farther apart than {row['edge']} and {row['field']} in"
    return ""


def _glued(known: Facts, tables: dict[str, Any], asked: str, given: str) -> Answer | None:
    rule = tables["layout"]["glued"]
    if known.pins.adhesive and category(known) in rule["categories"]:
        reason = f"glued panels are not permitted in category {category(known)}"
        return Answer(Verdict.DOES_NOT_MEET, rule["place"], asked, given, reason, "leave out the adhesive")
    return None


def _other(known: Facts, tables: dict[str, Any], method: str, given: str) -> Answer:
    """Methods of which only spacings, or nothing, were read."""
    row, clause = tables["methods"].get(method), tables["methods"]["place"]
    if row is None or "edge" not in row or known.pins is None or not known.pins.kind or known.edge is None or known.field is None:
        step = "show the fasteners against the adopted text"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, f"the fasteners of method {method}", given, "they are not stated", step)
    asked = f"fasteners at {row['edge']} in along edges and {row['field']} in between"
    if wrong := _apart(known, row):
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, wrong, "place them closer")
    reason = "the spacing fits; kind and size of the fastener were not read in full"
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "confirm the fastener against the adopted text")
