"""Cladding fastened through insulation, as tables: the fastener, its capacity mode by mode, weight against capacity."""

from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.figures import NONE, NOT_GIVEN, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.structure_parts import length_unit, load, load_unit, long, thick
from layerfolio.studies.structure_types import Attachment
from layerfolio.units.show import fixed, in_units

Studies = dict[str, Attachment]
MODES = ("Im", "Is", "II", "IIIm", "IIIs", "IV")


def fasteners(studies: Studies, system: str) -> Table:
    """The schedule: what is driven in, how long, how far apart, what it goes through."""
    unit = length_unit(system)
    wide = 18.0 if system == "customary" else 17.0
    columns = (
        Column("For", "", 11), Column("Fastener", "under its head; into", 0), Column("Diameter", unit, wide + 3, "right"),
        Column("Length", unit, wide + 2, "right"), Column("Spacing", unit, wide + 2, "right"),
        Column("Rows at", unit, wide + 2, "right"), Column("Crossed", unit, wide, "right"),
        Column("In framing", unit, wide + 3, "right"),
    )  # fmt: skip
    return Table(columns, tuple(_fastener(name, one, system) for name, one in studies.items()))


def _fastener(name: str, one: Attachment, system: str) -> Row:
    where = "; ".join(filter(None, (one.side, one.main)))
    sizes = (one.length, one.spacing, one.rows, one.gap, one.penetration)
    title = plain(one.fastener) or NOT_GIVEN
    return Row(
        (
            f"**{plain(name)}**",
            f"{title}\n{plain(where)}",
            thick(one.diameter, system).replace(" (", "\n("),
            *(long(size, system, True) for size in sizes),
        )
    )


def modes(studies: Studies, system: str) -> Table:
    """Reference capacity of each yield mode; the least is bold and governs."""
    unit = "lbf (N)" if system == "customary" else "N"
    columns = (Column("For", "", 14), *(Column(f"Mode {one}", unit, 0, "right") for one in MODES))
    return Table(columns, tuple(_modes(name, one, system) for name, one in studies.items()))


def _modes(name: str, one: Attachment, system: str) -> Row:
    capacity = {mode.name: mode.capacity for mode in one.modes}
    shown = (_force(capacity.get(mode), system) for mode in MODES)
    cells = [f"**{text}**" if mode == one.governing_mode else text for mode, text in zip(MODES, shown, strict=True)]
    return Row((f"**{plain(name)}**", *cells))


def _force(value: float | None, system: str) -> str:
    if value is None:
        return NONE
    if system == "metric":
        return fixed(value, 0)
    return f"{fixed(in_units(value, 'lbf'), 1)} ({fixed(value, 0)})"


def demand(studies: Studies, system: str) -> Table:
    """What comes to a fastener beside what it carries by the formulas: information for the engineer."""
    columns = (
        Column("For", "", 14), Column("Hung weight", load_unit(system), 0, "right"), Column("On a fastener {V_f}", "", 33),
        Column("Lateral capacity {Z_y}", "", 36), Column("Share used", "%", 20, "right"),
        Column("Pull of wind {T_f}", "", 31), Column("Withdrawal {W_p}", "", 31),
    )  # fmt: skip
    return Table(columns, tuple(_demand(name, one, system) for name, one in studies.items()))


def _demand(name: str, one: Attachment, system: str) -> Row:
    share = NONE
    if one.demand is not None and one.capacity_lateral:
        share = fixed(100 * one.demand / one.capacity_lateral, 0)
    return Row((
        f"**{plain(name)}**", load(one.weight, system), _shown(one.demand, "V_f", system),
        _shown(one.capacity_lateral, "Z_y", system), share, _shown(one.withdrawal_demand, "T_f", system),
        _shown(one.withdrawal_capacity, "W_p", system),
    ))  # fmt: skip


def _shown(value: float | None, quantity: str, system: str) -> str:
    return NOT_GIVEN if value is None else with_unit(value, quantity, system, 3 if value < 1000 else 4)  # as sentences print it
