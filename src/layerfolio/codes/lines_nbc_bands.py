"""A line of bracing as a braced wall band (9.23.13.4 to 9.23.13.7): share, places, panels, nails, the tie of the plate."""

from typing import Any

from layerfolio.codes.findings import Measured, Verdict
from layerfolio.codes.line_facts import NOISE, Facts, named
from layerfolio.codes.line_fasteners import SHORT, common_diameter, judge_fasteners
from layerfolio.codes.line_layout import measured
from layerfolio.codes.line_types import ENGINEER, FACE, FASTENING, LAYOUT, LENGTH, PANEL, TIE, Answer, LineJudged
from layerfolio.codes.lines_nbc import by_table, edges_supported, face_answer, row_for


def judge_bands(known: Facts, tables: dict[str, Any], quake: float, wind: float, given: str) -> LineJudged:
    """Every question of the path, on the panels that are long enough to count."""
    place, bands = tables["high"]["place"], tables["bands"]
    counted, doubtful = _counted(known, bands)
    share = sum(size for _, size in counted) / known.study.length
    asked = "wood panels in bands: interior panel-type finish, 9.23.13.6.(1)(c), or sheathing, (b)"
    required, answer = _share(known, bands, share, doubtful)
    answers = {
        FACE: face_answer(known, "9.23.13.6.(1)", asked, given), LENGTH: answer, PANEL: _panel(known, tables, quake),
        FASTENING: _fastening(known, tables, quake, wind), LAYOUT: _layout(known, bands, quake, wind, counted, doubtful),
    }  # fmt: skip
    if known.inside:
        answers[TIE] = _tie(known, tables)
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
    return found


def _fastening(known: Facts, tables: dict[str, Any], quake: float, wind: float) -> Answer:
    """Table B or C by the figures of the place; one-sided interior lines at half the edge spacing."""
    rows = tables["fasteners"]
    table = next(one for one in map(rows.get, "ABC") if quake <= one["seismic_at_most"] and wind < one["wind_below"])
    part = tables["interior"]["edge_part"] if known.line.interior else 1.0
    found = judge_fasteners(known, tables, row_for(known, table), table, part)
    found = edges_supported(known, found, "9.29.6.4, 9.29.9.4")
    over = quake > tables["blocking"]["seismic_over"] or (known.floors or 0) > 0 or known.line.construction != "light"
    if known.inside or not over or found.verdict is not Verdict.MEETS or known.pins.blocked:
        return found
    asked = f"{found.asked}; edges blocked ({tables['blocking']['place']})"
    verdict = Verdict.NEEDS_EVIDENCE if known.pins.blocked is None else Verdict.DOES_NOT_MEET
    reason = "edges are not stated to be blocked"
    return Answer(verdict, found.clause, asked, found.given, reason, "block every edge and state it")


def _layout(known: Facts, bands: dict[str, Any], quake: float, wind: float, counted: list, doubtful: bool) -> Answer:
    """Distance of the lines, clear distance between panels, distance from the ends, height of the panels."""
    apart, long = _spacing(bands, quake, wind), bands["gap_of_long_panels"]
    relaxed = bool(counted) and all(size * 1000 >= long["panels_from"] - NOISE for _, size in counted)
    gap = (long["gap"] if relaxed else bands["gap"]) / 1000
    closer = ", or show that an interior band relaxes it (9.23.13.7)"
    found = measured(known, counted, apart, gap, bands["end"] / 1000, bands["place"], closer)
    if doubtful and found.verdict is Verdict.MEETS:
        return Answer(Verdict.NEEDS_JUDGEMENT, found.clause, found.asked, found.given, _JOINED, "show the crossing panel")
    return found


def _spacing(bands: dict[str, Any], quake: float, wind: float) -> float:
    rows = bands["rows"]
    fits = (r for r in rows if quake < r.get("seismic_below", 99) and wind < r.get("wind_below", 1e9))
    return next(fits)["spacing"] / 1000


def _tie(known: Facts, tables: dict[str, Any]) -> Answer:
    """With the panel inside the sheathing's lap over the floor is missing: nails of the bottom plate take its place."""
    plates, stated = tables["plates"], known.line.plate_nailing
    asked = f"bottom plate of braced panels: nails of {known.size(plates['nail'])} at {known.size(plates['spacing'])}"
    if stated is None or stated.nail is None or stated.spacing is None:
        reason = "the panel inside does not lap over the floor, and the nails of the bottom plate are not stated"
        return Answer(Verdict.NEEDS_EVIDENCE, plates["place"], asked, "not stated", reason,
                      "state plate_nailing: nail and spacing, or have straps designed")  # fmt: skip
    nail = stated.nail
    said = f"nails {known.as_stated(nail.length)} × {known.as_stated(nail.diameter)}"
    given = f"{said} at {known.as_stated(stated.spacing)}"
    short = nail.length.value * 1000 < plates["nail"] - 0.5
    thin = nail.diameter.value * 1000 < common_diameter(tables, nail.length.value) * (1 - SHORT)
    if short or thin or named(stated.spacing) * 1000 > plates["spacing"] + NOISE:
        reason = "too short, too thin or too far apart"
        return Answer(Verdict.DOES_NOT_MEET, plates["place"], asked, given, reason, "nail the plate by the table")
    return Answer(Verdict.MEETS, plates["place"], asked, given)
