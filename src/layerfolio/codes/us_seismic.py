"""Whether a question of the seismic provisions of the American code is asked, by the category of the site."""

from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.lines_irc_place import seismic_category, townhouse
from layerfolio.codes.outcomes import Outcome


def not_asked(rows: dict[str, Any], about: Context) -> Outcome | None:
    """What stands before the question; None where the category asks it."""
    found = seismic_category(about)
    if found in rows["free"]:
        return Outcome(Verdict.NOT_ASKED, f"seismic design category {found}: only the wind tables are asked")
    if found in rows["townhouses"]:
        return _of_townhouses(found, townhouse(about))
    if found in rows["beyond"]:
        reason = f"seismic design category {found} is beyond the clause: a design by the building code"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "have the building designed for earthquakes")
    if found not in rows["asked"]:
        reason = f"{found!r} is no seismic design category" if found else "the seismic design category is not given"
        step = f"supply the seismic design category of the site, {', '.join(rows['known'])} (site_loads.seismic.category)"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, step)
    return None


def _of_townhouses(category: str, townhouse: bool | None) -> Outcome | None:
    if townhouse:
        return None
    if townhouse is None:
        reason = f"in seismic design category {category} it is asked of townhouses alone"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, "state building.townhouse")
    return Outcome(Verdict.NOT_ASKED, f"seismic design category {category}: of detached dwellings it is not asked")
