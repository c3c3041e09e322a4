"""Windows, doors and skylights against NBC 9.36.2.7: rated values are judged, declared ones are a question."""

from typing import Any, NamedTuple

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.limits import Resolved, resolve
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.rating import rated_to
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import TRANSMITTANCE, limit_figure, proved, square_metres, unproved
from layerfolio.codes.wording import figure, listed, pair

STEP = "C4"


class _Case(NamedTuple):
    requirement: Requirement
    opening: Any
    about: Context
    resolved: Resolved

    @property
    def limit(self) -> float | None:
        return self.resolved.limit.value

    def reaches(self, transmittance: float) -> bool:
        return judges.at_most(transmittance, self.limit, 2)


def judge_rated(requirement: Requirement, opening: Any, about: Context) -> Finding:
    """The finding on a window, door or skylight."""
    case = _Case(requirement, opening, about, resolve(requirement, opening, about))
    found, limit, value = _outcome(case), case.limit, opening.transmittance
    asked, given = _words(case)
    return finding(
        requirement, about, found.verdict, asked=asked, given=given, reason=found.reason, next_step=found.next_step,
        provided=None if value is None else Measured("U", value, 2), place=case.resolved.limit.place,
        limit=None if limit is None or case.resolved.question else Measured("U", limit, 2),
        amended=case.resolved.amended, step=STEP,
    )  # fmt: skip


def _outcome(case: _Case) -> Outcome:
    opening, rule = case.opening, case.requirement.rule
    if opening.transmittance is None:
        return _missing(opening)
    if case.resolved.question:
        shown = " or ".join(figure("U", one.value, digits=2) for one in _apart(case.resolved))
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"the answer decides what is asked: {shown}", f"answer: {case.resolved.question}?"
        )  # fmt: skip
    standard = rated_to(opening.basis, rule["rated"]) if opening.how == "stated" else ""
    if not standard:
        return _not_rated(case)
    judged = _compared(case, standard)
    if judged.verdict is Verdict.MEETS and not proved(case.about, opening.name, opening.stated, TRANSMITTANCE):
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"{judged.reason}, but {_unproved(case.about, opening, 'the rating')}",
            f"supply the rating to {standard}: label or report with its number",
        )  # fmt: skip
    return judged


def _unproved(about: Context, opening: Any, what: str) -> str:
    return unproved(about, opening.name, opening.stated, what)


def _apart(resolved: Resolved) -> list[Any]:
    return sorted({one.value: one for one in resolved.limits}.values(), key=lambda one: one.value)


def _missing(opening: Any) -> Outcome:
    lacking = f" (missing for its calculation: {listed(list(opening.missing))})" if opening.missing else ""
    return Outcome(
        Verdict.NEEDS_EVIDENCE, f"no transmittance is stated and none can be computed{lacking}",
        "supply the rated transmittance with its basis and document",
    )  # fmt: skip


def _not_rated(case: _Case) -> Outcome:
    """A value to another standard: other boundary conditions, perhaps another size. The number is shown, not judged."""
    opening, rated = case.opening, " or ".join(case.requirement.rule["rated"])
    holds = "reaches" if case.reaches(opening.transmittance) else "does not reach"
    kind = "computed by ISO 10077-1" if opening.how == "computed" else opening.basis
    number = figure("U", opening.transmittance, customary=case.about.customary, digits=2)
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"{case.requirement.rule['rated_place']} asks for a value rated to {rated}; {number}, {kind}, "
        f"{holds} the figure, at other boundary conditions and perhaps another size",
        f"ask the authority: does a value of {number}, {kind}, serve here; or supply a rating to {rated}",
    )  # fmt: skip


def _compared(case: _Case, standard: str) -> Outcome:
    opening = case.opening
    if case.reaches(opening.transmittance):
        return Outcome(Verdict.MEETS, "the rated transmittance is within the limit")
    rating = getattr(opening.stated, "energy_rating", None)
    least = _least_rating(case)
    if rating is not None and least is not None and rating >= least and standard == "CSA A440.2":
        return Outcome(Verdict.MEETS, f"its energy rating of {rating:g} reaches {least:g}")
    rule = case.requirement.rule.get("one_door")
    if opening.kind == "door" and rule and judges.at_most(opening.transmittance, rule["at_most"], 2):
        return _one_door(case, rule)
    return Outcome(Verdict.DOES_NOT_MEET, "the rated transmittance is over the limit", _remedy(opening))


def _remedy(opening: Any) -> str:
    other = "trade it with windows of the same orientation, or " if opening.kind == "window" else ""
    return f"choose a better rated product, or {other}show it by the performance path"


def _least_rating(case: _Case) -> float | None:
    table = case.requirement.figures.get("energy_rating")
    return max((table[zone] for zone in case.about.zones), default=None) if table and not case.resolved.amended else None


def _one_door(case: _Case, rule: dict[str, Any]) -> Outcome:
    """The exception is for one door of the building: doors over the limit are counted."""
    over = [
        one for one in case.about.envelope.openings.values()
        if one.kind == "door" and (one.transmittance is None or not case.reaches(one.transmittance))
    ]  # fmt: skip
    count = sum(one.count for one in over)
    most = figure("U", rule["at_most"], customary=case.about.customary, digits=2)
    if count == 1:
        return Outcome(Verdict.MEETS, f"one door may have up to {most} ({rule['clause']}); it is the only one over the limit")
    return Outcome(
        Verdict.DOES_NOT_MEET, f"{rule['clause']} lets one door have up to {most}; {count} are over the limit",
        "choose better doors, so that one at most is over the limit",
    )  # fmt: skip


def _words(case: _Case) -> tuple[str, str]:
    opening, about = case.opening, case.about
    value, limit, how = opening.transmittance, case.limit, {"customary": about.customary, "both": about.both}
    basis = "computed by ISO 10077-1" if opening.how == "computed" else opening.basis or "no basis stated"
    given = "no transmittance" if value is None else f"{figure('U', value, digits=2, **how)}, {basis}"
    if case.resolved.question:
        return "depends on an answer that is missing", given
    asked = figure("U", limit, digits=2, **how)
    if value is not None:
        shown, asked = pair("U", value, limit, 2, **how)
        given = f"{shown}, {basis}"
    least = _least_rating(case)
    rating = f", or an energy rating of {least:g} or more" if least is not None else ""
    stated = getattr(opening.stated, "energy_rating", None)
    given += f", energy rating {stated:g}" if stated is not None else ""
    where = f", zone {about.zone_words}" if about.zone_words and not case.resolved.amended else ""
    return f"{asked} or less{rating}{where}", given


def judge_glass_block(requirement: Requirement, opening: Any, about: Context) -> Finding:
    """Transmittance of glass block, and the area of all of it together."""
    limit, source = limit_figure(requirement, about, "at_most")
    most = requirement.figures["area_at_most"]
    area = sum(one.total_area for one in about.envelope.openings.values() if one.kind == opening.kind)
    value = opening.transmittance
    if not judges.at_most(area, most):
        found = Outcome(Verdict.DOES_NOT_MEET, f"{square_metres(area, about.customary)} of glass block is too much", "less of it")
    elif value is None:
        found = _missing(opening)
    elif judges.at_most(value, limit, 2):
        found = Outcome(Verdict.MEETS, "transmittance and area are within the limits")
        if not proved(about, opening.name, opening.stated, TRANSMITTANCE):
            found = Outcome(
                Verdict.NEEDS_EVIDENCE, _unproved(about, opening, "the transmittance"), "supply its report or data sheet"
            )
    else:
        found = Outcome(Verdict.DOES_NOT_MEET, "the transmittance is over the limit", "choose a better product")
    shown = "no transmittance" if value is None else figure("U", value, customary=about.customary, digits=2)
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, amended=source, step=STEP,
        asked=f"{figure('U', limit, customary=about.customary, digits=2)} or less, and together "
        f"{square_metres(most, about.customary)} of it or less",
        given=f"{shown}, {square_metres(area, about.customary)} together",
        provided=None if value is None else Measured("U", value, 2), limit=Measured("U", limit, 2),
    )  # fmt: skip


def judge_nominal(requirement: Requirement, opening: Any, about: Context) -> Finding:
    """Hatches and doors for vehicles: the nominal resistance of the insulation. 1/U less the films is the least it can be."""
    limit, source = limit_figure(requirement, about)
    value = 1 / opening.transmittance if opening.transmittance else None
    shown = figure("R", limit, customary=about.customary, digits=1)
    if value is None:
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, "its insulation is not in the project file", f"supply its nominal resistance, {shown} or more"
        )
    elif not judges.at_least(value - requirement.rule["films"], limit):
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, "1/U counts films and edges, the clause the nominal resistance of the insulation",
            f"supply the nominal resistance of its insulation, {shown} or more",
        )  # fmt: skip
    elif proved(about, opening.name, opening.stated, TRANSMITTANCE):
        found = Outcome(Verdict.MEETS, "1/U less the films reaches the nominal figure")
    else:
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, _unproved(about, opening, "the transmittance"), "supply its report or data sheet"
        )  # fmt: skip
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, amended=source, step=STEP,
        asked=f"nominal resistance of {shown} or more",
        given="not given" if value is None else f"1/U is {figure('R', value, customary=about.customary)}",
        provided=None if value is None else Measured("R", value), limit=Measured("R", limit),
    )  # fmt: skip
