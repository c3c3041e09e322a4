"""Length of bracing that the American code asks of a line, by wind and by earthquake, against the panels that count."""

from dataclasses import replace
from typing import Any

from layerfolio.codes.findings import Measured, Verdict
from layerfolio.codes.line_facts import FOOT, Facts, up_to
from layerfolio.codes.line_types import ENGINEER, Answer
from layerfolio.codes.lines_irc_closed import DESIGNED, gypsum_left_out, ruled_out
from layerfolio.codes.lines_irc_panels import noun
from layerfolio.codes.lines_irc_place import category, speed, storey_height, townhouse
from layerfolio.codes.lines_irc_wind import blocked, board_opposite, gypsum_layer, wind_length
from layerfolio.formulas import bracing as f
from layerfolio.steps.trace import Recorder, Trace

CLASH = (
    "Is gypsum board asked opposite the bracing, as R602.10.4.3 says, or on the inside face, as the rows of factors say? With "
    "the panel inside the two differ; the factor is taken"
)


def length_answer(
    known: Facts, tables: dict[str, Any], method: str, counted: list
) -> tuple[Answer, float | None, float, Trace]:
    """The answer with the length asked and that provided, m, and the steps."""
    record = Recorder()
    provided = sum(one[2] for one in counted)
    wind, need, safe = wind_length(known, tables, method, record)
    quake, step = _earthquake(known, tables, method, record) if not need else (None, "")
    clause = f"{tables['wind']['place']}, {tables['wind_factors']['place']}"
    given = f"{provided / FOOT:.2f} ft ({provided:.2f} m) of {noun(method)} that count"
    if need:
        answer = _not_found(known, tables, method, need, (clause, given))
        return replace(answer, provided=Measured("L_p", provided)), None, provided, record.done()
    required = max(wind, quake or 0.0)
    answer = _compared(known, tables, method, (required, provided, safe), (clause, given, step), quake)
    return answer, required, provided, record.done()


def _not_found(known: Facts, tables: dict[str, Any], method: str, need: str, words: tuple[str, str]) -> Answer:
    """No length is found: a figure is missing, a table ends, or the method is not open to the line."""
    asked, (clause, given) = f"length by wind, method {method}", words
    against = ruled_out(known, tables, method)
    settled = [one for one in against if "studs" not in one]  # the studs are a question of their own
    if settled:
        step = f"have the line {DESIGNED}"
        if gypsum_left_out(known, method):
            clause = "R602.10.4.3"
            step += ", or show gypsum board or an accepted finish of equal shear in its plane"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "; ".join(settled), step)
    if need.startswith(("state", "supply")):
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, "the length is not found", need)
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, need, f"have the line {DESIGNED}")


def _compared(
    known: Facts, tables: dict[str, Any], method: str, figures: tuple, words: tuple[str, str, str], quake: float | None
) -> Answer:
    required, provided, safe = figures
    clause, given, step = words
    cause = "wind" if quake is None else "wind and earthquake"
    asked = f"{required / FOOT:.2f} ft ({required:.2f} m) by {cause}, method {method}"
    measured = {"limit": Measured("L_r", required), "provided": Measured("L_p", provided)}
    if provided < required - 1e-6:
        short, step = f"the {noun(method)} are too short together", f"add {noun(method)}"
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, short, step, **measured)
    reason = step or _doubts(known, tables, method, provided, safe)
    if reason:
        verdict = Verdict.NEEDS_EVIDENCE if reason.startswith("state") else Verdict.NEEDS_JUDGEMENT
        said = f"the {noun(method)} are long enough by what is counted; something about it is open"
        return Answer(verdict, clause, asked, given, said, reason, **measured)
    return Answer(Verdict.MEETS, clause, asked, given, **measured)


def _doubts(known: Facts, tables: dict[str, Any], method: str, provided: float, safe: float) -> str:
    """What keeps a long enough line from meeting: in words that go to the authority or the project file."""
    if method in tables["wind_factors"]["blocking"]["methods"] and blocked(known) is None:
        return "state panel_fastening.blocked"
    if provided < safe - 1e-6:
        return "state the height of the storey: with 16 in of floor framing over the wall the factor for height would ask more"
    if known.line.gypsum_opposite and method in tables["wind_factors"]["gypsum"]["methods"] and not board_opposite(known):
        return f"gypsum board opposite is stated and no layer on the studs of the wall shows it. {CLASH}"
    if method == "LIB" and not gypsum_layer(known):
        return "show the gypsum board opposite: it is stated and no layer on the studs of the wall is one"
    if speed(known) > tables["ends"]["region_from"] + 1e-3:
        return "look up whether the site lies in the region that needs a wind design (R301.2.1.1)"
    return ""


def _earthquake(known: Facts, tables: dict[str, Any], method: str, record: Recorder) -> tuple[float | None, str]:
    """Length by earthquake where its table holds, and what stays open there; (None, "") where wind alone is asked."""
    rows, found = tables["ends"]["categories"], category(known)
    if found in rows["none"]:
        return None, ""
    if found in rows["detached_none"]:
        if townhouse(known.about) is False:
            return None, ""
        if townhouse(known.about) is None:
            return None, "state building.townhouse: in category C the length by earthquake is asked of townhouses too"
    table = tables["seismic"]
    group = next((name for name, methods in table["groups"].items() if method in methods), "")
    row = table[found].get(group, [None] * 3)[known.floors] if group else None
    if row is None:
        return None, f"method {method} is not permitted in category {found} with this load: {ENGINEER}"
    length = _by_line(row, table["lengths"], known.study.length / FOOT)
    factors = _factors(known, tables, method, found)
    if length is None or None in factors.values():
        return None, f"the line is longer, taller or farther from the next than the table of earthquake goes: {ENGINEER}"
    record.section("Length by earthquake", key="earthquake", source=f"{tables['source']}, {table['place']}")
    asked = record.step(f.length_by_earthquake, L_t=length * FOOT, **factors)
    return asked, (
        "show the weights: walls from over 8 to below 15 psf, roof and ceiling up to 15 psf, floors up to 10 psf; exactly 8 and "
        "exactly 15 psf of wall belong to no row as printed"
    )


def _by_line(row: list[float], lengths: list[float], feet: float) -> float | None:
    """The table's length at a line of so many feet; shorter lines as the first row."""
    if feet > lengths[-1] + 1e-6:
        return None
    return between(row, lengths, feet)


def between(row: list[float], at: list[float], feet: float) -> float:
    """Straight between two columns; below the first as the first."""
    if feet <= at[0]:
        return row[0]
    n = next(i for i, one in enumerate(at) if feet <= one + 1e-9)
    return row[n - 1] + (row[n] - row[n - 1]) * (feet - at[n - 1]) / (at[n] - at[n - 1])


def _factors(known: Facts, tables: dict[str, Any], method: str, found: str) -> dict[str, float | None]:
    rows = tables["seismic_factors"]
    spacing = known.line.line_spacing.value / FOOT if known.line.line_spacing else 0.0
    omitted = method in rows["gypsum"]["methods"] and not (known.line.gypsum_opposite and board_opposite(known))
    unblocked = method in rows["blocking"]["methods"] and blocked(known) is False
    return {
        "k_h": up_to(rows["height"], storey_height(known) or known.study.height / FOOT),
        "k_s": up_to(rows["spacing"][found[0]], spacing),
        "k_w": rows["wall"]["heavy"], "k_r": rows["roof"]["light"], "k_g": rows["gypsum"]["factor"] if omitted else 1.0,
        "k_b": rows["blocking"]["factor"] if unblocked else 1.0,
    }  # fmt: skip

