"""Explanation sheets: one question, one assembly, its numbers by reference to the studies and findings."""

from layerfolio.assembly.members import plural
from layerfolio.codes.explanations import Explanation
from layerfolio.codes.findings import Finding
from layerfolio.codes.us_class import retarder_class
from layerfolio.drawing.mini import mini_section
from layerfolio.sheets.blocks import Column, Figure, Head, NoteBox, Row, Sheet, Table, VerdictCell
from layerfolio.sheets.desk import CRITERIA, RECORD, Desk
from layerfolio.sheets.explanation_papers import evidence_of, proved
from layerfolio.sheets.figures import permeance_text
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.sheets.templates import Marked
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.studies.types import LayerVapour, VapourStudy
from layerfolio.units.show import significant

TOPICS = ("vapour", "structure", "air", "thermal")
"""Topics of findings that bear on a panel that braces and controls vapour and air, and on the wall around it."""
CLADDING = "/cladding-attachment"
"""Question on what hangs outside the frame: it does not bear on a panel inside."""


def explanation_sheet(desk: Desk, number: int, one: Explanation) -> Sheet:
    """Sheet X<number> from templates/explanations/<question>.txt."""
    assembly = desk.dossier.assemblies[one.assembly]
    layer = assembly.layer(one.layer)
    tag = f"X{number}"
    drawing = mini_section(assembly, layer.name, _tags(desk, one))
    blocks = desk.templates.blocks(
        f"explanations/{one.question}",
        head=Head(tag, "Explanation", plain(f"for {one.assembly}, layer {layer.number}; drawing {one.assembly}")),
        members=_members(desk, one),
        title=layer.title,
        number=str(layer.number),
        permeance_answer=Marked(_permeance_answer(desk, one)),
        air_answer=Marked(_air_answer(desk, one)),
        outside_answer=Marked(_outside_answer(desk, one)),
        drawing=Figure(drawing),
        comparison=_comparison(desk, one),
        record=f"sheet {RECORD}",
        numbers=_numbers(desk, one),
        moisture_sheet=f"{one.assembly}-V",
        conditions=_conditions(desk, one),
        checks=_checks(desk, one),
        evidence=Marked(evidence_of(desk, layer)),
        bracing=_bracing(desk, one, assembly.kind.replace("-", " ")),
        note_box=NoteBox("Official's note", ("accepted", "accepted with condition", "not accepted"), 3),
    )
    return Sheet(tag, f"Explanation: inside sheathing of {one.assembly}", drawing.scale_text or "—", blocks)


def _members(desk: Desk, one: Explanation) -> str:
    framed = [x for x in desk.dossier.assemblies[one.assembly].layers if x.member and x.kind == "solid"]
    return plural(framed[0].member.name) if framed else "framing"


def _tags(desk: Desk, one: Explanation) -> tuple[tuple[int, str], ...]:
    """The panel, the main insulation and the outermost layer that counts, each with two or three words."""
    assembly, study = desk.dossier.assemblies[one.assembly], desk.dossier.vapour[one.assembly]
    panel = assembly.layer(one.layer)
    wanted = [panel]
    if study.main_insulation:
        wanted.append(assembly.layer(study.main_insulation))
    outer = [x for x in assembly.layers if x.counts and x.kind == "solid" and x not in wanted]
    wanted += outer[:1]
    return tuple((x.number, _short(x)) for x in sorted(wanted, key=lambda x: x.number))


def _short(layer) -> str:
    words = layer.title if len(layer.title) < 30 else layer.title[:28].rsplit(" ", 1)[0]
    words = words[:1].lower() + words[1:]
    return f"{words}, seams {layer.seams}" if layer.seams else words


def _findings(desk: Desk, one: Explanation) -> list[Finding]:
    found = [f for f in desk.dossier.findings if f.topic in TOPICS and f.assembly == one.assembly]
    return [f for f in found if not f.id.endswith(CLADDING)]


def _vapour_finding(desk: Desk, one: Explanation) -> Finding | None:
    return next((f for f in _findings(desk, one) if f.limit and f.limit.quantity == "W"), None)


def _permeance_answer(desk: Desk, one: Explanation) -> str:
    """What is known of the panel's permeance beside what is asked, in one clause."""
    control = desk.dossier.vapour[one.assembly].control
    if control is None or control.permeance_dry is None:
        return "its permeance is not known yet, so this is not shown"
    figure = permeance_text(control.permeance_dry, desk.system)
    words = f"{figure} in the dry cup"
    finding = _vapour_finding(desk, one)
    if finding is None:
        return f"{words}; this set states no limit here"
    limit = permeance_text(finding.limit.value, desk.system)
    shown = proved(desk, control.layer, "vapour")
    basis = "by the product's own test report" if shown else "not by a report of the product"
    return f"{words}, {basis}, where {limit} or less is asked ({plain(finding.clause)}): **{finding.verdict}**"


def _bracing(desk: Desk, one: Explanation, kind: str) -> str:
    """As what the panel is named; a set that has no line on it leaves it to others."""
    judged = any(f.topic == "structure" and "bracing" in f.id for f in _findings(desk, one))
    if judged:
        return f"It is named as bracing of the {kind}."
    return "It is named as bracing in the project file; not judged here."


def _air_answer(desk: Desk, one: Explanation) -> str:
    layer = desk.dossier.assemblies[one.assembly].layer(one.layer)
    if "air control" not in layer.serves:
        return "It is not named as the air control layer. "
    seams = f"With seams {layer.seams} it" if layer.seams in ("taped", "sealed") else "It"
    return f"{seams} is the air control layer too. "


def _outside_answer(desk: Desk, one: Explanation) -> str:
    study = desk.dossier.vapour[one.assembly]
    if study.ratio is None:
        return "How open the layers outside it are is not evaluated: a vapour figure is missing."
    openness = (
        "more open to vapour than the layers inside" if study.ratio > 1 else "**less** open to vapour than the layers inside"
    )
    return f"The layers outside the insulation are {openness} (ratio {significant(study.ratio, 2)} : 1, a rule of thumb)."


def _comparison(desk: Desk, one: Explanation) -> Table:
    """The prescriptive questions in short; the record has each in full."""
    widths = (("Question, clause", 29), ("What is asked", 35), ("What is provided", 40), ("Verdict", 0))
    columns = tuple(Column(title, width=width) for title, width in widths)
    rows = []
    for f in _findings(desk, one):
        if f.path == "prescriptive":
            dagger = f" {NOT_REREAD}" if f.mark == "memory" else ""
            cells = (f"{plain(f.question)}, {plain(f.clause)}", plain(f.asked) + dagger, plain(_by_number(desk, f)))
            rows.append(Row((*cells, VerdictCell(f.verdict, f"{RECORD}, line {desk.line(f)}"))))
    return Table(columns, tuple(rows))


def _by_number(desk: Desk, finding: Finding) -> str:
    """What is provided, layers by their numbers alone, which the drawing of the assembly shows."""
    words = finding.given
    for layer in desk.dossier.assemblies[finding.assembly].layers:
        words = words.replace(f"{layer.title} (layer {layer.number})", f"layer {layer.number}")
    return words


def _numbers(desk: Desk, one: Explanation) -> list[Marked]:
    """What the studies say of the panel, in both countries' terms; every number by reference to its study."""
    vapour, moisture = desk.dossier.vapour[one.assembly], desk.dossier.condensation[one.assembly]
    found = list(filter(None, (_class_words(desk, vapour.control), _ratio_words(vapour))))
    found += _balance_words(moisture)
    surface = moisture.surface
    if surface:
        need = (
            f", asked {surface.mould.required:.3f}{NOT_REREAD} in {surface.mould.critical_month}"
            if surface.mould.required
            else ""
        )
        found.append(f"lowest temperature factor of the inside surface {surface.provided:.3f}{need}")
    turning = [change.words for change in moisture.sensitivity if change.turns]
    if moisture.sensitivity:
        tried = f"{len(moisture.sensitivity)} changes tried on {one.assembly}-V"
        found.append(
            f"{tried}: " + (f"the answer turns with: {plain('; '.join(turning))}" if turning else "none turns the answer")
        )
    return [Marked(words) for words in found]


def _class_words(desk: Desk, control: LayerVapour | None) -> str:
    if control is None or control.permeance_dry is None:
        return ""
    cups = [f"{permeance_text(control.permeance_dry, desk.system)} dry cup"]
    if control.permeance_wet:
        cups.append(f"{permeance_text(control.permeance_wet, desk.system)} wet cup")
    if not desk.dossier.project.code.set.startswith("irc"):
        return ", ".join(cups)
    name = retarder_class(control.permeance_dry)
    return f"{', '.join(cups)}; in United States terms {f'Class {name}' if name else 'no vapour retarder'} by the dry cup"


def _ratio_words(vapour: VapourStudy) -> str:
    if not vapour.ratio:
        return ""
    return f"inside to outside {{s_d}} {significant(vapour.ratio, 2)} : 1, a rule of thumb and no verdict"


def _balance_words(moisture: CondensationStudy) -> list[str]:
    """The monthly result of both runs, or what is missing for it."""
    if not moisture.evaluated:
        missing = ", ".join((*moisture.missing_layers, *moisture.missing_inputs))
        return [f"monthly balance not evaluated; missing: {plain(missing)}"]
    rows = (("as expected", moisture.greatest_accumulation), ("less favourable", moisture.greatest_less_favourable))
    parts = [f"{words} " + (f"{significant(most, 3)} kg/m² at most" if most else "no condensation") for words, most in rows]
    return ["monthly balance: " + "; ".join(parts)]


def _conditions(desk: Desk, one: Explanation) -> list[str]:
    assembly = desk.dossier.assemblies[one.assembly]
    layer = assembly.layer(one.layer)
    found = [
        f"indoor humidity stays at or below the value on sheet {CRITERIA}",
        "every seam, edge and penetration is " + (layer.seams if layer.seams in ("taped", "sealed") else "sealed"),
        "panel and thickness are those of the report",
    ]
    if any(x.cavity == "ventilated" for x in assembly.layers):
        found.append("the ventilated cavity stays open at foot and head")
    found.append("no finish of low permeance is put on the weather side")
    return found


def _checks(desk: Desk, one: Explanation) -> list[str]:
    layer = desk.dossier.assemblies[one.assembly].layer(one.layer)
    thickness = layer.thickness.text if layer.thickness else "thickness"
    inner = [x.number for x in desk.dossier.assemblies[one.assembly].layers if x.number > layer.number]
    before = f" before layer {inner[0]}" if inner else ""
    return [
        f"panel mark: {thickness}, kind and lot",
        f"tape or sealant on all seams,{before} goes on",
        "nails as the engineer's drawings ask, not overdriven",
        "airtightness test with the panel exposed",
    ]
