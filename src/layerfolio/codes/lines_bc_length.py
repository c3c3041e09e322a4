"""Length of braced panels by wind in British Columbia's system, and the force that stands behind its table."""

from typing import Any

from layerfolio.codes.line_facts import Facts, gypsum_opposite, up_to
from layerfolio.formulas import bracing as f
from layerfolio.steps.trace import Recorder, Trace

KN = 1000.0
STATE = {
    "floors": "state storeys_above, or supports", "exposure": "supply site_loads.exposure: rough or open",
    "storeys": "state building.storeys", "roof": "state eave_to_ridge", "spacing": "state line_spacing",
    "number": "state lines_in_direction",
}  # fmt: skip


def required_length(
    known: Facts, tables: dict[str, Any], row: dict[str, Any] | None, wind: float
) -> tuple[float | None, Trace, str]:
    """The length in m with its steps; None with what is missing, or which limit of the tables is passed."""
    record = Recorder()
    record.section("Length by wind", key="length", source=f"{tables['source']}, {tables['wind']['place']}")
    factors, need = _factors(known, tables)
    if row is None:
        return None, record.done(), "fit panel, studs and nails to a framing type"
    if need:
        return None, record.done(), need
    name = tables["wind"]["as"].get(row["name"], row["name"])
    table = next(one for one in tables["wind"]["rows"] if wind <= one["up_to"] + 1e-6)
    if known.floors >= len(table[name]):
        return None, record.done(), "more floors than the table has: to be designed by a licensed professional"
    unadjusted = table[name][known.floors]
    source = f"{tables['source']}, {tables['wind']['place']}"
    record.given("L_t", unadjusted, f"{name}, wind up to {table['up_to'] / 1000:g} kPa", source)
    return record.step(f.length_by_factors, L_t=unadjusted, **factors), record.done(), ""


def _factors(known: Facts, tables: dict[str, Any]) -> tuple[dict[str, float], str]:
    """Every factor by its glossary name; else what has to be stated or which row the tables lack."""
    rows, line, about = tables["factors"], known.line, known.about
    exposure, storeys = str(about.answer("site_loads.exposure") or ""), known.storeys
    need = next((STATE[word] for word, there in (
        ("floors", known.floors is not None), ("exposure", exposure in rows["exposure"]), ("storeys", storeys),
        ("roof", line.eave_to_ridge), ("spacing", line.line_spacing), ("number", line.lines_in_direction),
    ) if not there), "")  # fmt: skip
    if need:
        return {}, need
    roof = up_to(rows["roof"], line.eave_to_ridge.value * 1000) if known.floors == 0 else _with_floors(known, rows)
    found = {
        "k_e": dict(enumerate(rows["exposure"][exposure], 1)).get(storeys), "k_r": roof,
        "k_s": up_to(rows["spacing"], line.line_spacing.value * 1000), "k_n": up_to(rows["number"], line.lines_in_direction),
        "k_g": _gypsum(known, rows["gypsum"]), "k_c": _continuous(known, rows["sheathing"]),
    }  # fmt: skip
    lost = [name for name, one in found.items() if one is None]
    words = {"k_e": "more storeys", "k_r": "a roof or floors", "k_s": "lines farther apart", "k_n": "lines"}
    if lost:
        return {}, f"{', '.join(words[one] for one in lost)} than the factors were read for: ask an engineer"
    return found, ""


def _with_floors(known: Facts, rows: dict[str, Any]) -> float | None:
    """Where floors are carried the roof's factor was not read; up to the rise of the table it is taken as one."""
    return 1.0 if known.line.eave_to_ridge.value * 1000 <= rows["roof_of_floors"] + 1e-6 else None


def _gypsum(known: Facts, row: dict[str, float]) -> float:
    if known.line.gypsum_opposite and gypsum_opposite(known):
        return row["installed"]
    return row["omitted_blocked"] if known.pins and known.pins.blocked else row["omitted"]


def _continuous(known: Facts, row: dict[str, float]) -> float:
    openings = sum(one.along.value for one in known.line.openings if one.along)
    whole = known.study.total_panels + openings >= known.study.length - 0.01
    return row["continuous"] if whole else row["intermittent"]


def band_force(tables: dict[str, Any], wind: float, floors: int, record: Recorder | None = None) -> float | None:
    """Unadjusted force behind the table in N: the greater of length times resistance of the types it prints."""
    table = next((one for one in tables["wind"]["rows"] if wind <= one["up_to"] + 1e-6), None)
    if table is None or floors >= 3:
        return None
    rows = {one["name"]: one["resistance"] * KN for one in tables["types"]["rows"]}
    record = record or Recorder()
    return max(
        record.step(f.band_force, about=name, L_t=table[name][floors], v_r=rows[name]) for name in ("WSP-A", "WSP-B")
    )


def band_forces(known: Facts, tables: dict[str, Any], wind: float) -> tuple[str, Trace]:
    """The force in words and its steps, with the factors where they are known: information for the one who designs."""
    record = Recorder()
    record.section("Force on the band by wind", key="force", source=f"{tables['source']}, {tables['wind']['place']}")
    force = band_force(tables, wind, known.floors if known.floors is not None else 9, record)
    if force is None:
        return "the lateral force on the band, for which the project file has to say what the line carries", Trace(())
    factors, need = _factors(known, tables)
    base = f"a lateral force of {force / KN:.1f} kN on the band by wind, derived from the table before its factors"
    if need:
        return base, record.done()
    whole = record.step(f.force_by_factors, V_t=force, **{name: factors[name] for name in ("k_e", "k_r", "k_s", "k_n")})
    words = f"{base}; {whole / KN:.1f} kN with exposure, roof, spacing and number of bands"
    return f"{words}; the force by earthquake, which is not calculated here", record.done()
