"""The opening schedule: windows, doors and skylights with size, heat, evidence, escape, and the steps of computed ones."""

from layerfolio.sheets import opening_tables as tables
from layerfolio.sheets.blocks import Head, Heading, Sheet
from layerfolio.sheets.desk import OPENINGS, Desk
from layerfolio.sheets.figures import cell
from layerfolio.sheets.markup import plain
from layerfolio.sheets.opening_steps import opening_steps
from layerfolio.sheets.templates import Marked
from layerfolio.studies.envelope_types import OpeningStudy

DECLARED = "14351"
"""The number of the European product standard, as a basis names it."""


def opening_schedule(desk: Desk) -> Sheet | None:
    """Sheet C4; None for a project without openings."""
    studies: dict[str, OpeningStudy] = desk.dossier.openings
    if not studies:
        return None
    defaults, lacking = code_defaults(desk, studies)
    steps = opening_steps(studies.values(), desk.system, desk.book)
    blocks = desk.templates.blocks(
        "openings",
        head=Head("", "Opening schedule", "windows, doors, skylights"),
        schedule=tables.schedule(studies, desk.system),
        heat=tables.heat(desk, studies, defaults),
        marks=Marked(_marks(desk, studies)),
        declared=Marked(_declared(studies, defaults, lacking)),
        missing=[Marked(f"**{plain(name)}**: {plain(', '.join(one.missing))}") for name, one in studies.items() if one.missing],
        safety=tables.safety(studies, desk.system),
        reminder=Marked(_reminder(studies)),
        steps=steps or "",
        steps_head=Heading("Steps of the computed openings"),
    )
    return Sheet(OPENINGS, "Opening schedule", "—", blocks)


def code_defaults(desk: Desk, studies: dict[str, OpeningStudy]) -> tuple[dict[str, str], dict[str, str]]:
    """The set's own default transmittance of each opening without a rating, printed; and what the others lack for one."""
    from layerfolio.catalogue.opening_defaults import opening_defaults

    found, lacking = {}, {}
    for name, one in studies.items():
        if one.how == "stated" and "rated" in one.basis.lower():
            continue
        frame, glass = (getattr(one.stated, part, None) for part in ("frame", "glass"))
        defaults = opening_defaults(
            desk.dossier.project.code.set, one.kind, frame=getattr(frame, "material", None), panes=getattr(glass, "panes", None)
        )
        if defaults and defaults.transmittance:
            figure = cell(defaults.transmittance.value, "U_w", desk.system, 2, 2)
            found[name] = f"{figure} {desk.book.mark(defaults.transmittance)}"
        elif defaults and defaults.lacking:
            lacking[name] = ", ".join(defaults.lacking)
    return found, lacking


def _marks(desk: Desk, studies: dict[str, OpeningStudy]) -> str:
    """How the table is to be read."""
    words = "Sizes are taken over the frame."
    if desk.system == "customary":
        words += " In brackets: mm, m², W/(m²·K)."
    if any(one.how == "computed" for one in studies.values()):
        words += " Src of a computed value: marks of glass, frame and edge; † is not re-read in its source."
    if any(getattr(one.stated, "glass", None) is None and one.how == "stated" for one in studies.values()):
        words += " A stated value is taken as it stands; its document decides whether it is a rated one."
    return words


def _declared(studies: dict[str, OpeningStudy], defaults: dict[str, str], lacking: dict[str, str]) -> str:
    """On values declared to the European product standard; empty where there is none."""
    names = [name for name, one in studies.items() if DECLARED in one.basis]
    if not names:
        return ""
    words = (
        f"**{plain(', '.join(names))}:** a value declared to EN 14351-1 is found at other boundary conditions and for reference "
        "sizes of its own. It does not stand in for a value rated to the standard that the code names. The authority having "
        "jurisdiction may accept it, may ask for a rating of the same window, or for "
        + ("the code's default beside it." if set(names) & defaults.keys() else "a calculation at the code's own conditions.")
    )
    for name in names:
        if name in lacking:
            words += f" For the code's default of {plain(name)} the project file lacks {plain(lacking[name])}."
    return words


def _reminder(studies: dict[str, OpeningStudy]) -> str:
    """What the schedule does not settle about escape and glass."""
    words = []
    glazed = {name: one.stated for name, one in studies.items() if tables.glazed(one)}
    unknown = [name for name, stated in glazed.items() if getattr(stated, "safety_glazing", None) is None]
    if unknown:
        words.append(
            f"The project file does not say whether the glass of {plain(', '.join(unknown))} is safety glass: glass in and "
            "beside doors, low over a floor, at stairs and in wet rooms is to be marked on the drawings."
        )
    if not any(getattr(one.stated, "egress", None) for one in studies.values()):
        words.append("No opening is stated to be the way of escape of a sleeping room.")
    return " ".join(words)
