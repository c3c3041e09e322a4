"""The tables of the bracing schedule: lines and their panels."""

from typing import Any

from layerfolio.catalogue.sources import printed
from layerfolio.codes.findings import Measured
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.desk import BRACING, Desk
from layerfolio.sheets.figures import NONE, NOT_GIVEN, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.structure_parts import findings_on, length_unit, long
from layerfolio.studies.structure_types import UnitShear, WallLineStudy
from layerfolio.units.show import fixed, in_units, significant

CARRIES = ("roof", "roof and floor", "roof and two floors")
NO_FIGURE = "no figure"
"""Where the set counts no length: it asks for panels as such, or leaves the line to a design."""


def lines(desk: Desk, studies: dict[str, WallLineStudy]) -> Table:
    """One row for each line."""
    system = desk.system
    wide = system == "customary"
    size = 21.0 if wide else 16.0
    columns = (
        Column("Line", "", 12), Column("Wall", "", 12), Column("Length", length_unit(system), size, "right"),
        Column("Height", length_unit(system), size, "right"), Column("Carries", "", 0),
        Column("Panels", length_unit(system), size, "right"), Column("of line", "%", 15, "right"),
        Column("Asked", "", 24 if wide else 26), Column("Provided", "", 24 if wide else 26),
    )  # fmt: skip
    return Table(columns, tuple(_line(desk, name, one) for name, one in studies.items()))


def _line(desk: Desk, name: str, one: WallLineStudy) -> Row:
    asked, provided = counted(desk, name)
    method = getattr(one.stated, "method", None)
    about = "; ".join(filter(None, (getattr(one.stated, "title", None), f"method {method}" if method else "")))
    cells = (
        f"**{plain(name)}**", plain(one.assembly), long(one.length, desk.system, True), long(one.height, desk.system, True),
        plain(carries(one.stated)), long(one.total_panels, desk.system, True), fixed(100 * one.share, 1), asked, provided,
    )  # fmt: skip
    return Row(cells, after=plain(about) or None)


def carries(stated: Any) -> str:
    """What a line carries, in words."""
    floors = getattr(stated, "floors_above", None)
    if floors is None:
        return NOT_GIVEN
    return CARRIES[floors] if floors < len(CARRIES) else f"roof and {floors} floors"


def counted(desk: Desk, name: str) -> tuple[str, str]:
    """Asked and provided of the finding that counts the panels of a line, with units."""
    of_line = [one for one in findings_on(desk, BRACING) if one.assembly == name]
    found = next((one for one in of_line if one.limit), None)
    if found is not None:
        return _measured(found.limit, desk.system), _measured(found.provided, desk.system)
    counts = next((one.provided for one in of_line if one.provided), None)
    return NO_FIGURE, _measured(counts, desk.system) if counts else NONE


def _measured(figure: Measured | None, system: str) -> str:
    if figure is None:
        return NOT_GIVEN
    if figure.value <= 1 and _is_share(figure.quantity):
        return f"{significant(100 * figure.value)} % of the line"
    if system == "metric" and figure.value < 1:
        return f"{fixed(figure.value * 1000, 0)}\u00a0mm"
    return with_unit(figure.value, figure.quantity, system, 4)  # so that a near miss does not round to its limit


def _is_share(quantity: str) -> bool:
    from layerfolio.glossary import term

    return term(quantity).si == "1"


def force_per_length(value: float, system: str) -> str:
    """N/m as kN/m, or as lbf/ft with kN/m in brackets."""
    metric = f"{fixed(value / 1000, 2)}\u00a0kN/m"
    return f"{fixed(in_units(value, 'lbf/ft'), 0)}\u00a0lbf/ft ({metric})" if system == "customary" else metric


def shears(studies: dict[str, WallLineStudy], system: str) -> Table | None:
    """The unit shear of the lines' panels by the published table, alike ones once: information for the engineer."""
    alike: dict[UnitShear, list[str]] = {}
    for name, one in studies.items():
        if one.shear:
            alike.setdefault(one.shear, []).append(name)
    if not alike:
        return None
    columns = (
        Column("Lines", "", 24), Column("Row of the table", "panel, nail, edge spacing", 0),
        Column("Nominal", "wind; earthquake", 33), Column("For design", "wind; earthquake", 33),
        Column("Narrow panels", "factor", 26),
    )  # fmt: skip
    return Table(columns, tuple(_shear(", ".join(names), one, system) for one, names in alike.items()))


def _shear(names: str, one: UnitShear, system: str) -> Row:
    pairs = ((one.wind, one.seismic), (one.design_wind, one.design_seismic))
    nominal, design = ("\n".join(force_per_length(value, system) for value in pair) for pair in pairs)
    factor = "beyond the limit" if one.aspect is None else fixed(one.aspect, 2)
    words = f"{plain(one.row)}\n{plain(printed(one.source))}; divisors of the {plain(one.edition)} edition"
    return Row((f"**{plain(names)}**", words, nominal, design, factor), after=plain("; ".join(one.marks)) or None)


def panels(studies: dict[str, WallLineStudy], system: str) -> Table | None:
    """Every panel with its place and proportions, by the names on the elevation."""
    rows = [row for name, one in studies.items() for row in _panels(name, one, system)]
    if not rows:
        return None
    columns = (
        Column("Line", "", 14), Column("Panel", "", 14), Column("From the start", length_unit(system), 34, "right"),
        Column("Length", length_unit(system), 34, "right"), Column("Height", length_unit(system), 34, "right"),
        Column("Height to length", "", 0, "right"),
    )  # fmt: skip
    return Table(columns, tuple(rows))


def _panels(name: str, one: WallLineStudy, system: str) -> list[Row]:
    found = []
    for number, ((start, length), height) in enumerate(zip(one.panels, heights(one), strict=True), 1):
        place = long(start, system) if one.laid_out else NOT_GIVEN
        ratio = f"{fixed(height / length, 2)} : 1"
        found.append(Row((plain(name), f"P{number}", place, long(length, system), long(height, system), ratio)))
    return found


def heights(one: WallLineStudy) -> tuple[float, ...]:
    """Height of each panel, m: its own where it is stated, else the line's. Panels of a study stand in order of place."""
    stated = sorted(getattr(one.stated, "panels", None) or (), key=lambda panel: panel.at.value if panel.at else 0.0)
    own = [panel.height.value if panel.height else one.height for panel in stated]
    return tuple(own) if len(own) == len(one.panels) else (one.height,) * len(one.panels)
