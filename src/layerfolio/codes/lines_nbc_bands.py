"""A line of bracing as a braced wall band (9.23.13.4 to 9.23.13.7): share, places, panels, nails, the tie of the plate."""

from dataclasses import replace
from typing import Any

from layerfolio.codes.findings import Measured, Verdict
from layerfolio.codes.line_facts import NOISE, Facts
from layerfolio.codes.line_fasteners import judge_fasteners
from layerfolio.codes.line_floors import one_storey
from layerfolio.codes.line_layout import gaps_and_ends, measured
from layerfolio.codes.line_tie import judge_tie
from layerfolio.codes.line_types import ENGINEER, FACE, FASTENING, LAYOUT, LENGTH, PANEL, TIE, Answer, LineJudged
from layerfolio.codes.lines_nbc import by_table, edges_supported, face_answer, fasteners_of, row_for


def judge_bands(known: Facts, tables: dict[str, Any], quake: float, wind: float, given: str) -> LineJudged:
    """Every question of the path, on the panels that are long enough to count."""
    place, bands = tables["high"]["place"], tables["bands"]
    counted, doubtful = _counted(known, bands)
    share = sum(size for _, size in counted) / known.study.length
    asked = "wood panels in bands: interior panel-type finish, 9.23.13.6.(1)(c), or sheathing, (b)"
    required, answer = _share(known, bands, share, doubtful)
    fastening = _fastening(known, tables, quake, wind)
    answers = {
        FACE: face_answer(known, "9.23.13.6.(1)", asked, given), LENGTH: answer, PANEL: _panel(known, tables, quake),
        FASTENING: fastening, LAYOUT: _layout(known, bands, quake, wind, counted, doubtful),
        TIE: judge_tie(known, tables, fastening, braced=True),
    }  # fmt: skip
    path = f"{place}: braced wall panels in bands (9.23.13.4 to 9.23.13.7)"
    return LineJudged(known.study.name, path, answers, required, share, "1")


def _counted(known: Facts, bands: dict[str, Any]) -> tuple[list[tuple[float, float]], bool]:
    """Panels long enough to count, and whether one counts only if it joins a panel of the crossing band."""
    found, doubtful, end = [], False, known.study.length
    for at, size in known.study.panels:
        at_end = known.study.laid_out and (at <= NOISE or at + size >= end - NOISE)
        if size * 1000 >= bands["elsewhere"] - NOISE:
            found.append((at, size))
        elif at_end and size * 1000 >= bands["at_the_end"] - NOISE:
            found.append((at, size))
            doubtful = True
    return found, doubtful


def _share(known: Facts, bands: dict[str, Any], share: float, doubtful: bool) -> tuple[float | None, Answer]:
    """The share of the band by floors and weight of construction; without either only what holds for both."""
    floors, kinds = known.floors, bands["share"]
    given = f"{share:.0%} of {known.long(known.study.length)}, panels long enough to count"
    clause = bands["place"]
    if floors is None:
        reason, step = "what the line carries is not stated", "state storeys_above, or supports"
        return None, Answer(Verdict.NEEDS_EVIDENCE, clause, "a share of the band", given, reason, step)
    asked = [kinds[one][floors] if floors < len(kinds[one]) else None for one in
             ([known.line.construction] if known.line.construction else kinds)]  # fmt: skip
    if len(set(asked)) > 1:
        step = "state construction: light or heavy"
        reason = "the weight of the construction is not stated"
        return None, Answer(Verdict.NEEDS_EVIDENCE, clause, "a share of the band", given, reason, step)
    least = asked[0]
    if least is None:
        reason = f"more floors than the table has: {ENGINEER}"
        return None, Answer(Verdict.NEEDS_JUDGEMENT, clause, "a share of the band", given, reason, "have the line designed")
    figures = {"limit": Measured("f_p", least), "provided": Measured("f_p", share)}
    said = f"{least:.0%} of the band at least"
    if share < least - NOISE:
        step = "add panels; a further interior band may lower 40 to 25 % (9.23.13.7)" if least == 0.40 else "add panels"
        return least, Answer(Verdict.DOES_NOT_MEET, clause, said, given, "the panels are too short together", step, **figures)
    if doubtful:
        return least, Answer(Verdict.NEEDS_JUDGEMENT, clause, said, given, _JOINED, "show the crossing panel", **figures)
    return least, Answer(Verdict.MEETS, clause, said, given, **figures)


_JOINED = "a short panel at the end of the line counts only where it joins a panel of the crossing band"


def _panel(known: Facts, tables: dict[str, Any], quake: float) -> Answer:
    found, beyond = by_table(known, tables["panels"], tables["panels"]["place"]), tables["not_over"]
    if known.grade in beyond["grades"] and quake > beyond["seismic"] + NOISE:
        reason = f"not where Sa(0.2) is over {beyond['seismic']:.2f}"
        return Answer(Verdict.DOES_NOT_MEET, beyond["place"], found.asked, found.given, reason, "take plywood or strand board")
    kinds = tables["kinds"]
    if known.grade in kinds["not_named"] and found.verdict is Verdict.MEETS:
        named = "strand board, plywood and diagonal lumber for bands 15 m apart or closer"
        reason = f"{kinds['place']} names {named}, not {known.grade}"
        step = "take plywood or strand board, or ask the authority"
        return Answer(Verdict.NEEDS_JUDGEMENT, kinds["place"], found.asked, found.given, reason, step)
    return found


def _fastening(known: Facts, tables: dict[str, Any], quake: float, wind: float) -> Answer:
    """Table B or C by the figures of the place; one-sided interior lines at half the edge spacing."""
    rows = tables["fasteners"]
    table = next(one for one in map(rows.get, "ABC") if quake <= one["seismic_at_most"] and wind < one["wind_below"])
    if (open_row := fasteners_of(known, table)) is not None:
        return open_row
    part = tables["interior"]["edge_part"] if known.line.interior else 1.0
    found = judge_fasteners(known, tables, row_for(known, table), table, part)
    if wind >= tables["overlap"]["wind_from"] and quake <= tables["overlap"]["seismic_at_most"]:
        found = _both_tables(known, tables, found, part)
    found = edges_supported(known, found, tables["edges"]["place"])
    over = quake > tables["blocking"]["seismic_over"] or (known.floors or 0) > 0 or known.line.construction != "light"
    settled = found.verdict not in (Verdict.MEETS, Verdict.NEEDS_JUDGEMENT)
    if known.inside or not over or settled or known.pins.blocked:
        return found
    asked = f"{found.asked}; edges blocked ({tables['blocking']['place']})"
    verdict = Verdict.NEEDS_EVIDENCE if known.pins.blocked is None else Verdict.DOES_NOT_MEET
    reason = "edges are not stated to be blocked"
    return Answer(verdict, found.clause, asked, found.given, reason, "block every edge and state it")


def _both_tables(known: Facts, tables: dict[str, Any], found: Answer, part: float) -> Answer:
    """Where two sentences hold by their letter what only the milder one takes is a question."""
    strict, place = tables["fasteners"]["C"], tables["overlap"]["place"]
    edge = strict["edge"] * part
    if found.verdict not in (Verdict.MEETS, Verdict.NEEDS_JUDGEMENT):
        return found
    if known.pins.kind in strict["rows"][0] and known.edge * 1000 <= edge + NOISE:
        return found
    reason = f"{place} as printed both hold here; {strict['place']} asks {known.size(edge)} along edges and names no staples"
    step = f"nail the edges at {known.size(edge)}, or ask the authority which of the two tables holds"
    return Answer(Verdict.NEEDS_JUDGEMENT, found.clause, found.asked, found.given, reason, step)


def _layout(known: Facts, bands: dict[str, Any], quake: float, wind: float, counted: list, doubtful: bool) -> Answer:
    """Distance of the lines, clear distance between panels, distance from the ends, height of the panels."""
    apart, long = _spacing(bands, quake, wind), bands["gap_of_long_panels"]
    relaxed = bool(counted) and all(size * 1000 >= long["panels_from"] - NOISE for _, size in counted)
    gap = (long["gap"] if relaxed else bands["gap"]) / 1000
    closer = ", or show that an interior band relaxes it (9.23.13.7)"
    found = measured(known, counted, apart, gap, bands["end"] / 1000, bands["place"], closer)
    found = replace(found, asked=f"{found.asked}; {bands['not_judged']}")
    if found.verdict is not Verdict.MEETS:
        return found
    if doubtful:
        return replace(found, verdict=Verdict.NEEDS_JUDGEMENT, reason=_JOINED, next_step="show the crossing panel")
    return _wide(known, bands, counted, found)


def _wide(known: Facts, bands: dict[str, Any], counted: list, found: Answer) -> Answer:
    """A gap that long panels allow, where they stand through the whole height: known of a building of one storey alone."""
    long, places = bands["gap_of_long_panels"], gaps_and_ends(known, counted)
    if places is None or places[0] * 1000 <= bands["gap"] + NOISE or one_storey(known):
        return found
    said = f"{known.long(bands['gap'] / 1000)} is passed; {long['place']} takes up to {known.long(long['gap'] / 1000)}"
    reason = f"{said} where panels of {known.long(long['panels_from'] / 1000)} stand through the whole height of the building"
    if one_storey(known) is None:
        return replace(found, verdict=Verdict.NEEDS_EVIDENCE, reason=reason, next_step="state building.storeys")
    step = "show the panels of the other storeys, or close the gap"
    return replace(found, verdict=Verdict.NEEDS_JUDGEMENT, reason=reason, next_step=step)


def _spacing(bands: dict[str, Any], quake: float, wind: float) -> float:
    rows = bands["rows"]
    fits = (r for r in rows if quake < r.get("seismic_below", 99) and wind < r.get("wind_below", 1e9))
    return next(fits)["spacing"] / 1000
