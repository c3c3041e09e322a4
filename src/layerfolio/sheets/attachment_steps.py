"""The steps of attachments through insulation: the loads at yield stand together, so that they fold into one table."""

from layerfolio.sheets.blocks import Calculation
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.structure_parts import in_order, steps_of
from layerfolio.steps.trace import Trace
from layerfolio.studies.structure_types import Attachment

LAST = ("yield_root",)


def attachment_steps(desk: Desk, studies: dict[str, Attachment]) -> Calculation | None:
    """All attachments, numbered through; None without one."""
    return steps_of(desk, {name: folded(one.trace) for name, one in studies.items()}, "Z_y")


def folded(trace: Trace) -> Trace:
    """In each section the roots of the modes' equations come last: first the coefficients of every mode, then all loads."""
    return in_order(trace, LAST)
