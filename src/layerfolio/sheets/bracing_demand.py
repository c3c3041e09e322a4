"""What is asked of lines of bracing, step by step: the traces of the judges behind those of the geometry."""

from layerfolio.sheets.desk import Desk
from layerfolio.steps.trace import Step, Trace


def line_traces(desk: Desk) -> dict[str, Trace]:
    """By line: the steps of its panels, then those of the length or force that its path asks."""
    lines, found = desk.dossier.wall_lines, {}
    if not lines:
        return found
    from layerfolio.codes.context import Envelope, context
    from layerfolio.codes.wall_lines import line_judged

    dossier = desk.dossier
    about = context(dossier.project, Envelope(dossier.thermal, dossier.ground, dossier.openings, dossier.building, lines))
    for name, study in lines.items():
        judged = line_judged(study, about)
        asked = judged.trace.entries if judged and any(isinstance(one, Step) for one in judged.trace.entries) else ()
        found[name] = Trace((*study.trace.entries, *asked))
    return found
