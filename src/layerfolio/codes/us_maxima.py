"""Means of windows, doors and skylights by area, which no trade under the American energy chapter may pass (IRC N1102.5)."""

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.outcomes import Outcome, by_zone, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import square_metres
from layerfolio.codes.wording import figure
from layerfolio.units.table import unit_factor

NAMES = (("vertical", "windows and doors"), ("skylights", "skylights"))
BTU = unit_factor("Btu/(h.ft2.F)", "transmittance")


def groups(requirement: Requirement, about: Context) -> list[tuple[str, dict, float | None]]:
    """Each group of openings that there is, its limits by zone, and its mean transmittance."""
    found = []
    for name, words in NAMES:
        row = requirement.rule[name]
        some = [one for one in about.envelope.openings.values() if one.kind in row["kinds"]]
        if some:
            mean = None
            if all(one.transmittance is not None for one in some):
                mean = sum(one.transmittance * one.total_area for one in some) / sum(one.total_area for one in some)
            found.append((words, row["by_zone"], mean))
    return found


def maxima(requirement: Requirement, about: Context) -> Outcome:
    found = {}
    for zone in about.zones:
        number = zone.rstrip("ABC")
        said = [Outcome(Verdict.MEETS, "no mean is over its limit")]
        for words, table, mean in groups(requirement, about):
            if number in table and mean is None:
                said.append(Outcome(Verdict.NEEDS_EVIDENCE, f"the mean of {words} lacks a value", "supply the transmittances"))
            elif number in table and not judges.at_most(mean, table[number] * BTU):
                said.append(Outcome(Verdict.DOES_NOT_MEET, f"the mean of {words} is over what a trade may reach", "better ones"))
        found[zone] = worst(said)
    return by_zone(found)


def asked_words(requirement: Requirement, about: Context) -> str:
    how = {"customary": about.customary, "both": about.both, "digits": 2}
    numbers = list(dict.fromkeys(zone.rstrip("ABC") for zone in about.zones))
    shown = []
    for words, table, _ in groups(requirement, about):
        limits = dict.fromkeys(figure("U", table[n] * BTU, **how) for n in numbers if n in table)
        if limits:
            shown.append(f"{words} {' or '.join(limits)} or less")
    gain = f"solar heat gain of a simulated trade {requirement.figures['gain']:.2f} in zones 1 to 3"
    return "means by area: " + "; ".join([*shown, gain])


def given_words(requirement: Requirement, about: Context) -> str:
    """Each mean with what it is made of: heat through the group over its area, as the openings' sheet has both."""
    how = {"customary": about.customary, "both": about.both, "digits": 2}
    shown = []
    for words, _, mean in groups(requirement, about):
        if mean is None:
            shown.append(f"{words} not known")
            continue
        kinds = next(requirement.rule[key]["kinds"] for key, said in NAMES if said == words)
        area = sum(one.total_area for one in about.envelope.openings.values() if one.kind in kinds)
        through = figure("H_T", mean * area, customary=about.customary, both=about.both, digits=2)
        shown.append(f"{words} {through} over {square_metres(area, about.customary)}: {figure('U', mean, **how)}")
    return "; ".join(shown) or "no openings"
