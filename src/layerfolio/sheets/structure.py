"""The structural sheets of a project, in their order, and what each of them answers."""

from layerfolio.sheets.blocks import Sheet
from layerfolio.sheets.bracing_schedule import bracing_schedule
from layerfolio.sheets.desk import BRACING, FASTENING, LOADS, STRUCTURE, Desk
from layerfolio.sheets.fastening_schedule import fastening_schedule
from layerfolio.sheets.loads_sheet import has_loads, loads_sheet
from layerfolio.sheets.structural_basis import has_basis, panels_inside, structural_basis


def structural_sheets(desk: Desk) -> tuple[Sheet, ...]:
    """ST1 to ST4, those that the project gives something to show for; none while its loads were not studied."""
    if not desk.dossier.dead_loads:
        return ()
    made = (structural_basis(desk), bracing_schedule(desk), fastening_schedule(desk), loads_sheet(desk))
    return tuple(one for one in made if one is not None)


def structural_answers(desk: Desk) -> tuple[tuple[str, str, bool], ...]:
    """Number, what the sheet answers, and whether it is there: for the list of the guide."""
    studied, lines = bool(desk.dossier.dead_loads), bool(desk.dossier.wall_lines)
    fastened = lines or bool(desk.dossier.attachments)
    basis, loads = studied and has_basis(desk), studied and has_loads(desk)
    stepped = ", step by step" if any(one.modes for one in desk.dossier.attachments.values()) else ""
    inside = "what a panel inside changes, " if basis and panels_inside(desk) else ""
    return (
        (STRUCTURE, f"structural basis: figures of the place, path, {inside}where to stop", basis),
        (BRACING, "each line of bracing: panels, asked and provided, elevation to scale, steps", studied and lines),
        (FASTENING, f"nails of frame and panels; cladding through insulation{stepped}", studied and fastened),
        (LOADS, "dead load of each assembly by its layers; snow, wind, earthquake as given", loads),
    )  # fmt: skip
