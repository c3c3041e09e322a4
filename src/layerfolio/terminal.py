"""The terminal's short answer: results of each assembly and opening, the building's heat loss, findings, cautions."""

from typing import Any

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.dossier import Dossier
from layerfolio.studies.types import ThermalStudy
from layerfolio.units.show import fixed, in_units, significant

FINAL_SAY = "A licensed professional and the authority having jurisdiction have the final say."


def summary(dossier: Dossier) -> str:
    """Everything `check` prints, as one text."""
    lines = [dossier.project.project.title, ""]
    lines += [_assembly(name, study, dossier.system) for name, study in dossier.thermal.items()]
    lines += _envelope(dossier)
    lines += ["", "Findings"]
    for finding in dossier.findings:
        lines += _finding(finding)
    if dossier.cautions:
        lines += ["", "To look at again"]
        lines += [f"  {c.path}: {c.message}" for c in dossier.cautions]
    lines += ["", verdicts(dossier), FINAL_SAY]
    return "\n".join(lines)


def verdicts(dossier: Dossier) -> str:
    """How many findings have each verdict, in one line."""
    counts = [(verdict, sum(f.verdict is verdict for f in dossier.findings)) for verdict in Verdict]
    return ", ".join(f"{verdict} {count}" for verdict, count in counts if count)


def after_build(dossier: Dossier) -> str:
    """What `build` prints below the name of the package."""
    count = len(dossier.cautions)
    things = f"{count} thing{'s' * (count != 1)} to look at again: layerfolio check"
    return "\n".join([f"findings: {verdicts(dossier)}", *([things] if count else [])])


def _assembly(name: str, study: ThermalStudy, system: str) -> str:
    if study.asked is None:
        return f"  {name}  no thermal figure for {', '.join(study.missing)}"
    r, u = study.asked.resistance, study.asked.transmittance
    words = f"R {fixed(r, 2)} m²·K/W, U {significant(u, 3)} W/(m²·K)"
    if system == "customary":
        shown_r, shown_u = fixed(in_units(r, "h.ft2.F/Btu"), 1), significant(in_units(u, "Btu/(h.ft2.F)"), 3)
        words = f"R {shown_r} ft²·°F·h/Btu, U {shown_u} Btu/(h·ft²·°F) ({words})"
    return f"  {name}  {words}  [{study.method.replace('-', ' ')}]  {study.assembly.title}"


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
        detail = "; ".join(filter(None, (f"asked {finding.asked}", f"provided {finding.given}", detail)))
    return [*lines, f"                   {detail}"] if detail else lines
