"""The bracing schedule: each line of bracing with its panels, what is asked and provided, an elevation, the steps."""

from layerfolio.codes.naming import called
from layerfolio.codes.wording import listed
from layerfolio.sheets import bracing_tables as tables
from layerfolio.sheets.blocks import Figure, Head, Heading, Sheet
from layerfolio.sheets.bracing_demand import line_traces
from layerfolio.sheets.bracing_steps import bracing_steps
from layerfolio.sheets.bracing_views import elevations
from layerfolio.sheets.desk import BRACING, Desk
from layerfolio.sheets.markup import plain
from layerfolio.sheets.structure_parts import caution, findings_on, listed_missing, verdicts
from layerfolio.studies.structure_types import WallLineStudy

CONTROLS = ("air control", "vapour control", "water control")


def _goes_on(desk: Desk, lines: dict[str, WallLineStudy]) -> list[str]:
    """Of each wall whose bracing panel controls air, vapour or water too: the elevations leave a part of that layer out."""
    found = []
    for name in dict.fromkeys(one.assembly for one in lines.values()):
        layers = desk.dossier.assemblies[name].layers if name in desk.dossier.assemblies else ()
        for layer in layers:
            controls = [one.partition(" ")[0] for one in CONTROLS if one in layer.serves]
            if "bracing" in layer.serves and controls:
                found.append(
                    f"The panels drawn are those that brace. As control of {listed(controls)} {plain(called(layer))} of "
                    f"{plain(name)} goes on without a break above and below openings; its pieces there count for no bracing "
                    "and are not drawn."
                )
    return found


def bracing_schedule(desk: Desk) -> Sheet | None:
    """Sheet ST2; None for a project without lines of bracing."""
    lines: dict[str, WallLineStudy] = desk.dossier.wall_lines
    if not lines:
        return None
    schedule, panels = tables.lines(desk, lines), tables.panels(lines, desk.system)
    drawings = elevations(desk, lines, (schedule, *((panels,) if panels else ())))
    blocks = desk.templates.blocks(
        "bracing",
        head=Head("", "Bracing schedule", "lines of bracing, panels, elevations"),
        caution=caution(),
        lines=schedule,
        panels=panels or "",
        shears=tables.shears(lines, desk.system) or "",
        in_brackets=desk.system == "customary",
        missing=[listed_missing(name, one.missing) for name, one in lines.items() if one.missing],
        verdicts=verdicts(desk, findings_on(desk, BRACING)) or "",
        drawings=list(map(Figure, drawings)),
        goes_on=_goes_on(desk, lines),
        steps_head=Heading("Steps"),
        steps=bracing_steps(desk, line_traces(desk)) or "",
    )
    return Sheet(BRACING, "Bracing schedule", drawings[0].scale_text if drawings else "—", blocks)

