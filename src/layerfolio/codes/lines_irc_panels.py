"""Which panels of a line count under the American code, with what length, and whether they stand where they have to."""

from itertools import pairwise
from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import FOOT, INCH, NOISE, Facts
from layerfolio.codes.line_layout import gaps_and_ends
from layerfolio.codes.line_types import Answer
from layerfolio.codes.lines_irc_continuous import ENDS, is_continuous, least_beside_openings
from layerfolio.codes.lines_irc_place import category, townhouse
from layerfolio.codes.site_figures import length
from layerfolio.units.quantity import Quantity

SHORT = 1e-4  # m, what rounding of feet and inches may leave


def counted_panels(known: Facts, tables: dict[str, Any], method: str) -> tuple[list[tuple[float, float, float]], str]:
    """(start, length, length that counts) of each panel that counts, m; and what is open about them, in words."""
    rows = tables["panels"]
    least, words = least_length(known, tables, method)
    if least is None:
        return [], words or "the table has no length for a wall of this height"
    found = []
    for at, size in known.study.panels:
        counts = size if size >= least * INCH - SHORT else _partial(known, rows, method, size)
        if counts and method in rows["one_face"]["methods"]:
            counts *= rows["one_face"]["part"]  # panels on both faces are not stated apart
        if counts:
            found.append((at, size, counts))
    return found, words


def least_length(known: Facts, tables: dict[str, Any], method: str) -> tuple[float | None, str]:
    """The least length of a panel that counts whole, in; None, perhaps with what is open, where there is none."""
    rows = tables["panels"]
    column = _column(known, rows)
    if method == "CS-WSP":
        return least_beside_openings(known, rows)
    row = next((one for one in rows["rows"] if method in one["methods"]), None)
    return (row["least"][column] if row and column is not None else None), ""


def noun(method: str) -> str:
    """What the pieces of a method are called."""
    return "braces" if method == "LIB" else "panels"


def _column(known: Facts, rows: dict[str, Any]) -> int | None:
    """The first height of the table that reaches the wall's."""
    feet = known.study.height / FOOT
    return next((n for n, most in enumerate(rows["heights"]) if feet <= most + 1e-3), None)


def _partial(known: Facts, rows: dict[str, Any], method: str, size: float) -> float:
    """What a shorter panel counts: only in categories A to C, of walls up to 9 ft, between the rows in a straight line."""
    table, feet = rows["partial"], known.study.height / FOOT
    steps = table["rows"].get(8 if feet <= 8 + 1e-3 else 9 if feet <= 9 + 1e-3 else 0)
    if method not in table["methods"] or steps is None or category(known) not in ("A", "B", "C"):
        return 0.0
    inches = size / INCH
    for (low, less), (high, more) in pairwise(steps):
        if low - 1e-6 <= inches <= high:
            return (less + (more - less) * (inches - low) / (high - low)) * INCH
    return 0.0


def layout_answer(known: Facts, tables: dict[str, Any], method: str, counted: list, words: str) -> Answer:
    """Distance of lines, the first panel, gaps, and how many panels the line has."""
    rules, clause = tables["layout"], tables["layout"]["place"]
    places = gaps_and_ends(known, [(at, size) for at, size, _ in counted])
    stated = known.line.line_spacing
    asked, given = _asked(known, tables, method), _given(known, method, counted, places)
    if words:
        verdict = Verdict.NEEDS_EVIDENCE if words.startswith("state") else Verdict.NEEDS_JUDGEMENT
        return Answer(verdict, tables["panels"]["place"], asked, given, "which panels count is open", words)
    wrong = [f"no {noun(method)[:-1]} is long enough to count"] if not counted else []
    wrong += ["the next line is too far"] if stated and stated.value > _apart(known, rules) * FOOT + NOISE else []
    wrong += ["a gap is too wide"] if places and places[0] > rules["gap"] * FOOT + SHORT else []
    far = places and places[1] > rules["end"] * FOOT + SHORT
    wrong += [f"the first or last {noun(method)[:-1]} is too far from the end"] if far else []
    wrong += [f"the line has too few {noun(method)}"] if counted and _few(known, rules, counted) else []
    if wrong:
        return Answer(Verdict.DOES_NOT_MEET, clause, asked, given, "; ".join(wrong), f"move, lengthen or add {noun(method)}")
    need = [word for word, there in (("line_spacing", stated), ("panels.at", places)) if not there]
    if need:
        reason = f"not stated: {', '.join(need)}"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, reason, f"state {' and '.join(need)}")
    return _open(known, method, clause, asked, given) or Answer(Verdict.MEETS, clause, asked, given)


def _apart(known: Facts, rules: dict[str, Any]) -> int:
    """Greatest distance of lines, ft: closer where the length by earthquake is asked."""
    found = category(known)
    by_wind_alone = found in ("A", "B") or (found == "C" and townhouse(known.about) is False)
    return rules["spacing"] if by_wind_alone else rules["spacing_by_earthquake"][found[0]]


def _asked(known: Facts, tables: dict[str, Any], method: str) -> str:
    rules, one = tables["layout"], noun(method)[:-1]
    least = least_length(known, tables, method)[0]
    said = f", each {_feet(least * INCH)} long at least in a wall of {_feet(known.study.height)}" if least else ""
    if method in tables["panels"]["partial"]["methods"]:
        said += ", shorter ones in part"
    return (
        f"lines {_apart(known, rules)} ft apart at most, the first {one} within {rules['end']} ft of each end, gaps up to "
        f"{rules['gap']} ft; two {one}s in a line over {rules['short_line']} ft{said}; {rules['not_judged']}"
    )


def _given(known: Facts, method: str, counted: list, places: tuple[float, float] | None) -> str:
    stated, own = known.line.line_spacing, [size for _, size in known.study.panels]
    lengths = dict.fromkeys(_feet(size) for size in own)
    said = f"next line {_feet(stated.value) if stated else 'not stated'}, {len(counted)} of {len(own)} {noun(method)} count"
    said += f" ({', '.join(lengths)} long)" if own else ""
    return said + (f", widest gap {_feet(places[0])}, farther end {_feet(places[1])}" if places else "")


def _few(known: Facts, rules: dict[str, Any], counted: list) -> bool:
    short = known.study.length <= rules["short_line"] * FOOT + SHORT
    return not (len(counted) >= 2 or (short and counted[0][1] >= rules["single"] * INCH - SHORT))


def _open(known: Facts, method: str, clause: str, asked: str, given: str) -> Answer | None:
    """What the tables ask beside, and this tool does not judge."""
    if any(one.height and one.height.value < known.study.height - 0.05 for one in known.line.panels):
        reason = "a panel is lower than the wall: braced panels reach from plate to plate"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "use panels of full height, or ask the authority")
    if is_continuous(method):
        step = "show both ends, and the sheathing above and below openings"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, ENDS, step)
    if category(known).startswith("D"):
        reason = "in categories D0 to D2 panels stand at the ends, or the ends have returns or hold-downs: not judged here"
        return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, given, reason, "show the ends of the line against the adopted text")
    return None


def _feet(metres: float) -> str:
    """Feet and inches first, as the code prints them."""
    return length(Quantity(metres, "length", ""), True)
