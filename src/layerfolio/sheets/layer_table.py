"""The layer table of an assembly: numbered as the drawing's tags, every figure with its source mark."""

from layerfolio.assembly.types import Layer
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.figures import NONE, NOT_GIVEN, cell, in_system, thickness, unit_of
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import SourceBook
from layerfolio.steps.spelling import shown
from layerfolio.studies.types import LayerHeat, LayerVapour, ThermalStudy, VapourStudy
from layerfolio.units.show import fixed, length_figure

LETTERS = {
    "water control": "water W",
    "air control": "air A",
    "vapour control": "vapour V",
    "thermal control": "thermal T",
}

MOST_LOOSE_ROWS = 11
"""A longer table is set without extra space between its rows, so that it stays on the page of its drawing."""


def layer_table(thermal: ThermalStudy, vapour: VapourStudy, system: str, book: SourceBook) -> Table:
    """One row a layer, one more below it for its framing."""
    heat = {h.layer.number: h for h in thermal.layers}
    cups = {v.layer.number: v for v in vapour.layers}
    rows: list[Row] = []
    for layer in thermal.assembly.layers:
        rows.append(_layer_row(layer, heat.get(layer.number), cups.get(layer.number), system, book))
        if layer.member:
            rows.append(_member_row(layer, heat.get(layer.number), system, book))
    return Table(_columns(system), tuple(rows), extra=0.0 if len(rows) > MOST_LOOSE_ROWS else None)


def _columns(system: str) -> tuple[Column, ...]:
    if system == "customary":
        return (
            Column("No.", width=8), Column("Layer, from outside", width=58), Column("{d}", "in", 24, "right"),
            Column("{lam}", unit_of("lam", system), 26, "right"), Column("{R}", unit_of("R", system), 25, "right"),
            Column("{W}", unit_of("W", system), 23, "right"), Column("Src", width=16),
        )  # fmt: skip
    return (
        Column("No.", width=8), Column("Layer, from outside", width=62), Column("{d}", "mm", 14, "decimal"),
        Column("{lam}", "W/(m·K)", 16, "decimal"), Column("{R}", "m²·K/W", 16, "decimal"),
        Column("{s_d}", "m", 13, "decimal"), Column("Src", width=15), Column("Serves", width=36),
    )  # fmt: skip


def _conductivity(part) -> float | None:
    """λ of a layer or member: as given, or the reciprocal of the code's resistance per thickness."""
    if part.resistance:
        return None
    if part.resistivity:
        return 1 / part.resistivity.value
    return part.conductivity.value if part.conductivity else None


def _lam_cell(part, heat: LayerHeat | None, system: str) -> str:
    """λ with three decimals; four where the code prints a resistance per thickness, so that d / λ gives its R."""
    return cell(_conductivity(part) if heat else None, "lam", system, 4 if part.resistivity else 3, 3)


def _layer_row(layer: Layer, heat: LayerHeat | None, cups: LayerVapour | None, system: str, book: SourceBook) -> Row:
    figure = layer.resistance or layer.resistivity or layer.conductivity
    dry = layer.vapour.dry if layer.vapour else None
    missing = layer.counts and layer.kind == "solid" and not figure
    cells = [
        str(layer.number), plain(_name(layer)), thickness(layer.thickness, system),
        _lam_cell(layer, heat, system),
        NOT_GIVEN if missing else cell(heat.resistance if heat else None, "R", system, 3, 2),
        _vapour_cell(layer, cups, system),
        book.marks(*((figure,) if heat or missing else ()), *((dry,) if cups else ())) or NONE,
    ]  # fmt: skip
    return Row((*cells, _serves(layer, layer.counts)) if system == "metric" else tuple(cells))


def _vapour_cell(layer: Layer, cups: LayerVapour | None, system: str) -> str:
    if cups is None or (cups.s_d_dry is None and layer.kind == "cavity"):
        return NONE
    if cups.s_d_dry is None:
        return NOT_GIVEN
    if system == "metric":
        return shown(cups.s_d_dry, 3)
    if cups.permeance_dry is None:
        return NONE
    return f"{shown(in_system(cups.permeance_dry, 'W', system), 3)} ({shown(cups.permeance_dry * 1e12, 3)})"


def _member_row(layer: Layer, heat: LayerHeat | None, system: str, book: SourceBook) -> Row:
    member = layer.member
    figure = member.resistance or member.resistivity or member.conductivity
    cells = [
        f"{layer.number}a", plain(member_words(layer, system)), thickness(layer.thickness, system),
        _lam_cell(member, heat, system),
        cell(heat.member_resistance if heat else None, "R", system, 3, 2), NONE,
        book.marks(figure, member.share) if heat else NONE,
    ]  # fmt: skip
    serves = "fixing" if layer.kind == "cavity" else "structure"
    return Row((*cells, serves) if system == "metric" else tuple(cells))


def member_words(layer: Layer, system: str) -> str:
    """Framing in words: "spruce studs 38 at 600 mm, 20 %"; begins with a small letter."""
    member = layer.member
    words = member.title[:1].lower() + member.title[1:]
    sizes = [length_figure(q, system) for q in (member.width, member.spacing) if q]
    if sizes:
        words += " " + " at ".join(sizes) + ("\u00a0mm" if system == "metric" else "")
    share = fixed(member.share.value * 100, 1).removesuffix(".0")
    return f"{words}, {share}\u00a0%"


def _name(layer: Layer) -> str:
    return f"{layer.title}, seams {layer.seams}" if layer.seams else layer.title


def _serves(layer: Layer, counts: bool) -> str:
    words = [LETTERS.get(one, one) for one in layer.serves]
    if layer.insulating and "thermal control" not in layer.serves:
        words.append("thermal T")
    if not words and layer.kind == "cavity":
        words = ["drying, drainage"] if layer.cavity == "ventilated" else ["services"]
    return plain(", ".join(words)) or NONE
