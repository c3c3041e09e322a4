"""Length of bracing by wind: the block of the speed, straight between line distances, and every factor that applies."""

from typing import Any

from layerfolio.codes.line_facts import FOOT, NOMINAL_INCH, Facts, gypsum_opposite, is_gypsum_board, up_to
from layerfolio.codes.line_types import ENGINEER
from layerfolio.codes.lines_irc_closed import NO_GYPSUM
from layerfolio.formulas import bracing as f
from layerfolio.steps.trace import Recorder

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
    """The factor for height where the storey is the wall and its floor framing; that of the wall where the edition means it."""
    rules, height = tables["wind_factors"], known.study.height / FOOT
    own = up_to(rules["height"], height)
    if not rules["storey_height"][known.about.edition.set_id] or _storey_stated(known):
        return own
    return up_to(rules["height"], height + rules["floor_framing"]) or rules["height"][-1][1]


def _storey_stated(known: Facts) -> bool:
    """Whether the project gives one height of storey, which the line's height then covers."""
    heights = [one.height.value for one in known.about.answer("storeys") or () if one.height]
    return bool(heights) and max(heights) <= known.study.height + 1e-6


def table_length(known: Facts, tables: dict[str, Any], method: str) -> tuple[float, str]:
    """Length of the table in m, before factors; else which limit is passed."""
    from layerfolio.codes.lines_irc import speed
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
    from layerfolio.codes.lines_irc import exposure

    rules, line, floors = tables["wind_factors"], known.line, known.floors
    roofs = list(zip(rules["roof"]["heights"], rules["roof"]["rows"][floors], strict=True))
    omitted = method in rules["gypsum"]["methods"] and not (line.gypsum_opposite and gypsum_opposite(known))
    held = method in rules["hold_down"]["methods"] and line.hold_downs and floors == 0
    open_joints = method in rules["blocking"]["methods"] and blocked(known) is False
    found = {
        "k_e": dict(enumerate(rules["exposure"][exposure(known)], 1)).get(known.storeys),
        "k_r": up_to([list(one) for one in roofs], line.eave_to_ridge.value / FOOT),
        "k_h": up_to(rules["height"], known.study.height / FOOT), "k_n": _lines(line.lines_in_direction, rules),
        "k_hd": rules["hold_down"]["factor"] if held else 1.0, "k_g": rules["gypsum"]["factor"] if omitted else 1.0,
        "k_f": _close(known, rules, method), "k_b": rules["blocking"]["factor"] if open_joints else 1.0,
    }  # fmt: skip
    if method == "LIB" and line.gypsum_opposite is None:
        return {}, "state gypsum_opposite: method LIB takes gypsum board on the face opposite"
    if method == "LIB" and not line.gypsum_opposite:
        return {}, NO_GYPSUM
    lost = [name for name, one in found.items() if one is None]
    words = {"k_e": "the storeys", "k_r": "the roof", "k_h": "the wall", "k_n": "the number of lines"}
    return found, f"{', '.join(words[one] for one in lost)} passes the table of factors: {ENGINEER}" if lost else ""


def _lines(number: int, rules: dict[str, Any]) -> float | None:
    return up_to(rules["number"], number) if number >= 2 else None


def _close(known: Facts, rules: dict[str, Any], method: str) -> float:
    """Gypsum board with fasteners at 4 in and every joint blocked."""
    row = rules["close_gypsum"]
    apart = [known.edge, known.field]
    near = None not in apart and max(apart) <= row["edge"] * NOMINAL_INCH + 1e-4
    return row["factor"] if method in row["methods"] and near and blocked(known) else 1.0


def gypsum_layer(known: Facts) -> bool:
    """Whether any layer of the wall is gypsum board: let-in braces name no panel that it could lie opposite."""
    return known.assembly is not None and any(is_gypsum_board(one) for one in known.assembly.layers)


def blocked(known: Facts) -> bool | None:
    """Whether horizontal joints lie on blocking; None where it is not stated."""
    return known.pins.blocked if known.pins else None
