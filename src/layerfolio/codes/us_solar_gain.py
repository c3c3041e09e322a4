"""Solar heat gain of glazing under the American tables (IRC N1102.1.2): by zone, with the two readings of one edition."""

from typing import Any

from layerfolio.codes import judges
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, by_zone, grouped
from layerfolio.codes.rating import rated_to
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import SOLAR, proved, square_metres, unproved
from layerfolio.codes.us_openings import defaults_of
from layerfolio.codes.wording import listed

STEP = "C4"
BY_INSULATION = "insulation R-values"
BY_SUM = ("total UA", "trade-off")


def judge_solar_gain(requirement: Requirement, opening: Any, about: Context) -> Finding:
    """The coefficient of a window, skylight or glass block; nothing is asked in cold and, by edition, marine zones."""
    if getattr(opening.stated, "glazed", None) is False:
        return finding(
            requirement, about, Verdict.NOT_ASKED, reason="it has no glass", asked="a coefficient of glass",
            given="no glass (glazed: false)", step=STEP,
        )  # fmt: skip
    limits = {zone: limit_in(requirement, opening, zone) for zone in about.zones}
    value, by_default = _value(opening, about)
    found = by_zone({zone: _in_zone(requirement, opening, value, by_default, zone, about) for zone in limits})
    shown = grouped({
        zone: _nothing(requirement, zone, about) if one is None else f"{one:.2f} or less" for zone, one in limits.items()
    })  # fmt: skip
    where = f", zone {about.zone_words}" if about.zone_words else ""
    basis = ", the code's default for a product without a label" if by_default else f", {opening.basis}" if opening.basis else ""
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, step=STEP,
        asked=f"{shown}{where}" if shown.startswith("nothing") else f"coefficient of {shown}{where}",
        given="not stated" if value is None else f"{value:.2f}{basis}",
    )  # fmt: skip


def limit_in(requirement: Requirement, opening: Any, zone: str) -> float | None:
    """The most that a zone allows; None where it asks nothing."""
    figures = requirement.figures
    table = figures.get("gain_skylight") if opening.kind == "skylight" else None
    return cell(table or figures["gain"], zone)


def _value(opening: Any, about: Context) -> tuple[float | None, bool]:
    """The coefficient, and whether it is the code's default."""
    if opening.solar_factor is not None:
        return opening.solar_factor, False
    found = defaults_of(opening, about)
    return (found.solar_factor.value, True) if found and found.solar_factor else (None, False)


def _in_zone(
    requirement: Requirement, opening: Any, value: float | None, by_default: bool, zone: str, about: Context
) -> Outcome:
    limit = limit_in(requirement, opening, zone)
    if limit is None:
        return _other_reading(requirement, value, zone, about)
    if value is None:
        found = defaults_of(opening, about)
        other = f", or {listed(found.lacking)} for the code's default" if found and found.lacking else ""
        return Outcome(
            Verdict.NEEDS_EVIDENCE, "no solar heat gain coefficient is stated", f"supply the rated coefficient{other}"
        )  # fmt: skip
    standard = rated_to(opening.basis, requirement.rule["rated"])
    if not by_default and not standard:
        holds = "is within" if judges.at_most(value, limit) else "is over"
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"a coefficient rated to NFRC 200 is asked; {value:.2f}, to another one, {holds} the limit",
            "ask the authority whether it serves, or supply the rating",
        )  # fmt: skip
    if judges.at_most(value, limit):
        if by_default or proved(about, opening.name, opening.stated, SOLAR):
            return Outcome(Verdict.MEETS, "the coefficient is within the limit")
        why = unproved(about, opening.name, opening.stated, "the rating")
        return Outcome(Verdict.NEEDS_EVIDENCE, f"within the limit, but {why}", "supply the label or report")
    return _over(requirement, opening, value, limit, zone, about)


def _nothing(requirement: Requirement, zone: str, about: Context) -> str:
    """What stands under *asked* where the table asks nothing: what the other table prints, where the two disagree."""
    other = _printed_otherwise(requirement, zone, about)
    if other is None:
        return "nothing"
    return f"nothing by {requirement.place}, {other:.2f} or less by {requirement.figures['other_place']}"


def _printed_otherwise(requirement: Requirement, zone: str, about: Context) -> float | None:
    """What the other of the two tables limits where this one asks nothing, unless the sum of the envelope settles it."""
    other = requirement.figures.get("other_reading", {}).get(zone.rstrip("ABC")) if not zone.endswith("C") else None
    return None if about.answer("code.energy_path") in BY_SUM else other


def _other_reading(requirement: Requirement, value: float | None, zone: str, about: Context) -> Outcome:
    """Nothing is asked; in zone 5 of 2021 only by one of the two tables, so that the chosen table decides."""
    other, path = _printed_otherwise(requirement, zone, about), about.answer("code.energy_path")
    if other is None:
        return Outcome(Verdict.NOT_ASKED, "no solar heat gain is limited here")
    place = requirement.figures["other_place"]
    if value is not None and judges.at_most(value, other):
        return Outcome(Verdict.NOT_ASKED, f"{requirement.place} asks nothing here; {place} prints {other:.2f}, which it keeps")
    if path == BY_INSULATION and value is not None:
        return Outcome(
            Verdict.DOES_NOT_MEET, f"{place}, the chosen table, prints {other:.2f}; {requirement.place} asks nothing",
            "another glass, or take the table of transmittances",
        )  # fmt: skip
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"{requirement.place} asks nothing here, {place} prints {other:.2f}",
        "ask the authority: which of the two tables limits the solar heat gain here?",
    )  # fmt: skip


def _over(requirement: Requirement, opening: Any, value: float, limit: float, zone: str, about: Context) -> Outcome:
    figures, rule = requirement.figures, requirement.figures.get("skylights_to")
    if opening.kind == "skylight" and rule and zone.rstrip("ABC") in rule["zones"] and judges.at_most(value, rule["at_most"]):
        words = f"a skylight of {rule['at_most']:.2f} or less is left out"
        if rule["mark"] == "memory":
            return Outcome(Verdict.NEEDS_JUDGEMENT, f"{words}, by memory", "confirm the note of the adopted table")
        return Outcome(Verdict.NOT_ASKED, words)
    some = [one for one in about.envelope.openings.values() if one.kind in requirement.of_openings]
    known = [(_value(one, about)[0], limit_in(requirement, one, zone), one) for one in some]
    over = sum(one.total_area for own, most, one in known if most is not None and (own is None or not judges.at_most(own, most)))
    most = requirement.rule["exempt"]["glazed"]
    if judges.at_most(over, most):
        return Outcome(Verdict.NOT_ASKED, f"{square_metres(most, about.customary)} of glazing are left out ({figures['glazed']})")
    same = [(own, one) for own, own_limit, one in known if own_limit == limit]
    if all(own is not None for own, _ in same):
        mean = sum(own * one.total_area for own, one in same) / sum(one.total_area for _, one in same)
        if judges.at_most(mean, limit):
            return Outcome(
                Verdict.NEEDS_EVIDENCE, f"the mean of all by area, {mean:.3f}, is within the limit, for products that are "
                f"glass by more than half ({figures['average_gain']})",
                "supply the rating of each, and show that each is glass by more than half",
            )  # fmt: skip
    return Outcome(Verdict.DOES_NOT_MEET, "the coefficient is over the limit", "another glass, or the performance path")
