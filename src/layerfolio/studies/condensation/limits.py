"""The limits of the two-period method. A limit that was not re-read decides only where every reading of it agrees."""

from layerfolio.assembly.types import Assembly
from layerfolio.studies.condensation.timber import enclosed_timber, wood_rise
from layerfolio.studies.condensation.types import Check, Verdict

METHOD, WOOD = "din-4108-3-2018", "din-68800-2"
RESERVE = 0.250
"""Drying reserve of timber assemblies closed on both sides, kg/m2 (din-68800-2, read in study notes)."""
RESERVE_UPRIGHT = 0.100
"""The same for walls and floors (from memory)."""
WORST_FIRST: tuple[Verdict, ...] = ("does not meet", "needs evidence", "needs judgement", "meets")

ROUNDING = 1e-9
"""Share of a limit that is the computer's own rounding, no more."""

Planes = tuple[tuple[tuple[str, str], float], ...]


def overall(verdicts: list[Verdict]) -> Verdict:
    """The verdict on several: the same when they agree, a failure among others that pass needs judgement."""
    kinds = [one for one in WORST_FIRST if one in verdicts]
    return kinds[0] if len(kinds) == 1 else "needs judgement"


def worst(verdicts: list[Verdict]) -> Verdict:
    """The verdict on a list of checks of which every one must hold."""
    return next((one for one in WORST_FIRST if one in verdicts), "meets")


def reserve_limit(assembly: Assembly) -> float | None:
    """Drying reserve asked, kg/m2: 0.250 of roofs, 0.100 of walls and floors; None where no timber is enclosed."""
    if not enclosed_timber(assembly):
        return None
    return RESERVE if assembly.kind == "roof" else RESERVE_UPRIGHT


def judge_period(
    assembly: Assembly, planes: Planes, condensed: float, evaporated: float, limit: float, reserve: float | None
) -> tuple[Check, ...]:
    """Every check of one balance; amounts kg/m2."""
    found = [
        _check("condensate dries in summer", condensed, evaporated, "found", METHOD, "against what can evaporate"),
        _check("amount of condensate", condensed, limit, "found", METHOD, _why(limit)),
        *_wood(assembly, planes),
    ]
    if reserve is not None:
        found.append(_reserve(evaporated - condensed, reserve, enclosed_timber(assembly)))
    return tuple(found)


def _check(name: str, value: float, limit: float, mark: str, source: str, reason: str) -> Check:
    within = value <= limit * (1 + ROUNDING)
    return Check(name, value, limit, "meets" if within else "does not meet", mark, source, reason)


def _why(limit: float) -> str:
    return "general limit" if limit >= 1.0 else "limit where a layer at the plane absorbs nothing"


def _wood(assembly: Assembly, planes: Planes) -> list[Check]:
    """The rise in every wooden layer at a wet plane, each as if it took all of that plane's condensate."""
    found = []
    for between, amount in planes:
        for name in dict.fromkeys(between):
            layer = next((one for one in assembly.layers if one.name == name), None)
            rise = wood_rise(layer, amount) if layer else None
            if rise is None:
                continue
            title = f"moisture content of {name}, by mass"
            if rise.rise is None:
                reason = f"no density for {name}"
                found.append(Check(title, None, rise.limit, "needs evidence", "found", METHOD, reason))
            else:
                found.append(_check(title, rise.rise, rise.limit, "found", METHOD, "all the condensate in this layer"))
    return found


def _reserve(value: float, limit: float, timber: str) -> Check:
    """Of walls and floors the lower limit is from memory: between it and the one that was read nothing is decided."""
    verdict: Verdict = "meets" if value >= RESERVE else "does not meet"
    mark = "found"
    if limit < RESERVE:
        mark = "memory"
        if limit <= value < RESERVE:
            verdict = "needs judgement"
    return Check("drying reserve", value, limit, verdict, mark, WOOD, f"timber is closed in: {timber}")
