"""Windows, doors, skylights and hatches under the American tables (IRC N1102.1.2): rated values are judged, a product without a
label takes the code's default, and what its maker declares to another standard is a question."""

from typing import Any

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.envelope import limit_of, limiting
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import TRANSMITTANCE, proved, unproved
from layerfolio.codes.us_fenestration_exceptions import by_mean, exempt, higher
from layerfolio.codes.us_openings import Case, case_of, defaults_of
from layerfolio.codes.wording import figure, listed, pair

STEP = "C4"


def judge_fenestration(requirement: Requirement, opening: Any, about: Context) -> Finding:
    """The finding on a window, door, glass block or skylight."""
    case = case_of(requirement, opening, about)
    found = _outcome(case)
    asked, given = _words(case)
    return finding(
        requirement, about, found.verdict, asked=asked, given=given, reason=found.reason, next_step=found.next_step,
        provided=None if case.value is None else Measured("U", case.value), place=case.resolved.limit.place,
        limit=None if case.limit is None else Measured("U", case.limit), amended=case.resolved.amended, step=STEP,
    )  # fmt: skip


def _outcome(case: Case) -> Outcome:
    if case.value is None:
        return missing(case.opening, case.about)
    if not case.by_default and not case.standard:
        return _not_rated(case)
    if case.within:
        return _shown(case)
    over = exempt(case) or by_mean(case) or higher(case)
    if over is not None:
        return over
    if case.resolved.question and judges.at_most(case.value, max(one.value for one in case.resolved.limits)):
        return Outcome(Verdict.NEEDS_JUDGEMENT, "the answer decides what is asked", f"answer: {case.resolved.question}?")
    words = "the code's default for a product without a label is over the limit" if case.by_default else (
        "the rated transmittance is over the limit"
    )
    return Outcome(Verdict.DOES_NOT_MEET, words, "a better rated product, or show it by total UA or a model")


def missing(opening: Any, about: Context) -> Outcome:
    """No value, and none by default: what would tell it."""
    found = defaults_of(opening, about)
    other = f", or {listed(found.lacking)} for the code's default" if found and found.lacking else ""
    return Outcome(
        Verdict.NEEDS_EVIDENCE, "no transmittance is stated and none can be computed",
        f"supply the rated transmittance with its document{other}",
    )  # fmt: skip


def _shown(case: Case) -> Outcome:
    if case.by_default:
        return Outcome(Verdict.MEETS, "the code's default for a product without a label is within the limit")
    if not case.papers:
        why = unproved(case.about, case.opening.name, case.opening.stated, "the rating")
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"the rated transmittance is within the limit, but {why}",
            f"supply the rating to {case.standard}: label or report with its number",
        )  # fmt: skip
    return Outcome(Verdict.MEETS, "the rated transmittance is within the limit")


def _not_rated(case: Case) -> Outcome:
    """A value to another standard is shown, with the code's default beside it, and not judged."""
    opening, rule = case.opening, case.requirement.rule
    holds = "reaches" if case.within else "does not reach"
    kind = "computed by ISO 10077-1" if opening.how == "computed" else opening.basis or "no basis stated"
    found = defaults_of(opening, case.about)
    beside = ""
    if found and found.transmittance:
        passes = "reaches" if judges.at_most(found.transmittance.value, case.limit) else "does not reach"
        beside = f"; the code's default without a label, {case.shown(found.transmittance.value)}, {passes} it"
    elif found and found.lacking:
        beside = f"; the code's default wants {listed(found.lacking)}"
    rated = " or ".join(rule.get("rated_of", {}).get(opening.kind, rule["rated"]))
    number = case.shown(case.value)
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"{rule['rated_place']} asks for one rated to {rated}; {number}, {kind}, {holds} the figure, "
        f"at other boundary conditions and perhaps another size{beside}",
        f"ask the authority: does {number}, {kind}, serve here; or supply a rating to {rated}",
    )  # fmt: skip


def _words(case: Case) -> tuple[str, str]:
    opening, about = case.opening, case.about
    basis = "computed by ISO 10077-1" if opening.how == "computed" else opening.basis or "no basis stated"
    basis = "the code's default for a product without a label" if case.by_default else basis
    where = f", zone {about.zone_words}" if about.zone_words and not case.resolved.amended else ""
    asked = f"{case.shown(case.limit)} or less{where}"
    if case.value is None:
        return asked, "no transmittance"
    shown, limit = pair("U", case.value, case.limit, 2, customary=about.customary, both=about.both)
    return f"{limit} or less{where}", f"{shown}, {basis}"


def judge_hatch(requirement: Requirement, opening: Any, about: Context) -> Finding:
    """A hatch has the transmittance or the insulation that is asked of what it lies in."""
    host = about.envelope.thermal.get(opening.wall)
    rule = next(limiting(about, host.assembly), None) if host else None
    settled = limit_of(rule, host.assembly, about) if rule else None
    limit, value = settled.limit.value if settled else None, opening.transmittance
    how = {"customary": about.customary, "both": about.both}
    if value is None:
        found = Outcome(Verdict.NEEDS_EVIDENCE, "its insulation is not in the project file", "supply its R or its transmittance")
    elif limit is None or not judges.at_most(value, limit):
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, "1/U counts films and edges, the clause the insulation by its R alone",
            f"supply the R of its insulation, as much as is asked of {opening.wall}",
        )  # fmt: skip
    elif settled.question:
        found = Outcome(Verdict.MEETS, "it is within the lowest figure that may be asked of what it lies in")
    else:
        found = Outcome(Verdict.MEETS, "it has the transmittance that is asked of what it lies in")
    if found.verdict is Verdict.MEETS and not proved(about, opening.name, opening.stated, TRANSMITTANCE):
        why = unproved(about, opening.name, opening.stated, "the transmittance")
        found = Outcome(Verdict.NEEDS_EVIDENCE, f"{found.reason}, but {why}", f"supply the report of {opening.name}")
    asked = f"insulated as {opening.wall}" + (f": {figure('U', limit, **how)} or less, or its R" if limit is not None else "")
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, step=STEP, asked=asked,
        given="no transmittance" if value is None else figure("U", value, **how),
        provided=None if value is None else Measured("U", value), limit=None if limit is None else Measured("U", limit),
    )  # fmt: skip
