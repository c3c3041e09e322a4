"""A line of bracing under British Columbia's own system. No line *meets* here: the lengths by earthquake are not carried."""

from dataclasses import replace
from typing import Any

from layerfolio.codes.findings import Measured, Verdict
from layerfolio.codes.line_facts import NOISE, Facts, seismic
from layerfolio.codes.line_fasteners import fasteners_given, long_enough
from layerfolio.codes.line_floors import lowest_wall
from layerfolio.codes.line_open import panel_open, place_open
from layerfolio.codes.line_types import ENGINEER, FACE, FASTENING, LAYOUT, LENGTH, PANEL, Answer, LineJudged
from layerfolio.codes.lines_bc_boards import board_of_type, nails_of_board, no_type
from layerfolio.codes.lines_bc_length import band_forces, required_length
from layerfolio.codes.site_figures import pressure
from layerfolio.steps.trace import Trace

ROUTE = "a design by Part 4 or an engineering guide, or an alternative solution"


def judge_bc(known: Facts, tables: dict[str, Any]) -> LineJudged:
    """The line on the path that Smax and wind open; nothing else is judged while one of them is missing."""
    wind, smax = known.about.wind_pressure, seismic(known.about, "Smax")
    low, main = tables["low"], tables["main"]
    given = _given(known, wind, smax)
    figures = {"wind_pressure_1_50": wind, "seismic.Smax": smax}
    if (found := place_open(known, "wind pressure and Smax of the place", given, figures)) is not None:
        return found
    if smax > main["smax_at_most"] or wind > main["wind_at_most"] or known.study.height * 1000 > main["height"] + NOISE:
        return _beyond(known, main, given)
    is_low = smax <= low["smax_at_most"] and wind <= low["wind_at_most"] and lowest_wall(known).floors <= low["floors"]
    place = (low if is_low else main)["place"]
    return _judged(known, tables, f"{place}: braced wall panels (9.23.13.4 to 9.23.13.7)", wind, given)


def _given(known: Facts, wind: float | None, smax: float | None) -> str:
    face = {True: "panel on the inner face of the studs", False: "panel on the outer face of the studs", None: "face not known"}
    said = "wind pressure not given" if wind is None else f"wind pressure {pressure(wind, known.customary)}"
    return f"{said}; Smax {'not given' if smax is None else f'{smax:g}'}; {face[known.inside]}"


def _beyond(known: Facts, main: dict[str, Any], given: str) -> LineJudged:
    asked = (
        f"Smax up to {main['smax_at_most']:g}, wind pressure up to {pressure(main['wind_at_most'], known.customary)}, "
        f"panels up to {known.long(main['height'] / 1000)} high"
    )
    answer = Answer(Verdict.NEEDS_JUDGEMENT, main["place"], asked, given, f"beyond the limits of the method: {ENGINEER}",
                    "have the line designed by Part 4 or an engineering guide")  # fmt: skip
    return LineJudged(known.study.name, "beyond 9.23.13.2: design by Part 4 or an engineering guide", {FACE: answer})


def _judged(known: Facts, tables: dict[str, Any], path: str, wind: float, given: str) -> LineJudged:
    row, fastening = _type(known, tables)
    counted = _counted(known, tables)
    provided = sum(size for _, size in counted)
    length, trace, need = required_length(known, tables, row, wind)
    answers = {FACE: _face(known, tables, given, wind), PANEL: _panel(known, tables, row), FASTENING: fastening}
    answers[LENGTH] = _length(known, tables, row, length, provided, need)
    answers[LAYOUT] = _layout(known, tables, counted)
    if known.inside:
        trace = Trace((*trace.entries, *band_forces(known, tables, wind)[1].entries))
    return LineJudged(known.study.name, path, answers, length, provided, "m", trace)


def _face(known: Facts, tables: dict[str, Any], given: str, wind: float) -> Answer:
    """Wood on the outer face with gypsum board inside, or gypsum board alone: a wood panel inside is neither."""
    clause = tables["face"]["place"]
    asked = "wood panels on the outer face with gypsum board on the inner one, or gypsum board alone"
    if (answer := panel_open(known, clause, asked, given)) is not None:
        return answer
    if known.inside and known.grade != "gypsum board":
        reason = "a wood panel on the inner face is not among what the clause names, so the line does not meet it literally"
        step = f"take {ROUTE}; what the equivalent has to show: {band_forces(known, tables, wind)[0]}"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, step)
    if known.another:
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, known.another, "show the stamp of the panel")
    if known.line.gypsum_opposite is not True and known.grade != "gypsum board":
        reason = "gypsum board on the inner face is not stated"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, reason, "state gypsum_opposite")
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, "the face fits; the length by earthquake is not carried here",
                  "have the length by earthquake found from the code's own table")  # fmt: skip


def _type(known: Facts, tables: dict[str, Any]) -> tuple[dict[str, Any] | None, Answer]:
    """The strongest framing type that panel, studs and nails fill, and the answer on its fasteners."""
    types, pins = tables["types"], known.pins
    if (found := nails_of_board(known, types)) is not None:
        return None, found
    clause, given = types["place"], fasteners_given(known)
    least, most = (known.size(one) for one in types["rows"][-1]["nail"][::-1])
    asked = (
        f"nails of a framing type: {least} × {most} or more, at {known.size(150)} or closer along edges and {known.size(300)} "
        "between; screws are not permitted with wood panels"
    )
    if pins is None or not pins.kind or known.edge is None or known.field is None:
        return None, Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "fasteners are not stated", "state panel_fastening")
    if pins.kind != "nail":
        reason = f"{pins.kind}s are not permitted with wood panels" if pins.kind == "screw" else "the types name nails"
        return None, Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "use the nails of a framing type")
    found = next((row for row in types["rows"] if _fills(known, types, row)), None)
    if found is None:
        reason = "no framing type has panel, studs and nails like these; nails of a lining give no resistance"
        return None, Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "fit panel, studs and nails to a framing type")
    said = f"{given}: {found['name']}"
    return found, Answer(Verdict.MEETS if known.inside is False else Verdict.NEEDS_JUDGEMENT, clause, asked, said,
                         "" if known.inside is False else "the type is for a panel on the outer face: information",
                         "" if known.inside is False else f"take {ROUTE}")  # fmt: skip


def _fills(known: Facts, types: dict[str, Any], row: dict[str, Any]) -> bool:
    if known.thickness is None or known.studs is None:
        return False
    thick, long = row["nail"]
    return (
        known.thickness * 1000 >= row["thickness"] - NOISE and known.studs * 1000 <= row["studs"] + NOISE
        and known.edge * 1000 <= row["edge"] + NOISE and known.field * 1000 <= types["field"] + NOISE
        and known.pins.shank.diameter.value * 1000 >= thick - NOISE and long_enough(known, long / 1000)
        and (known.pins.blocked is True or not row["blocked"])
    )  # fmt: skip


def _panel(known: Facts, tables: dict[str, Any], row: dict[str, Any] | None) -> Answer:
    from layerfolio.codes.lines_nbc import lacking, panel_given

    clause = tables["types"]["place"]
    mm = known.size
    asked = f"{mm(9.5)} for studs at {mm(400)}; {mm(11)} with edges blocked for studs at {mm(600)}"
    missing = lacking(known, clause, asked) or board_of_type(known, tables["types"])
    if missing:
        return missing
    thick, studs = known.thickness * 1000, known.studs * 1000
    fits = (thick >= 11 - NOISE and studs <= 600 + NOISE) or (thick >= 9.5 - NOISE and studs <= 400 + NOISE)
    if not fits:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, panel_given(known), "too thin for the studs", "take a thicker panel")
    verdict = Verdict.MEETS if known.inside is False else Verdict.NEEDS_JUDGEMENT
    reason = "" if known.inside is False else "the type is for a panel on the outer face: information"
    return Answer(verdict, clause, asked, panel_given(known), reason, "" if known.inside is False else f"take {ROUTE}")


def _counted(known: Facts, tables: dict[str, Any]) -> list[tuple[float, float]]:
    bands = tables["bands"]
    least = bands["gypsum"] if known.grade in ("gypsum board", "diagonal lumber") else bands["elsewhere"]
    return [one for one in known.study.panels if one[1] * 1000 >= least - NOISE]


def _length(
    known: Facts, tables: dict[str, Any], row: dict[str, Any] | None, length: float | None, provided: float, need: str
) -> Answer:
    clause, other = tables["wind"]["place"], no_type(known, tables["types"])
    given = f"{known.long(provided)} of panels long enough to count"
    figures = {"limit": Measured("L_r", length) if length else None, "provided": Measured("L_p", provided)}
    if length is None and other:
        step = "have the length found from the code's own table, or the line designed"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, "a length by wind, by its own type", given, other, step, **figures)
    if length is None:
        verdict = Verdict.NEEDS_EVIDENCE if "state" in need or "supply" in need else Verdict.NEEDS_JUDGEMENT
        return Answer(verdict, clause, "a length by wind, with every factor", given, "the length is not found", need, **figures)
    asked = f"{known.long(round(length, 3))} by wind, as {row['name']}"
    if provided < length - NOISE and known.inside is False:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "the panels are too short together", "add panels", **figures)
    short = "; the panels are shorter than that" if provided < length - NOISE else ""
    reason = f"information: {'a panel inside has no length of this table' if known.inside else 'by wind alone'}{short}"
    step = f"take {ROUTE}" if known.inside else "have the length by earthquake found from the code's own table; the greater holds"
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, step, **figures)


def _layout(known: Facts, tables: dict[str, Any], counted: list[tuple[float, float]]) -> Answer:
    """Distance of bands, gaps and ends; what is too far does not meet, all else is information while the face is open."""
    from layerfolio.codes.line_layout import measured

    bands = tables["bands"]
    found = measured(known, counted, bands["spacing"] / 1000, bands["gap"] / 1000, bands["end"] / 1000, bands["place"])
    found = replace(found, asked=f"{found.asked}; {bands['not_judged']}")
    if found.verdict is Verdict.MEETS and known.inside:
        return Answer(Verdict.NEEDS_JUDGEMENT, found.clause, found.asked, found.given, "the places fit; the face does not",
                      f"take {ROUTE}")  # fmt: skip
    return found
