"""A line of bracing under the American code: where the method ends, what the panel is, how its nails compare."""

from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import FOOT, INCH, MPH, NOISE, Facts, seismic
from layerfolio.codes.line_fasteners import fasteners_given
from layerfolio.codes.line_open import panel_open
from layerfolio.codes.line_types import ENGINEER, FACE, FASTENING, LAYOUT, LENGTH, PANEL, Answer, LineJudged
from layerfolio.codes.lines_irc_closed import DESIGNED, LET_IN, closed, ruled_out
from layerfolio.codes.lines_irc_length import length_answer
from layerfolio.codes.lines_irc_panels import counted_panels, layout_answer

WOOD = ("sheathing", "structural I", "plywood", "OSB O-1", "OSB O-2", "CSA O325 W16", "CSA O325 W20", "CSA O325 W24")
CARRIED = ("WSP", "CS-WSP", "GB", "LIB", "DWB", "SFB", "PBS")
"""Methods whose rows are carried; of LIB and DWB the fasteners were not read."""
NEAR = 1.001
SLACK = 1.2e-4
"""Metres: 11 mm is sold as 7/16 in, 9.5 mm as 3/8 in, a tenth of a millimetre short."""


def judge_irc(known: Facts, tables: dict[str, Any]) -> LineJudged:
    """Every question where the figures of the place are within the method; else the path alone."""
    given = _given(known)
    need = _missing(known)
    clause = tables["ends"]["place"]
    if need:
        reason = "a figure of the place or the building is missing: which tables hold is not judged"
        answer = Answer(Verdict.NEEDS_EVIDENCE, clause, "wind speed, exposure, seismic category, storeys", given, reason,
                        f"supply {', '.join(need)}")  # fmt: skip
        return LineJudged(known.study.name, "open: a figure is missing", {FACE: answer})
    beyond = _beyond(known, tables)
    if beyond:
        answer = Answer(Verdict.NEEDS_JUDGEMENT, clause, "the limits of the method", given, f"{beyond}: {ENGINEER}",
                        "have the part that is beyond it designed (R301.1.3)")  # fmt: skip
        return LineJudged(known.study.name, f"beyond the method: {beyond}", {FACE: answer})
    method = _method(known)
    answers = {FACE: _face(known, tables, method, given)}
    if method not in CARRIED:
        return LineJudged(known.study.name, f"R602.10, method {method or 'not known'}", answers)
    counted, words = counted_panels(known, tables, method)
    length, required, provided, trace = length_answer(known, tables, method, counted)
    answers |= {LENGTH: length, PANEL: _panel(known, tables, method), FASTENING: _fastening(known, tables, method)}
    answers[LAYOUT] = layout_answer(known, tables, method, counted, words)
    against = ruled_out(known, tables, method)
    path = f"R602.10, method {method}" + (", not open to this line" if against else "")
    return LineJudged(known.study.name, path, closed(answers, method, against), required, provided, "m", trace)


def exposure(known: Facts) -> str:
    """The exposure category by its letter; empty where the project does not give one."""
    found = str(known.about.answer("site_loads.exposure") or "").strip().upper().removeprefix("EXPOSURE").strip()
    return found if found in ("B", "C", "D") else ""


def speed(known: Facts) -> float | None:
    """Basic (ultimate) wind speed, mph."""
    found = known.about.answer("site_loads.wind_speed")
    return found.value / MPH if found else None


def category(known: Facts) -> str:
    return str(seismic(known.about, "category") or "").strip().upper()


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


def _beyond(known: Facts, tables: dict[str, Any]) -> str:
    """Which limit of the method is passed; empty within all of them."""
    ends, found = tables["ends"], category(known)
    rows = ends["categories"]
    if speed(known) >= ends["speed_below"] - 1e-3:
        return f"wind of {ends['speed_below']} mph or more"
    if found not in (*rows["none"], *rows["detached_none"], *rows["table"]):
        return f"seismic category {found}"
    if known.storeys > ends["storeys"] or known.floors > ends["floors"]:
        return f"more than {ends['storeys']} storeys"
    if known.study.height > ends["wall_height"] * FOOT + NOISE:
        return f"a wall over {ends['wall_height']} ft high"
    return ""


def _method(known: Facts) -> str:
    """The method as stated, else that of a wood panel."""
    return known.line.method or ("WSP" if known.grade in WOOD else "GB" if known.grade == "gypsum board" else "")


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
    if method in LET_IN:
        return Answer(Verdict.MEETS, clause, asked, said)
    if (answer := panel_open(known, clause, asked, said)) is not None:
        return answer
    if known.another:
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, said, known.another, "show the stamp of the panel")
    if known.inside and method == "CS-WSP":
        reason = "continuous sheathing is read for one side of the line; whether the inner side may be it is not said"
        return Answer(Verdict.NEEDS_JUDGEMENT, "R602.10.4.2", asked, said, reason, "ask the authority")
    asked += "; the row names exterior and interior sheathing, and no face is asked" if method == "WSP" else ""
    return Answer(Verdict.MEETS, clause, asked, said)


def _panel(known: Facts, tables: dict[str, Any], method: str) -> Answer:
    """Thickness of the method, and studs as the tables of the face have them."""
    row, clause = tables["methods"].get(method), tables["methods"]["place"]
    thick = f"{known.thickness / INCH:.4g} in" if known.thickness else "thickness not stated"
    apart = f"studs at {known.stud_spacing / INCH:.3g} in" if known.studs else "stud spacing not stated"
    given = f"{known.grade or 'grade not stated'}, {thick}, {apart}"
    if row is None or "thickness" not in row:
        return _let_in(known, row or {}, clause, method)
    asked = f"{row['thickness']:g} in at least"
    if known.thickness is None or known.studs is None or not known.grade:
        step = "supply thickness, panel.grade and framing.spacing"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "the panel is not fully stated", step)
    if method in ("WSP", "CS-WSP") and known.grade not in WOOD:
        step = "use wood structural panels"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, f"{known.grade} is no wood structural panel", step)
    if known.thickness < row["thickness"] * INCH - SLACK:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "the panel is too thin", "take a thicker panel")
    most = row.get("studs") or next(s for t, s in tables["inside"]["studs"] if known.thickness < t * INCH - SLACK or t > 1)
    asked = f"{asked}, studs at {most:g} in at most"
    if method != "GB" and known.stud_spacing > _most(most):
        reason = "the studs stand too far apart for the panel"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, reason, "take a thicker panel or closer studs")
    if known.grade.startswith(("CSA", "OSB O")):
        reason = "a Canadian grade: whether its stamp is one that the code names is for the authority"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "show the stamp")
    return Answer(Verdict.MEETS, clause, asked, given)


def _let_in(known: Facts, row: dict[str, Any], clause: str, method: str) -> Answer:
    """Boards and straps: only the studs are stated in the project file."""
    apart = f"studs at {known.stud_spacing / INCH:.3g} in" if known.studs else "stud spacing not stated"
    most = row.get("studs")
    asked = f"the row of method {method}" + (f", studs at {most} in at most" if most else "")
    if most and known.studs and known.stud_spacing > _most(most):
        step = f"set the studs closer, or have the line {DESIGNED}"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, apart, "the studs stand too far apart", step)
    step = "show the boards or straps, their angle and their fixing"
    return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, apart, "their sizes and fixing are not stated here", step)


def _fastening(known: Facts, tables: dict[str, Any], method: str) -> Answer:
    """Nails of the face: interior sheathing by Table R602.3(1), exterior by Table R602.3(3)."""
    pins, row = known.pins, tables["methods"].get(method)
    clause = tables["inside"]["place"] if known.inside else tables["outside"]["place"]
    given = fasteners_given(known)
    if row is None or method not in ("WSP", "CS-WSP"):
        return _other(known, tables, method, given)
    nail, bite = _nail(known, tables)
    if nail is None:
        reason = "the tables have no row for this thickness and these studs at this wind"
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
        return next((nail for most, nail in tables["inside"]["rows"] if thick <= most * INCH + SLACK), None), 0.0
    number = "BCD".index(exposure(known))
    fits = [
        row for row in tables["outside"]["rows"]
        if thick >= row["thickness"] * INCH - SLACK and known.stud_spacing <= _most(row["studs"])
        and speed(known) <= row["speed"][number] + 1e-3
    ]  # fmt: skip
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
    if known.pins.edge.value > _most(row["edge"]) or known.pins.field.value > _most(row["field"]):
        return f"the nails stand farther apart than {row['edge']} and {row['field']} in"
    return ""


def _most(inches: float) -> float:
    """A greatest spacing in m, with the half millimetre that 610 mm stands over 24 in."""
    return inches * INCH * NEAR


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
