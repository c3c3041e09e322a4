"""Titles of the charts of one month: what makes it the worst or the best."""

from collections.abc import Sequence

from layerfolio.drawing.moisture_axes import Part
from layerfolio.drawing.moisture_view import MonthView, Zone, nearest, node_words
from layerfolio.studies.condensation.types import CondensationStudy


def month_title(study: CondensationStudy, month: MonthView, found: Sequence[Zone], hatched: bool) -> list[Part]:
    """The month, what makes it the worst or the best, and where water gathers; most telling first."""
    run = study.expected
    wet = bool(run.planes())
    flow = run.month(month.name).flow
    if month.worst:
        what = "most condensation" if wet else "nearest to saturation"
    else:
        what = ("most drying" if flow < 0 else "least condensation") if wet else "farthest from saturation"
    parts: list[Part] = [(f"{month.name}, {what}:  ", "bold"), ("p", "oblique"), (", Pa", "regular")]
    if month.worst and month.profile.held:
        held = [zone.name for zone in found if set(zone.nodes) & set(month.profile.held)]
        where = f"plane {held[0]}" if len(held) == 1 and not held[0].startswith("in ") else ", ".join(held)
        parts.append((f"; water gathers at {where}", "regular"))
        if hatched:
            parts.append(("; hatched: over saturation", "regular"))
    elif month.worst:
        node, humidity = nearest(run, month.profile)
        parts.append((f"; {humidity * 100:.0f} % relative humidity at {node_words(study.assembly, run.nodes[node])}", "regular"))
    return parts
