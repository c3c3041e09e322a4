"""The terminal's short answer: results of each assembly and opening, the building's heat loss, findings, cautions."""

import textwrap
from collections.abc import Callable, Sequence
from typing import Any

from layerfolio.codes.findings import Finding, Verdict, limits_of_u
from layerfolio.dossier import Dossier
from layerfolio.studies.types import ThermalStudy
from layerfolio.units.show import fixed, in_units, significant

Placing = Callable[[str, str], object]
"""From the path and the message of a caution to what prints it with file, line and column."""
WIDE = 100
FIRST = 8
"""How many of the keys to answer first are listed."""
FINAL_SAY = "A licensed professional and the authority having jurisdiction have the final say."


def summary(dossier: Dossier, placing: Placing | None = None, wide: int = 0) -> str:
    """Everything `check` prints, as one text; `placing` is Loaded.problem_at, `wide` the most signs of a line (0: no end).

    Cautions stay on one line each: an editor finds the place by it.
    """
    lines = [dossier.project.project.title, ""]
    limits = limits_of_u(dossier.findings)
    lines += [_assembly(name, study, dossier.system, limits.get(name)) for name, study in dossier.thermal.items()]
    lines += _envelope(dossier)
    lines += ["", "Findings"]
    for finding in dossier.findings:
        lines += _finding(finding)
    lines += _open(dossier.findings)
    lines = _wrapped(lines, wide) if wide else lines
    if dossier.cautions:
        lines += ["", *_cautions(dossier, placing)]
    first = first_answers(dossier.findings)
    lines += _wrapped(first, wide) if wide else first
    lines += ["", verdicts(dossier), FINAL_SAY]
    return "\n".join(lines)


def _wrapped(lines: list[str], wide: int) -> list[str]:
    """No line longer than `wide` unless one word is; what goes on stands below the text of the line."""
    made = []
    for line in lines:
        lead = len(line) - len(line.lstrip())
        made += textwrap.wrap(
            line, wide, subsequent_indent=" " * (max(lead, 2) + 2 if lead < 19 else lead), drop_whitespace=True,
            break_long_words=False, break_on_hyphens=False, replace_whitespace=False,
        ) or [""]  # fmt: skip
    return made


def _open(findings: tuple[Finding, ...]) -> list[str]:
    """What does not meet line by line, then how much waits for evidence and judgement in each topic."""
    failing = [one for one in findings if one.verdict is Verdict.DOES_NOT_MEET]
    lines = []
    for one in failing:
        answered = f" (answered on the performance path by {one.answered_by})" if one.answered_by else ""
        lines.append(f"  {one.verdict}: {one.assembly or 'building'}, {one.clause}: {one.question}{answered}")
    for verdict in (Verdict.NEEDS_EVIDENCE, Verdict.NEEDS_JUDGEMENT):
        topics = [one.topic for one in findings if one.verdict is verdict]
        if topics:
            counts = ", ".join(f"{topic} {topics.count(topic)}" for topic in dict.fromkeys(topics))
            lines.append(f"  {verdict}: {counts}")
    return ["", "Open", *lines] if lines else []


def first_answers(findings: Sequence[Finding]) -> list[str]:
    """The keys of the project file that most open lines wait for, with the parts these lines are about; empty without any."""
    from layerfolio.codes.left_to_do import Kind, left_to_do

    wishes = [one for one in left_to_do(findings) if one.kind is Kind.ANSWER]
    if not wishes:
        return []
    lines = []
    for one in sorted(wishes, key=lambda one: -len(one.lines))[:FIRST]:
        count = f"{len(one.lines)} line{'s' if len(one.lines) > 1 else ''}"
        subjects = ", ".join(dict.fromkeys(subject or "building" for _, subject in one.lines))
        lines.append(f"  {count}: {one.words} ({subjects})")
    more = [f"  {len(wishes) - FIRST} more on sheet C2"] if len(wishes) > FIRST else []
    return ["", "Answer these first", *lines, *more]


def _cautions(dossier: Dossier, placing: Placing | None) -> list[str]:
    """Cautions, with their places where these are known."""
    shown = [f"  {placing(c.path, c.message) if placing else f'{c.path}: {c.message}'}" for c in dossier.cautions]
    return ["To look at again", *shown]


def verdicts(dossier: Dossier) -> str:
    """How many findings have each verdict, in one line; how many of those that fail the performance path answers."""
    counts = [(verdict, sum(f.verdict is verdict for f in dossier.findings)) for verdict in Verdict]
    answered = sum(f.verdict is Verdict.DOES_NOT_MEET and bool(f.answered_by) for f in dossier.findings)
    beside = {Verdict.DOES_NOT_MEET: f" ({answered} answered on the performance path)"} if answered else {}
    return ", ".join(f"{verdict} {count}{beside.get(verdict, '')}" for verdict, count in counts if count)


def after_build(dossier: Dossier, placing: Placing | None = None) -> str:
    """What `build` prints below the name of the package."""
    return "\n".join([f"findings: {verdicts(dossier)}", *(_cautions(dossier, placing) if dossier.cautions else [])])


def _assembly(name: str, study: ThermalStudy, system: str, limit: float | None = None) -> str:
    """One line; `limit` is what its transmittance is judged by unrounded, from which the print has to tell it."""
    if study.asked is None:
        return f"  {name}  no thermal figure for {', '.join(study.missing)}"
    r, u = study.asked.resistance, study.asked.transmittance
    words = f"R {fixed(r, 2)} m²·K/W, U {_told(u, limit)} W/(m²·K)"
    if system == "customary":
        btu = [None if one is None else in_units(one, "Btu/(h.ft2.F)") for one in (u, limit)]
        shown_r, shown_u = fixed(in_units(r, "h.ft2.F/Btu"), 1), _told(*btu)
        words = f"R {shown_r} ft²·°F·h/Btu, U {shown_u} Btu/(h·ft²·°F) ({words})"
    return f"  {name}  {words}  [{study.method.replace('-', ' ')}]  {study.assembly.title}"


def _told(value: float, limit: float | None) -> str:
    """Three significant digits, or as many as tell it from its limit."""
    digits = 3
    while limit and digits < 9 and abs(value / limit - 1) > 1e-9 and significant(value, digits) == significant(limit, digits):
        digits += 1
    return significant(value, digits)


def _envelope(dossier: Dossier) -> list[str]:
    """The openings, and what the whole building loses on the design day where that is known."""
    building = dossier.building
    lines = ["", *(_opening(one, dossier.system) for one in dossier.openings.values())] if dossier.openings else []
    if building is not None and building.heat_loss is not None:
        lines += ["", _heat_loss(building.heat_loss, dossier.system)]
    return lines


def _opening(one: Any, system: str) -> str:
    size = f"{one.count} x {one.kind}" if one.count > 1 else one.kind
    if one.transmittance is None:
        return f"  {one.name}  no U for this {one.kind}: {'; '.join(one.missing)}  {one.title}".rstrip()
    words = f"U {significant(one.transmittance, 3)} W/(m²·K)"
    if system == "customary":
        words = f"U {significant(in_units(one.transmittance, 'Btu/(h.ft2.F)'), 3)} Btu/(h·ft²·°F) ({words})"
    how = one.basis if one.how == "stated" else "computed by ISO 10077-1"
    return f"  {one.name}  {words}  [{how}]  {size} in {one.wall}  {one.title}".rstrip()


def _heat_loss(loss: Any, system: str) -> str:
    """The whole, or what goes through the envelope where the share of the air is not known."""
    watts = loss.transmission if loss.total is None else loss.total
    words = f"{significant(watts, 3)} W at {fixed(loss.outdoor, 0)} °C outside and {fixed(loss.indoor, 0)} °C inside"
    if system == "customary":
        outdoor, indoor = (fixed(in_units(one, "degF"), 0) for one in (loss.outdoor, loss.indoor))
        btu = f"{significant(in_units(watts, 'Btu/h'), 3)} Btu/h at {outdoor} °F outside and {indoor} °F inside"
        words = f"{btu} ({words})"
    lacking = f", without air: {loss.lacking} is missing" if loss.total is None else ""
    return f"  design heat loss in winter  {words}{lacking}"


def _finding(finding: Finding) -> list[str]:
    subject = finding.assembly or "building"
    lines = [f"  {finding.verdict:<16} {subject:<9} {finding.clause}: {finding.question}"]
    detail = finding.what_follows
    if finding.asked:
        amended = f"limit amended: {finding.amended}" if finding.amended else ""
        detail = "; ".join(filter(None, (f"asked {finding.asked}", f"provided {finding.given}", amended, detail)))
    return [*lines, f"                   {detail}"] if detail else lines
