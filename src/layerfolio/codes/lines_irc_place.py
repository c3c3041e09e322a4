"""What the American code asks of place and building before a line is judged: wind, earthquake, the height of the storey."""

from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import FOOT, MPH, NOISE, Facts, seismic
from layerfolio.codes.line_types import Answer


def exposure(known: Facts) -> str:
    """The exposure category by its letter; empty where the project does not give one."""
    found = str(known.about.answer("site_loads.exposure") or "").strip().upper().removeprefix("EXPOSURE").strip()
    return found if found in ("B", "C", "D") else ""


def speed(known: Facts) -> float | None:
    """Basic (ultimate) wind speed, mph."""
    found = known.about.answer("site_loads.wind_speed")
    return found.value / MPH if found else None


def category(known: Facts) -> str:
    return seismic_category(known.about)


def seismic_category(about: Context) -> str:
    """The seismic design category in capitals; empty where it is not given."""
    return str(seismic(about, "category") or "").strip().upper()


def townhouse(about: Context) -> bool | None:
    """Whether the building is a townhouse; a house of which nothing else is said is none. None where it is not known."""
    found = about.answer("building.townhouse")
    return False if found is None and about.occupancy == "house" else found


def storey_height(known: Facts) -> float | None:
    """Height in ft of the line's own storey, as the project lists storeys from the ground up; never less than the wall's.

    Where the line's place among them is not known the tallest counts; None where a height that counts is not stated.
    """
    heights = [one.height.value if one.height else None for one in known.about.answer("storeys") or ()]
    own = len(heights) - 1 - (known.floors or 0)
    if known.about.storeys == len(heights) and own >= 0:
        heights = [heights[own]]
    if not heights or None in heights:
        return None
    return max(*heights, known.study.height) / FOOT


def beyond(known: Facts, tables: dict[str, Any]) -> str:
    """Which limit of the method is passed; empty within all of them."""
    ends, found = tables["ends"], category(known)
    rows, storey = ends["categories"], storey_height(known)
    if speed(known) >= ends["speed_below"] - 1e-3:
        return f"wind of {ends['speed_below']} mph or more"
    if found not in (*rows["none"], *rows["detached_none"], *rows["table"]):
        return f"seismic category {found}"
    if known.storeys > ends["storeys"] or known.floors > ends["floors"]:
        return f"more than {ends['storeys']} storeys"
    if known.study.height > ends["wall_height"] * FOOT + NOISE:
        return f"a wall over {ends['wall_height']} ft high"
    if storey is not None and storey > ends["storey"]["by_exception"] + NOISE:
        return "a storey over 13 ft 7 in (R301.3)"
    return ""


def tall(known: Facts, tables: dict[str, Any], clause: str, asked: str, said: str) -> Answer | None:
    """What keeps the method open where the storey or its studs are taller than the clause takes without an exception."""
    rule, storey, wall = tables["ends"]["storey"], storey_height(known), known.study.height / FOOT
    if storey is None and wall + tables["wind_factors"]["floor_framing"] > rule["plain"] + NOISE:
        reason = "with its floor framing the storey may be over 11 ft 7 in, where R301.3 asks more"
        return Answer(Verdict.NEEDS_EVIDENCE, clause, asked, said, reason, "state the height of the storey (storeys)")
    passed = ["the storey is over 11 ft 7 in"] if storey is not None and storey > rule["plain"] + NOISE else []
    passed += ["the wall is higher than studs of 10 ft with their plates"] if wall > rule["wall"] + NOISE else []
    if not passed:
        return None
    reason = f"{' and '.join(passed)}: R301.3 then asks studs by the exceptions of R602.3.1, or a design of the studs"
    return Answer(Verdict.NEEDS_JUDGEMENT, clause, asked, said, reason, "show the studs against R301.3 and R602.3.1")
