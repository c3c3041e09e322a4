"""Climate zones: what degree-days give, what a zone without its letter may stand for, and cells of tables by zone."""

from collections.abc import Mapping, Sequence
from typing import Any

from layerfolio.catalogue.code_sets import CodeSet


def zone_of(edition: CodeSet, heating: float | None, cooling: float | None = None) -> str:
    """The zone of so many degree-days (K.d); empty when they are unknown, do not settle it, or the set has no zones.

    The first row whose conditions all hold is the zone. Where a table prints whole numbers (`to`, `below`), between
    two of its rows the colder one is taken.
    """
    row = _row_of(edition, heating, cooling)
    return str(row["zone"]) if row else ""


def zone_words(edition: CodeSet, heating: float | None, cooling: float | None) -> str:
    """Why the table gives no zone at these degree-days, in its own words; empty where it gives one, or a figure is missing."""
    row = _row_of(edition, heating, cooling)
    return str(row.get("words", "")) if row else ""


def _row_of(edition: CodeSet, heating: float | None, cooling: float | None) -> Mapping[str, Any] | None:
    zones = edition.content.get("zones", {})
    if zones.get("listed"):
        return None
    for row in zones.get("by_degree_days", {}).get(edition.set_id) or zones.get("rows", ()):
        holds = _holds(row, heating, cooling)
        if holds or holds is None:
            return row if holds else None
    return None


def _holds(row: Mapping[str, Any], heating: float | None, cooling: float | None) -> bool | None:
    """Whether a row's conditions hold; None where an unknown figure leaves it open."""
    if heating is None:
        return None
    known = [
        heating < row["below"] if "below" in row else heating <= row.get("to", heating),
        heating > row.get("heating_over", -1),
    ]
    if not all(known):
        return False
    asked = [key for key in row if key.startswith("cooling_")]
    if not asked:
        return True
    if cooling is None:
        return None
    tests = {"cooling_over": cooling.__gt__, "cooling_to": cooling.__le__, "cooling_below": cooling.__lt__}
    return all(tests[key](row[key]) for key in asked)


def bounds(rows: list[Mapping[str, Any]], zone: str) -> tuple[float | None, float | None]:
    """Lowest and highest whole degree-days of a zone as the table prints them; None for an end that is open."""
    low = None
    for row in rows:
        high = row["below"] - 1 if "below" in row else row.get("to")
        if str(row["zone"]) == zone:
            return low, high
        low = None if high is None else high + 1
    raise KeyError(zone)


def expanded(edition: CodeSet, zone: str) -> tuple[str, ...]:
    """The zones that a stated one may stand for: "4" where the set tells 4A, 4B and 4C apart."""
    for row in edition.content.get("zones", {}).get("rows", ()):
        if str(row["zone"]) == zone:
            return tuple(row.get("of", (zone,)))
    return (zone,)


def either(names: Sequence[str]) -> str:
    """ "5A, 5B or 5C"."""
    return " or ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def all_zones(edition: CodeSet) -> tuple[str, ...]:
    """Every zone of the set that stands for itself alone."""
    rows = edition.content.get("zones", {}).get("rows", ())
    return tuple(str(row["zone"]) for row in rows if "of" not in row)


def cell(table: Mapping[str, Any], zone: str) -> Any:
    """What a table has for a zone: its own cell, else the cell of its number; KeyError without either."""
    return table[zone] if zone in table else table[zone.rstrip("ABC")]


def named(zone: str, zones: tuple[str, ...] | list[str]) -> bool:
    """Whether a list of zones names this one, by itself or by its number ("4" names 4A and 4B; 4C stands apart)."""
    return zone in zones or (zone != "4C" and zone.rstrip("ABC") in zones)
