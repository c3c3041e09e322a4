"""The tables of the opening schedule: where and how large, heat and evidence, operation and escape."""

from collections.abc import Sequence
from typing import Any

from layerfolio.codes.findings import limits_of_u
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.desk import RECORD, Desk
from layerfolio.sheets.figures import NONE, NOT_GIVEN, cell, u_cell, unit_of
from layerfolio.sheets.markup import plain
from layerfolio.steps.trace import Given
from layerfolio.studies.envelope_types import OpeningStudy
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import customary_length, fixed, length_figure

KIND_WORDS = {
    "window": "Window", "door": "Door", "skylight": "Skylight", "hatch": "Hatch", "glass-block": "Glass block",
    "vehicle-door": "Vehicle door",
}  # fmt: skip
GLAZED = ("window", "door", "skylight", "glass-block")
LEVEL = ("skylight", "hatch")  # may lie level and face nowhere
NO_GLASS = "no glass"
YES_NO = {True: "yes", False: "no", None: NOT_GIVEN}


def schedule(studies: dict[str, OpeningStudy], system: str) -> Table:
    """Mark, kind and title, assembly, orientation, number, size, area."""
    inches = system == "customary"
    columns = (
        Column("Mark", width=13), Column("What it is"), Column("In", width=13), Column("Faces", width=21 if inches else 24),
        Column("No.", width=10, align="right"), Column("Width × height", "" if inches else "mm", 42 if inches else 30, "right"),
        Column("{area}, each", unit_of("area", system), 23 if inches else 19, "right"),
        Column("{area}, all", unit_of("area", system), 25 if inches else 19, "right"),
    )  # fmt: skip
    rows = tuple(Row(_place(one, system)) for one in studies.values())
    total = sum(one.total_area for one in studies.values())
    count = str(sum(one.count for one in studies.values()))
    last = Row(("", "All openings", "", "", count, "", "", cell(total, "area", system, 2, 1)), total=True)
    return Table(columns, (*rows, last) if len(rows) > 1 else rows, top_rule=False)


def _place(one: OpeningStudy, system: str) -> tuple[str, ...]:
    return (
        f"**{plain(one.name)}**", plain(_what(one)), plain(one.wall),
        one.orientation or (NONE if one.kind in LEVEL else NOT_GIVEN), str(one.count), _size(one, system),
        cell(one.area, "area", system, 2, 1), cell(one.total_area, "area", system, 2, 1),
    )  # fmt: skip


def _what(one: OpeningStudy) -> str:
    """The title, with the kind before it where it does not say it."""
    kind = KIND_WORDS[one.kind]
    if not one.title or kind.lower() in one.title.lower():
        return one.title or kind
    return f"{kind}: {one.title}"


def _size(one: OpeningStudy, system: str) -> str:
    stated = one.stated
    sides = (getattr(stated, "width", None) or one.width, getattr(stated, "height", None) or one.height)
    return _by(sides, system)


def _by(sides: Sequence[Quantity | float], system: str) -> str:
    """Width by height; in the customary system both in inches or both in feet and inches, millimetres on a line below."""
    metric = " × ".join(_figure(side, "metric") for side in sides)
    if system == "metric":
        return metric
    figures = [_figure(side, "customary") for side in sides]
    if len({"'" in one for one in figures}) > 1:
        figures = [customary_length(getattr(side, "value", side), 12).replace(" ", "\u00a0") for side in sides]
    return f"{' × '.join(figures)}\n({metric})"


def _figure(length: Quantity | float, system: str) -> str:
    """A length that no line end parts."""
    return length_figure(length, system).replace(" ", "\u00a0")


def _u_of(value: float | None, limit: float | None, system: str) -> str:
    """As labels print it; where that would read like the limit that it misses or passes by little, with more digits."""
    if value is None:
        return NOT_GIVEN
    usual = cell(value, "U_w", system, 2, 3)
    if limit is None or value == limit or usual != cell(limit, "U_w", system, 2, 3):
        return usual
    return u_cell(value, system, limit)


def heat(desk: Desk, studies: dict[str, OpeningStudy], defaults: dict[str, str]) -> Table:
    """U with its source mark and basis, the code's default beside it where there is one, solar factor, evidence, verdicts."""
    system = desk.system
    columns = [
        Column("Mark", width=13), Column("{U_w}", unit_of("U_w", system), 26 if system == "customary" else 18, "right"),
        Column("Src", width=13), Column("Basis"), Column("Solar", "factor", 17, "right"),
        Column("Evidence", "register", 19), Column("Judged", f"{RECORD}, line", 19),
    ]  # fmt: skip
    if defaults:
        columns.insert(4, Column("Code's default", unit_of("U_w", system), 29, "right"))
    rows, limits = [], limits_of_u(desk.dossier.findings)
    for name, one in studies.items():
        cells = [
            f"**{plain(name)}**", _u_of(one.transmittance, limits.get(name), system),
            desk.book.marks(*figures(one)) or NONE, basis(one), _factor(one), evidence(desk, name) or NONE,
            lines(desk, name) or NONE,
        ]  # fmt: skip
        if defaults:
            cells.insert(4, defaults.get(name, NONE))
        rows.append(Row(tuple(cells)))
    return Table(tuple(columns), tuple(rows))


def figures(one: OpeningStudy) -> list[Any]:
    """The sourced figures behind a transmittance: its own, or those it was computed from."""
    if one.how != "computed":
        return [one.figure]
    return [entry.figure for entry in one.trace.entries if isinstance(entry, Given) and entry.figure]


def basis(one: OpeningStudy) -> str:
    """Where a transmittance comes from, in words."""
    if one.how == "computed":
        return "computed, ISO 10077-1, steps below"
    if one.how == "stated":
        return plain(one.basis) or NOT_GIVEN
    return "**missing**"


def _factor(one: OpeningStudy) -> str:
    if one.kind not in GLAZED:
        return NONE
    return NOT_GIVEN if one.solar_factor is None else fixed(one.solar_factor, 2)


def evidence(desk: Desk, name: str) -> str:
    """Numbers of the rows of the evidence register on an opening; those that still wait for a document in bold."""
    register = desk.dossier.register
    if register is None:
        return ""
    rows = register.of(name, "opening")
    return ", ".join(f"**{one.number}**" if one.waits else one.number for one in rows)


def lines(desk: Desk, name: str) -> str:
    """The lines of the compliance record on an opening."""
    found = [one for one in desk.dossier.findings if one.assembly == name and one.opening]
    return ", ".join(str(desk.line(one)) for one in found)


def safety(studies: dict[str, OpeningStudy], system: str) -> Table:
    """Operation, clear opening and sill, whether it is a way of escape, whether its glass is safety glass."""
    inches = system == "customary"
    columns = (
        Column("Mark", width=13), Column("Operation"),
        Column("Clear opening", "" if inches else "mm", 42 if inches else 30, "right"),
        Column("Clear area", unit_of("area", system), 25 if inches else 22, "right"),
        Column("Sill over floor", "" if inches else "mm", 28 if inches else 26, "right"),
        Column("Escape", width=20), Column("Safety glass", width=24),
    )  # fmt: skip
    return Table(columns, tuple(Row(_operation(one, system)) for one in studies.values()))


def glazed(one: OpeningStudy) -> bool:
    """Whether it may hold glass: of such a kind, and not stated to have none."""
    return one.kind in GLAZED and not _opaque(one)


def _opaque(one: OpeningStudy) -> bool:
    return getattr(one.stated, "glazed", None) is False


def _operation(one: OpeningStudy, system: str) -> tuple[str, ...]:
    stated = one.stated
    clear, operation = getattr(stated, "clear_opening", None), getattr(stated, "operation", None)
    opens = operation != "fixed"
    return (
        f"**{plain(one.name)}**", operation or NOT_GIVEN, _clear_size(clear, system) if opens else NONE,
        _clear_area(clear, system) if opens else NONE, _length(getattr(stated, "sill_height", None), system),
        YES_NO[getattr(stated, "egress", None)],
        YES_NO[getattr(stated, "safety_glazing", None)] if glazed(one) else NO_GLASS if _opaque(one) else NONE,
    )  # fmt: skip


def _clear_size(clear: Any, system: str) -> str:
    sides = [getattr(clear, name, None) for name in ("width", "height")]
    if not all(sides):
        return NOT_GIVEN
    return _by(sides, system)


def _clear_area(clear: Any, system: str) -> str:
    """The stated clear area, else width by height."""
    area, width, height = (getattr(clear, name, None) for name in ("area", "width", "height"))
    if area is None and not (width and height):
        return NOT_GIVEN
    return cell(area.value if area else width.value * height.value, "area", system, 3, 2)


def _length(length: Quantity | None, system: str) -> str:
    if length is None:
        return NOT_GIVEN
    first = _figure(length, system)
    return first if system == "metric" else f"{first} ({_figure(length, 'metric')})"
