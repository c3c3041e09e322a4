"""The steps of the heat through the ground, for the calculation sheet of an assembly that meets it."""

from dataclasses import replace

from layerfolio.catalogue.ground import ground_data
from layerfolio.sheets.blocks import Block, Column, Heading, Paragraph, ResultBox, Row, Space, Table
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.close_steps import close
from layerfolio.sheets.desk import BUILDING, RECORD, Desk
from layerfolio.sheets.figures import unit_of, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.studies.envelope_types import GroundStudy
from layerfolio.studies.ground import SUSPENDED, WALL
from layerfolio.units.show import fixed, in_units, significant

STANDARD = "ISO 13370:2017"


def ground_blocks(desk: Desk, name: str) -> list[Block]:
    """Steps, result and what the result serves, or what is missing and what may be stated, below the sheet's other steps,
    so that these never end with a table alone on a page; nothing off the ground."""
    study = desk.dossier.ground.get(name)
    if study is None:
        return []
    above: list[Block] = [Space(2.25), Heading(f"Heat through the ground by {STANDARD}: {study.kind}")]
    if study.transmittance is None:
        return [*above, *_wanted(desk, study)]
    made = calculation(study.trace, desk.system, desk.book, total="U_gr")
    steps = replace(made, steps=tuple(map(close, made.steps)))
    return [*above, steps, Space(1.75), _result(desk, study), Paragraph(_serves(study.kind))]


def _serves(kind: str) -> str:
    """What the value is for, and where the code's own figure is judged: a floor over a space is no floor on the ground."""
    asked = "of a floor over such a space is" if kind == SUSPENDED else "against the ground is a resistance by its own rule,"
    return (
        f"This value serves the sum of heat losses on {BUILDING}; no verdict rests on it. What the code asks {asked} "
        f"judged on {RECORD}. The formulas were read in a transcription, not in the standard, "
        f"and figures with {NOT_REREAD} not at all."
    )


def _result(desk: Desk, study: GroundStudy) -> ResultBox:
    """The transmittance and the two lengths that make it."""
    figures = [(f"{{U_gr}}, {unit_of('U_gr', desk.system)}", *_figure(study.transmittance, "U_gr", desk.system))]
    if study.characteristic_dimension is not None:
        figures.append((f"{{B}}, {unit_of('B', desk.system)}", *_figure(study.characteristic_dimension, "B", desk.system)))
    name = {WALL: "d_w", SUSPENDED: "d_gr"}.get(study.kind, "d_f")
    figures.append((f"{{{name}}}, {unit_of(name, desk.system)}", *_figure(study.equivalent_thickness, name, desk.system)))
    return ResultBox(tuple(figures), f"{STANDARD}, {study.kind}", None, f"for the heat loss on {BUILDING}; no verdict")


def _figure(value: float, quantity: str, system: str) -> tuple[str, str]:
    """The figure, and the SI figure behind it where customary units come first."""
    metric = fixed(value, 3) if quantity == "U_gr" else fixed(value, 2)
    if system == "metric":
        return metric, ""
    from layerfolio.glossary import term

    return significant(in_units(value, term(quantity).customary), 3), f"({metric})"


def _wanted(desk: Desk, study: GroundStudy) -> list[Block]:
    """What is missing, by its key in the project file, and the conductivities that may be stated for the ground."""
    blocks: list[Block] = [Paragraph(f"**Not calculated.** Not stated in the project file: {plain(', '.join(study.missing))}.")]
    if "ground.conductivity" not in study.missing:
        return blocks
    rows = tuple(
        Row((plain(title), with_unit(figure.value, "lam_g", desk.system, 2), desk.book.mark(figure)))
        for title, figure in ground_data().kinds
    )
    words = "None is assumed. Where nobody has measured the ground, one of these may be stated as `ground.conductivity`:"
    columns = (Column("Ground", width=54), Column("{lam_g}", width=54), Column("Src"))
    return [*blocks, Paragraph(words), Table(columns, rows)]
