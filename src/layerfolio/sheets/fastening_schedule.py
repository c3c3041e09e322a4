"""Fastening: nails that the set asks for, fasteners of panels and cladding, the attachment through insulation by steps."""

from layerfolio.drawing.fastener_sketch import FastenerView, fastener_sketch
from layerfolio.sheets import attachment_tables as tables
from layerfolio.sheets.attachment_steps import attachment_steps
from layerfolio.sheets.blocks import Figure, Head, Heading, Sheet
from layerfolio.sheets.desk import FASTENING, Desk
from layerfolio.sheets.formats import FIELDS
from layerfolio.sheets.nailing import let_in, nailing_table, panel_table
from layerfolio.sheets.structure_parts import caution, findings_on, listed_missing, verdicts
from layerfolio.sheets.templates import Marked
from layerfolio.studies.structure_types import Attachment


def fastening_schedule(desk: Desk) -> Sheet | None:
    """Sheet ST3; None where the project states no line of bracing and no cladding hangs outside insulation."""
    studies: dict[str, Attachment] = desk.dossier.attachments
    lines = desk.dossier.wall_lines
    if not lines and not studies:
        return None
    calculated = {name: one for name, one in studies.items() if one.modes}
    sketches = _sketches(desk, calculated)
    blocks = desk.templates.blocks(
        "fastening",
        head=Head("", "Fastening schedule", "nails, panels, cladding through insulation"),
        caution=caution(),
        nails=nailing_table(desk) or "",
        let_in=any(map(let_in, lines.values())),
        panels=panel_table(desk, lines) if lines else "",
        cladding=tables.fasteners(studies, desk.system) if studies else "",
        sketches=[Figure(one) for one in sketches],
        modes=tables.modes(calculated, desk.system) if calculated else "",
        demand=tables.demand(calculated, desk.system) if calculated else "",
        missing=[listed_missing(name, one.missing) for name, one in studies.items() if one.missing],
        refused=[listed_missing(name, one.refused) for name, one in studies.items() if one.refused],
        brackets=Marked(_brackets(desk, bool(calculated))),
        verdicts=verdicts(desk, findings_on(desk, FASTENING)) or "",
        steps_head=Heading("Steps of the attachment"),
        steps=attachment_steps(desk, calculated) or "",
    )
    return Sheet(FASTENING, "Fastening schedule", sketches[0].scale_text if sketches else "—", blocks)


def _sketches(desk: Desk, calculated: dict[str, Attachment]) -> list:
    """One for each attachment that is not drawn yet: equal ones once."""
    width = FIELDS[desk.dossier.project.project.page]
    views: dict[tuple, list[str]] = {}
    for name, one in calculated.items():
        if one.side_thickness and one.penetration and one.diameter:
            views.setdefault((one.side_thickness, one.gap or 0.0, one.penetration, one.diameter), []).append(name)
    named = [FastenerView(", ".join(names), *sizes) for sizes, names in views.items()]
    return [fastener_sketch(one, units=desk.system, width=width) for one in named]


def _brackets(desk: Desk, forces: bool) -> str:
    """What stands in brackets on the sheet: forces only where some were calculated."""
    if desk.system != "customary":
        return ""
    return "In brackets: mm, N." if forces else "In brackets: mm."
