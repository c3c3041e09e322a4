"""Length of bracing by wind: the block of the speed, straight between line distances, and every factor that applies."""

from typing import Any

from layerfolio.codes.line_facts import FOOT, INCH, NOMINAL_INCH, Facts, gypsum_opposite, up_to
from layerfolio.codes.line_layers import is_gypsum_board, on_the_studs
from layerfolio.codes.line_types import ENGINEER
from layerfolio.codes.lines_irc_closed import NO_GYPSUM
from layerfolio.codes.lines_irc_place import exposure, speed, storey_height
from layerfolio.formulas import bracing as f
from layerfolio.steps.trace import Recorder

HALF_INCH = 0.5 * INCH - 1.2e-4
"""Least thickness of gypsum board opposite, R602.10.4.3, m."""
STATE = {"line_spacing": "line_spacing", "eave_to_ridge": "eave_to_ridge", "lines_in_direction": "lines_in_direction"}


def wind_length(known: Facts, tables: dict[str, Any], method: str, record: Recorder) -> tuple[float, str, float]:
    """(length asked in m, what is missing or passed in words, length asked were the storey 16 in taller than the wall)."""
    need = [word for word in STATE if getattr(known.line, word) is None]
    if need:
        return 0.0, f"state {', '.join(need)}", 0.0
    base, wrong = table_length(known, tables, method)
    factors, lost = wind_factors(known, tables, method)
    if wrong or lost:
        return 0.0, wrong or lost, 0.0
    table, rules = tables["wind"], tables["wind_factors"]
    source = f"{tables['source']}, {table['place']}"
    record.section("Length by wind", key="wind", source=source)
    record.given("L_t", base, f"{method}, lines {known.line.line_spacing.value / FOOT:.4g} ft apart", source)
    for word, about in (("k_e", "exposure and storeys"), ("k_r", "eave to ridge"), ("k_h", "height"), ("k_n", "lines"),
                        ("k_g", "gypsum board opposite")):  # fmt: skip
        record.given(word, factors[word], about, f"{tables['source']}, {rules['place']}")
    asked = record.step(f.length_by_wind, L_t=base, **factors)
    return asked, "", asked * _taller(known, tables) / factors["k_h"]


def _taller(known: Facts, tables: dict[str, Any]) -> float:
    """The factor for height where the storey is the wall and its floor framing; that which holds where the storey is stated."""
    rules, height = tables["wind_factors"], known.study.height / FOOT
    if not _by_storey(known, rules) or storey_height(known) is not None:
        return _height_factor(known, rules)
    return up_to(rules["height"], height + rules["floor_framing"]) or rules["height"][-1][1]


def _by_storey(known: Facts, rules: dict[str, Any]) -> bool:
    """Whether the edition's factor goes by the height of the storey; else by that of the wall."""
    return rules["storey_height"][known.about.edition.set_id]


def _height_factor(known: Facts, rules: dict[str, Any]) -> float | None:
    """By the storey where the edition means it and it is stated, else by the wall; None beyond the rows."""
    storey = storey_height(known) if _by_storey(known, rules) else None
    return up_to(rules["height"], storey or known.study.height / FOOT)


def table_length(known: Facts, tables: dict[str, Any], method: str) -> tuple[float, str]:
    """Length of the table in m, before factors; else which limit is passed."""
    from layerfolio.codes.lines_irc_length import between

    table = tables["wind"]
    group = next((name for name, methods in table["groups"].items() if method in methods), "")
    if not group or known.floors in table["not_permitted"].get(method, ()):
        return 0.0, f"method {method} is not permitted under this load: {ENGINEER}"
    blown, set_id = speed(known), known.about.edition.set_id
    rows = (one for one in table["rows"] if set_id in one.get("only", (set_id,)))
    row = next(one for one in rows if blown < one["speed"] - 1e-3 or (not one.get("below") and blown <= one["speed"] + 1e-3))
    feet = known.line.line_spacing.value / FOOT
    if feet > table["spacings"][-1] + 1e-6:
        return 0.0, f"lines more than {table['spacings'][-1]} ft apart: {ENGINEER}"
    return between(row[group][known.floors], table["spacings"], feet) * FOOT, ""


def wind_factors(known: Facts, tables: dict[str, Any], method: str) -> tuple[dict[str, float], str]:
    """Every factor by its glossary name; else which limit is passed."""
    rules, line, floors = tables["wind_factors"], known.line, known.floors
    roofs = list(zip(rules["roof"]["heights"], rules["roof"]["rows"][floors], strict=True))
    omitted = method in rules["gypsum"]["methods"] and not (line.gypsum_opposite and board_opposite(known))
    held = method in rules["hold_down"]["methods"] and line.hold_downs and floors == 0
    open_joints = method in rules["blocking"]["methods"] and blocked(known) is False
    found = {
        "k_e": dict(enumerate(rules["exposure"][exposure(known)], 1)).get(known.storeys),
        "k_r": up_to([list(one) for one in roofs], line.eave_to_ridge.value / FOOT),
        "k_h": _height_factor(known, rules), "k_n": _lines(line.lines_in_direction, rules),
        "k_hd": rules["hold_down"]["factor"] if held else 1.0, "k_g": rules["gypsum"]["factor"] if omitted else 1.0,
        "k_f": _close(known, rules, method), "k_b": rules["blocking"]["factor"] if open_joints else 1.0,
    }  # fmt: skip
    if method == "LIB" and line.gypsum_opposite is None:
        return {}, "state gypsum_opposite: method LIB takes gypsum board on the face opposite"
    if method == "LIB" and not line.gypsum_opposite:
        return {}, NO_GYPSUM
    lost = [name for name, one in found.items() if one is None]
    words = {"k_e": "the storeys", "k_r": "the roof", "k_h": "the height of storey or wall", "k_n": "the number of lines"}
    return found, f"{', '.join(words[one] for one in lost)} passes the table of factors: {ENGINEER}" if lost else ""


def _lines(number: int, rules: dict[str, Any]) -> float | None:
    return up_to(rules["number"], number) if number >= 2 else None


def _close(known: Facts, rules: dict[str, Any], method: str) -> float:
    """Gypsum board with fasteners at 4 in and every joint blocked."""
    row = rules["close_gypsum"]
    apart = [known.edge, known.field]
    near = None not in apart and max(apart) <= row["edge"] * NOMINAL_INCH + 1e-4
    return row["factor"] if method in row["methods"] and near and blocked(known) else 1.0


def board_opposite(known: Facts) -> bool:
    """Whether gypsum board of 1/2 in lies on the studs, opposite the panels."""
    return gypsum_opposite(known, HALF_INCH)


def gypsum_layer(known: Facts) -> bool:
    """Whether gypsum board lies on either face of the studs: let-in braces name no panel that it could lie opposite."""
    return any(one is not None and is_gypsum_board(one, HALF_INCH) for one in on_the_studs(known.assembly))


def blocked(known: Facts) -> bool | None:
    """Whether horizontal joints lie on blocking; None where it is not stated."""
    return known.pins.blocked if known.pins else None
