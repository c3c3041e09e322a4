"""Loads: the dead load of each assembly layer by layer against the limits of the set; snow, wind, earthquake as given."""

from layerfolio.sheets.blocks import Block, Column, Head, Heading, Row, Sheet, Table
from layerfolio.sheets.calculation import source_words
from layerfolio.sheets.desk import LOADS, Desk
from layerfolio.sheets.figures import NONE, NOT_GIVEN
from layerfolio.sheets.markup import plain
from layerfolio.sheets.site_table import site_stated, site_table
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.sheets.structure_parts import (
    caution,
    findings_on,
    in_order,
    listed_missing,
    load,
    load_unit,
    steps_of,
    verdicts,
)
from layerfolio.studies.structure_types import DeadLoad, LayerLoad

UNCOUNTED = "not counted"
ORDER = ("layer_weight", "share_between", "part_weight", "dead_load_sum", "load_on_plan")


def loads_sheet(desk: Desk) -> Sheet | None:
    """Sheet ST4; None where no weight of an assembly is known and the place has no loads."""
    studies: dict[str, DeadLoad] = desk.dossier.dead_loads
    known = {name: one for name, one in studies.items() if any(part.load for part in one.layers)}
    if not has_loads(desk):
        return None
    blocks = desk.templates.blocks(
        "loads",
        head=Head("", "Loads", "dead loads; snow, wind, earthquake"),
        caution=caution(),
        site=site_table(desk),
        tables=[_assembly(desk, name, one) for name, one in known.items()],
        missing=[listed_missing(name, _titles(one)) for name, one in studies.items() if one.missing],
        verdicts=verdicts(desk, findings_on(desk, LOADS)) or "",
        steps_head=Heading("Steps of the dead loads"),
        steps=steps_of(desk, {name: in_order(one.trace, ORDER) for name, one in known.items()}, "p_D") or "",
    )
    return Sheet(LOADS, "Loads", "—", blocks)

UPRIGHT = 60.0  # degrees from which an assembly hangs its outer layers on fasteners


def has_loads(desk: Desk) -> bool:
    """Whether any weight or any load of the place is known."""
    known = any(part.load for one in desk.dossier.dead_loads.values() for part in one.layers)
    return known or site_stated(desk)


def _assembly(desk: Desk, name: str, one: DeadLoad) -> Block:
    """Layers from the outside in, their framing beside them, the sum, and what hangs on fasteners."""
    system = desk.system
    title = desk.dossier.assemblies[name].title or ""
    columns = (
        Column(f"{plain(name)}  {plain(title)}".strip(), "layer, from the outside in", 0),
        Column("Weight {p_l}", load_unit(system), 36, "right"), Column("of it framing", load_unit(system), 36, "right"),
        Column("Density from", "", 46),
    )  # fmt: skip
    rows = [_layer(number, part, system) for number, part in enumerate(one.layers, 1)]
    total = load(one.total, system) if one.total is not None else "not known"
    rows.append(Row(("Dead load", total, NONE, "sum of the layers"), total=True))
    if one.on_plan is not None and one.on_plan != one.total:
        rows.append(Row(("Dead load on plan", load(one.on_plan, system), NONE, "by the slope")))
    if one.on_fasteners is not None:
        sloped = desk.dossier.assemblies[name].slope < UPRIGHT
        hung = "what lies on the insulation" if sloped else "what hangs on fasteners"
        rows.append(Row(("of it outside the insulation", load(one.on_fasteners, system), NONE, hung)))
    return Table(columns, tuple(rows))


def _layer(number: int, part: LayerLoad, system: str) -> Row:
    source = source_words(part.source) if part.source else NOT_GIVEN
    if part.mark in ("memory", "derived"):
        source += f" {NOT_REREAD}"
    counted = part.source != UNCOUNTED
    weight = load(part.load, system) if counted else NONE
    return Row((f"{number} {plain(part.title)}", weight, load(part.of_members, system) if part.of_members else NONE, source))


def _titles(one: DeadLoad) -> tuple[str, ...]:
    titles = {part.name: part.title for part in one.layers}
    return tuple(f"density and thickness of {titles.get(name, name)}" for name in one.missing)
