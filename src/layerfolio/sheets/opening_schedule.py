"""The opening schedule: windows, doors and skylights with size, heat, evidence, escape, and the steps of computed ones."""

from layerfolio.sheets import opening_tables as tables
from layerfolio.sheets.blocks import Head, Heading, Sheet
from layerfolio.sheets.desk import OPENINGS, Desk
from layerfolio.sheets.markup import plain
from layerfolio.sheets.opening_steps import opening_steps
from layerfolio.sheets.templates import Marked
from layerfolio.studies.envelope_types import OpeningStudy

DECLARED = "14351"
"""The number of the European product standard, as a basis names it."""


def opening_schedule(desk: Desk) -> Sheet | None:
    """Sheet C4; None for a project without openings."""
    studies: dict[str, OpeningStudy] = dict(getattr(desk.dossier, "openings", None) or {})
    if not studies:
        return None
    defaults = code_defaults(desk, studies)
    steps = opening_steps(studies.values(), desk.system, desk.book)
    blocks = desk.templates.blocks(
        "openings",
        head=Head("", "Opening schedule", "windows, doors, skylights"),
        schedule=tables.schedule(studies, desk.system),
        heat=tables.heat(desk, studies, defaults),
        marks=Marked(_marks(desk, studies)),
        declared=Marked(_declared(studies, bool(defaults))),
        missing=[Marked(f"**{plain(name)}**: {plain(', '.join(one.missing))}") for name, one in studies.items() if one.missing],
        safety=tables.safety(studies, desk.system),
        reminder=Marked(_reminder(studies)),
        steps=steps or "",
        steps_head=Heading("Steps of the computed openings"),
    )
    return Sheet(OPENINGS, "Opening schedule", "—", blocks)


def code_defaults(desk: Desk, studies: dict[str, OpeningStudy]) -> dict[str, str]:
    """The set's own default transmittance of each opening, printed, where the set has a table of them."""
    return {}


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


def _declared(studies: dict[str, OpeningStudy], with_defaults: bool) -> str:
    """On values declared to the European product standard; empty where there is none."""
    names = [name for name, one in studies.items() if DECLARED in one.basis]
    if not names:
        return ""
    return (
        f"**{plain(', '.join(names))}:** a value declared to EN 14351-1 is found at other boundary conditions and for reference "
        "sizes of its own. It does not stand in for a value rated to the standard that the code names. The authority having "
        "jurisdiction may accept it, may ask for a rating of the same window, or for "
        + ("the code's default beside it." if with_defaults else "a calculation at the code's own conditions.")
    )


def _reminder(studies: dict[str, OpeningStudy]) -> str:
    """What the schedule does not settle about escape and glass."""
    words = []
    glazed = {name: one.stated for name, one in studies.items() if one.kind in tables.GLAZED}
    unknown = [name for name, stated in glazed.items() if getattr(stated, "safety_glazing", None) is None]
    if unknown:
        words.append(
            f"The project file does not say whether the glass of {plain(', '.join(unknown))} is safety glass: glass in and "
            "beside doors, low over a floor, at stairs and in wet rooms is to be marked on the drawings."
        )
    if not any(getattr(one.stated, "egress", None) for one in studies.values()):
        words.append("No opening is stated to be the way of escape of a sleeping room.")
    return " ".join(words)
