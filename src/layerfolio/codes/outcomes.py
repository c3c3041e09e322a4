"""What a judge comes to before it is a finding, and what several possible answers come to together."""

from collections.abc import Sequence
from dataclasses import dataclass

from layerfolio.codes.climate_zones import either
from layerfolio.codes.findings import Verdict


@dataclass(frozen=True, slots=True)
class Outcome:
    """A verdict with its reason and the next step, empty where nothing is to do."""

    verdict: Verdict
    reason: str
    next_step: str = ""


BEST = (
    Verdict.MEETS, Verdict.NOT_ASKED, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE, Verdict.DOES_NOT_MEET,
)  # fmt: skip


def best(outcomes: Sequence[Outcome]) -> Outcome:
    """Of several ways that are open, the one that goes furthest."""
    return min(outcomes, key=lambda one: BEST.index(one.verdict))


def worst(outcomes: Sequence[Outcome]) -> Outcome:
    """Of conditions that must all hold, the one that stands in the way; reasons of equal ones stand together."""
    found = max(outcomes, key=lambda one: BEST.index(one.verdict))
    same = [one for one in outcomes if one.verdict is found.verdict]
    return Outcome(found.verdict, _joined([one.reason for one in same]), _joined([one.next_step for one in same]))


def agreed(outcomes: Sequence[Outcome], otherwise: Outcome) -> Outcome:
    """The first of the possible outcomes where all have its verdict, else `otherwise`."""
    return outcomes[0] if len({one.verdict for one in outcomes}) == 1 else otherwise


def by_zone(outcomes: dict[str, Outcome]) -> Outcome:
    """One outcome for all zones that may be meant, or the question which zone it is."""
    first, *_ = outcomes.values()
    if len({one.verdict for one in outcomes.values()}) > 1:
        shown = grouped({zone: str(one.verdict) for zone, one in outcomes.items()})
        step = "settle the zone of the place (code.zone)"
        if len({zone.rstrip("ABC") for zone in outcomes}) == 1:
            step = f"write {either(tuple(outcomes))} in code.zone"
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"it turns on the zone: {shown}", step)
    reasons = {zone: one.reason for zone, one in outcomes.items()}
    return Outcome(first.verdict, grouped(reasons), _joined([one.next_step for one in outcomes.values()]))


def grouped(texts: dict[str, str]) -> str:
    """Texts by zone, equal ones together: the text alone where all are equal, else "in 4A, 4B: ...; in 4C: ..."."""
    zones: dict[str, list[str]] = {}
    for zone, text in texts.items():
        zones.setdefault(text, []).append(zone)
    if len(zones) == 1:
        return next(iter(zones))
    return "; ".join(f"in {', '.join(names)}: {text}" for text, names in zones.items())


def _joined(texts: list[str]) -> str:
    return "; ".join(dict.fromkeys(text for text in texts if text))
