"""A line of bracing under the national Canadian code: which path is open, and what its paths ask alike of panels."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import NOISE, Facts, seismic
from layerfolio.codes.line_fasteners import fasteners_given
from layerfolio.codes.line_floors import floors_given, floors_open, too_many
from layerfolio.codes.line_open import panel_open, place_open
from layerfolio.codes.line_types import ENGINEER, FACE, Answer, LineJudged
from layerfolio.codes.naming import called
from layerfolio.codes.site_figures import pressure
from layerfolio.codes.wording import listed

NOT_CARRIED = ("gypsum board", "fibreboard", "particleboard", "boards", "diagonal lumber", "plywood siding")
"""Grades whose rows are not carried: the tables here are those of plywood, strand board and waferboard."""
STUDS = (0.400, 0.600)
"""Greatest spacings of studs that the tables name, m."""


def judge_nbc(known: Facts, tables: dict[str, Any]) -> LineJudged:
    """The line on the path that the figures of the place open; nothing else is judged while one of them is missing."""
    wind, quake = known.about.wind_pressure, seismic(known.about, "Sa02")
    given = figures_given(known, wind, quake)
    figures = {"wind_pressure_1_50": wind, "seismic.Sa02": quake}
    if (found := place_open(known, "wind and earthquake figures of the place", given, figures)) is not None:
        return found
    low, high = tables["low"], tables["high"]
    if quake <= low["seismic_at_most"] and wind < low["wind_below"]:
        from layerfolio.codes.lines_nbc_low import judge_low

        return judge_low(known, tables, given)
    if quake <= high["seismic_at_most"] and wind < high["wind_below"]:
        return _high(known, tables, quake, wind, given)
    return _beyond(known, tables, given, "the figures of the place are beyond the bands")


def figures_given(known: Facts, wind: float | None, quake: float | None) -> str:
    """Wind and earthquake figures in words, with the face of the panel."""
    face = {True: "panel on the inner face of the studs", False: "panel on the outer face of the studs", None: "face not known"}
    said = [
        "wind pressure not given" if wind is None else f"wind pressure {pressure(wind, known.customary)}",
        "Sa(0.2) not given" if quake is None else f"Sa(0.2) {quake:g}", face[known.inside],
    ]  # fmt: skip
    return "; ".join(said)


def _beyond(known: Facts, tables: dict[str, Any], given: str, reason: str) -> LineJudged:
    place, high = tables["extreme"]["place"], tables["high"]
    limits = f"Sa(0.2) up to {high['seismic_at_most']:g}, wind pressure below {pressure(high['wind_below'], known.customary)}"
    carried = "on the lowest frame wall two floors of light construction, one of heavy"
    floors = f"where Sa(0.2) is over {tables['low']['seismic_at_most']:.2f} {carried}"
    answer = Answer(
        Verdict.NEEDS_JUDGEMENT, place, f"{limits}; {floors}", given, f"{reason}: {ENGINEER}",
        "have the line designed by Part 4 or an engineering guide",
    )  # fmt: skip
    return LineJudged(known.study.name, f"{place}: design by Part 4 or an engineering guide", {FACE: answer})


def face_answer(known: Facts, clause: str, asked: str, given: str) -> Answer:
    """Whether the path names panels on this face, and whether they lie on the studs."""
    if (answer := panel_open(known, clause, asked, given)) is not None:
        return answer
    if known.another:
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, known.another, "show the stamp of the panel")
    if known.grade in NOT_CARRIED:
        reason = f"{known.grade}: its rows are not judged here"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "ask the authority whether it counts as bracing")
    if known.inside and (before := _before(known)):
        reason = f"a finish is what the room sees, and before the panel there is {before}; no ruling on that is known here"
        step = f"ask the authority: does the panel count as an interior panel-type finish by 9.29 behind {before}?"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, step)
    return Answer(Verdict.MEETS, clause, asked, given)


def _before(known: Facts) -> str:
    """What lies on the room side of a panel inside, in words; membranes and coats without thickness are left out."""
    layers = known.assembly.layers if known.assembly and known.panel else ()
    return listed([called(one) for one in layers if one.number > known.panel.number and one.thickness is not None])


def column(known: Facts) -> int | None:
    """0 for studs up to 400 mm, 1 up to 600 mm; None beyond, or while the spacing is not known."""
    if known.studs is None:
        return None
    return next((n for n, apart in enumerate(STUDS) if known.studs <= apart + 1e-4), None)


def panel_given(known: Facts) -> str:
    """Grade, thickness and studs in words."""
    thick = known.size(known.thickness * 1000) if known.thickness else "thickness not stated"
    apart = f"studs at {known.size(known.studs * 1000)}" if known.studs else "stud spacing not stated"
    return f"{known.grade or 'grade not stated'}, {thick}, {apart}"


def lacking(known: Facts, clause: str, asked: str) -> Answer | None:
    """Evidence that is missing before a panel can be looked up."""
    need = [word for word, there in (
        ("grade of the stamp (panel.grade)", known.grade), ("thickness of the panel", known.thickness),
        ("spacing of the studs (framing.spacing)", known.studs),
    ) if not there]  # fmt: skip
    if need:
        step = f"supply the {', the '.join(need)}"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, panel_given(known), f"not stated: {', '.join(need)}", step)
    return None


def by_table(known: Facts, table: dict[str, Any], clause: str) -> Answer:
    """A panel against a table of least thicknesses for studs up to 400 and 600 mm."""
    if missing := lacking(known, clause, "a grade and thickness of the table"):
        return missing
    row, number, given = table.get(known.grade), column(known), panel_given(known)
    if row is None or number is None:
        reason = "the table has no row for this panel" if row is None else "the studs stand farther apart than the table goes"
        asked = f"a grade of {clause}, studs at {known.size(600)} at most"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "ask the authority, or an engineer")
    least = row[number]
    if least is None:
        reason = f"{known.grade} is for studs at {known.size(400)}"
        step = "take a panel marked for the studs"
        asked = f"a mark for studs at {known.size(600)}"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, step)
    asked = f"{f'{known.size(least)} at least' if least else 'a mark'} for studs at {known.size(STUDS[number] * 1000)}"
    if known.thickness * 1000 < least - NOISE:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "the panel is too thin", "take a thicker panel")
    return Answer(Verdict.MEETS, clause, asked, given)


def fasteners_of(known: Facts, table: dict[str, Any]) -> Answer | None:
    """The answer on the nails of a panel whose grade has no row here, or is not stated; None where its row is carried."""
    clause, asked, given = table["place"], "the fasteners of the panel's own row", fasteners_given(known)
    if not known.grade:
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "not stated: panel.grade", "state panel.grade")
    if known.grade in NOT_CARRIED:
        reason = f"{known.grade}: its rows are not judged here, and those of wood panels do not speak of it"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "ask the authority which fasteners it takes")
    return None


def row_for(known: Facts, table: dict[str, Any]) -> dict[str, Any] | None:
    """The row of a fastener table for the panel's thickness."""
    thick = known.thickness
    return next((row for row in table["rows"] if thick is not None and thick * 1000 <= row["up_to"] + NOISE), None)


def edges_supported(known: Facts, found: Answer, clause: str) -> Answer:
    """All edges of a panel-type finish lie on framing or blocking."""
    if found.verdict not in (Verdict.MEETS, Verdict.NEEDS_JUDGEMENT) or not known.inside:
        return found
    blocked, asked = known.pins.blocked, f"{found.asked}; all edges on framing or blocking ({clause})"
    if blocked:
        return Answer(found.verdict, found.clause, asked, f"{found.given}, edges blocked", found.reason, found.next_step)
    if blocked is None:
        reason, step = "whether all edges are supported is not stated", "state panel_fastening.blocked"
        return Answer(Verdict.NEEDS_EVIDENCE, found.clause, asked, found.given, reason, step)
    return Answer(Verdict.DOES_NOT_MEET, found.clause, asked, f"{found.given}, edges not blocked",
                  "edges of the panel are not supported", "block every edge")  # fmt: skip


def _high(known: Facts, tables: dict[str, Any], quake: float, wind: float, given: str) -> LineJudged:
    """Bands, unless the building has more floors than the article takes where the earthquake is strong."""
    from layerfolio.codes.lines_nbc_bands import judge_bands

    high = tables["high"]
    if quake <= tables["low"]["seismic_at_most"]:
        by = f"{given}; no article names this wind with this earthquake: bands by the heading of {high['by_the_table']}"
        return judge_bands(known, tables, quake, wind, by)
    if reason := too_many(known, high["floors"]):
        return _beyond(known, tables, given, reason)
    if (found := floors_open(known, high["floors"], high["place"], given)) is not None:
        return found
    return judge_bands(known, tables, quake, wind, f"{given}; {floors_given(known)}")
