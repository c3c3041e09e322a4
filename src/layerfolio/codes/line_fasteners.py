"""Nails, screws and staples of a line's panels against a table of least lengths: the Canadian way."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import NOISE, Facts
from layerfolio.codes.line_types import Answer

SHORT = 0.005
"""Part by which a length written in inches may miss the metric one: 2 in for 51 mm."""
STATE = "state panel_fastening: nail as length x diameter, edge, field"


def judge_fasteners(
    known: Facts, tables: dict[str, Any], row: dict[str, Any] | None, table: dict[str, Any], part: float
) -> Answer:
    """`row` gives the least lengths for the panel's thickness (None: beyond the table); edges at `part` of the spacing."""
    edge, field = table["edge"] * part / 1000, table["field"] / 1000
    asked = _asked(known, row, edge, field)
    clause, given, pins = table["place"], fasteners_given(known), known.pins
    if pins is None or not pins.kind or known.edge is None or known.field is None or known.thickness is None:
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "fasteners or thickness of the panels are not stated", STATE)
    if row is None:
        reason = "the panel is thicker than the table goes"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "ask the authority which fasteners it takes")
    wrong = _too_short(known, tables, row) or _too_far(known, edge, field)
    if wrong:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, wrong, "use the fasteners of the table")
    if pins.kind != "nail":
        reason = f"length and spacing of the {pins.kind}s fit; their diameter and kind were not read in the table"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, f"confirm the {pins.kind}s against the adopted text")
    return _diameter(known, tables, Answer(Verdict.MEETS, clause, asked, given))


def _asked(known: Facts, row: dict[str, Any] | None, edge: float, field: float) -> str:
    least = ", ".join(f"{word}s of {known.size(row[word])}" for word in ("nail", "screw", "staple") if word in row) if row else ""
    return f"{least or 'fasteners'} at least, at {known.size(edge * 1000)} along edges and {known.size(field * 1000)} between"


def fasteners_given(known: Facts) -> str:
    """What is stated of the fasteners, in words."""
    pins = known.pins
    if pins is None or not pins.kind:
        return "fasteners not stated"
    stated, shank = ((pins.edge, "along edges"), (pins.field, "between")), pins.shank
    apart = [f"{known.as_stated(one)} {where}" for one, where in stated if one]
    sizes = f"{known.as_stated(shank.length)} × {known.as_stated(shank.diameter)}"
    return f"{pins.kind}s {sizes}, {', '.join(apart) or 'spacing not stated'}"


def least_length(known: Facts, kind: str, row: dict[str, Any]) -> float | None:
    return row[kind] / 1000 if kind in row else None


def long_enough(known: Facts, least: float) -> bool:
    """Whether the fastener is as long as asked; one written in inches within half a percent."""
    one = known.pins.shank.length
    inches = not one.text.rstrip().endswith("m")
    return one.value >= least * (1 - (SHORT if inches else NOISE))


def _too_short(known: Facts, tables: dict[str, Any], row: dict[str, Any]) -> str:
    pins, least = known.pins, least_length(known, known.pins.kind, row)
    if least is None:
        return f"the table has no {pins.kind}s for this panel"
    if not long_enough(known, least):
        lining = tables["lining_nails"]
        if pins.kind == "nail" and pins.shank.length.value >= lining["length"] / 1000 - NOISE and known.inside:
            nails = f"nails of {known.as_stated(pins.shank.length)}"
            return f"{nails} hold a lining ({lining['place']}); they give no resistance to bracing"
        return f"{known.as_stated(pins.shank.length)} is shorter than {known.size(least * 1000)}"
    bite = (pins.shank.length.value - known.thickness) / pins.shank.length.value
    if pins.kind == "nail" and bite < tables["bite"]["share"] - NOISE:
        return f"less than half of the nail goes into the stud ({tables['bite']['place']})"
    return ""


def _too_far(known: Facts, edge: float, field: float) -> str:
    if known.edge > edge + NOISE:
        return f"{known.as_stated(known.pins.edge)} along the edges is more than {known.size(edge * 1000)}"
    if known.field > field + NOISE:
        return f"{known.as_stated(known.pins.field)} between is more than {known.size(field * 1000)}"
    return ""


def _diameter(known: Facts, tables: dict[str, Any], fits: Answer) -> Answer:
    """Common nails have a diameter by their length; a thinner one is no common nail."""
    one, table = known.pins.shank, tables["diameters"]
    least = common_diameter(tables, one.length.value)
    if one.diameter.value * 1000 < least * (1 - SHORT):
        place = table["place"]
        long, thick = known.as_stated(one.length), known.as_stated(one.diameter)
        reason = f"as a common nail {long} is {known.size(least)} thick ({place}), this one {thick}"
        return Answer(Verdict.DOES_NOT_MEET, fits.clause, fits.asked, fits.given, reason, "use common nails")
    return fits


def common_diameter(tables: dict[str, Any], long: float) -> float:
    """Least diameter in mm of a common nail of that length (m)."""
    rows = tables["diameters"]["rows"]
    return next((thick for least, thick in reversed(rows) if long >= least / 1000 - NOISE), tables["diameters"]["shortest"])
