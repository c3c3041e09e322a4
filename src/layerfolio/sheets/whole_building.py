"""The whole building: every part of the envelope, the sum, the code's own sum beside it, the design heat loss, the steps."""

from layerfolio.catalogue.sources import printed
from layerfolio.codes.findings import limits_of_u
from layerfolio.codes.register_types import State
from layerfolio.drawing.heat_bars import HeatBar, heat_bars
from layerfolio.sheets import building_tables as tables
from layerfolio.sheets.blocks import Calculation, Column, Figure, Head, Heading, Row, Sheet, Table, VerdictCell
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.close_steps import close
from layerfolio.sheets.desk import BUILDING, RECORD, Desk
from layerfolio.sheets.figures import with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.templates import Marked
from layerfolio.steps.trace import Entry, Section, Trace
from layerfolio.studies.envelope_types import BuildingStudy

WIDTHS = {"letter": 180.0, "a4": 180.0, "tabloid": 193.95, "a3": 191.0}
ASSEMBLY_AGAINST_GROUND = "ground"


def whole_building(desk: Desk) -> Sheet | None:
    """Sheet C3; None for a project whose envelope was not studied."""
    study: BuildingStudy | None = desk.dossier.building
    if study is None or not study.parts:
        return None
    system, book = desk.system, desk.book
    judged = desk.dossier.envelope
    code = tables.code_rows(judged, system) if judged else None
    chart = _chart(desk, study)
    blocks = desk.templates.blocks(
        "whole-building",
        head=Head("", "Whole building: heat through the envelope", "size, figure, conductance"),
        parts=tables.parts(study, _counts(desk), system, book, limits_of_u(desk.dossier.findings)),
        joins=tables.joins(study, system, book) or "",
        sums=tables.sums(study, system),
        areas=Marked(_areas(study, system)),
        not_counted=Marked(_not_counted(desk)),
        ground=Marked(_ground(desk)),
        missing=[Marked(plain(line)) for line in study.lacking],
        code=code or "",
        code_note=Marked(_code_note(judged, system)) if code else "",
        verdicts=_verdicts(desk) or "",
        temperatures=Marked(_temperatures(study, system)),
        chart=Figure(chart) if chart else "",
        loss_note=Marked(_loss_note(desk, study)),
        no_loss=Marked("" if chart else _no_loss(desk, study)),
        steps_head=Heading("Steps"),
        steps=building_steps(study, desk),
    )
    return Sheet(BUILDING, "Whole building: heat", "—", blocks)


def building_steps(study: BuildingStudy, desk: Desk) -> Calculation:
    """The steps of the sum and of the heat loss; a section without an entry is left out."""
    made = calculation(Trace(tuple(_filled(study.trace.entries))), desk.system, desk.book, total="H_T")
    return Calculation("", "", tuple(map(close, made.steps)))


def _filled(entries: tuple[Entry, ...]) -> list[Entry]:
    following = (*entries[1:], Section(""))
    pairs = zip(entries, following, strict=True)
    return [one for one, after in pairs if not (isinstance(one, Section) and isinstance(after, Section))]


def _counts(desk: Desk) -> dict[str, int]:
    return {name: one.count for name, one in desk.dossier.openings.items()}


def _chart(desk: Desk, study: BuildingStudy):
    loss = study.heat_loss
    if loss is None:
        return None
    kinds = [(part.kind, part.title) for part in study.parts]
    bars = [
        HeatBar(f"{name}  {title}" if title else name, watts, kind)
        for (name, watts), (kind, title) in zip(loss.by_part, kinds, strict=True)
    ]
    if loss.air is not None:
        bars.append(HeatBar("air change", loss.air, "air"))
    return heat_bars(bars, system=desk.system, width=WIDTHS[desk.dossier.project.project.page])


def _areas(study: BuildingStudy, system: str) -> str:
    """What the areas hold, what stands under From, and in brackets."""
    gross = [step.about for step in study.trace.steps() if step.formula.name == "net_area"]
    words = "Areas of assemblies are those of the project file, which states them without openings."
    if gross:
        names = plain(", ".join(gross))
        words = f"Openings were taken off the areas of {names} as the project file states them; the others hold none."
    words += " _From_ names the sheet of the calculation, or the source mark of a stated figure."
    return words + (" In brackets: m², m, W/(m²·K), W/(m·K), W/K, W." if system == "customary" else "")


def _ground(desk: Desk) -> str:
    """Why the figure of a floor over the ground differs from the one on its own sheet."""
    names = list(desk.dossier.ground)
    if not names:
        return ""
    sheets = ", ".join(f"{name}-T" for name in names)
    return (
        f"{{U}} of {plain(', '.join(names))} counts the ground, or the space below, by ISO 13370 ({plain(sheets)}); the sheet of "
        "the assembly judges the layers by the rule of the set."
    )


def _not_counted(desk: Desk) -> str:
    """Joins without a linear transmittance, named one by one."""
    without = [one for one in desk.dossier.project.joins if one.psi is None]
    if not without:
        return ""
    names = "; ".join(plain(f"{one.at} {', '.join(one.of)}") for one in without)
    return f"Not counted, because the project file states no {{psi_j}}: {names}. What they lose comes on top."


def _code_note(judged: object, system: str) -> str:
    """What this sum holds, and what it lacks."""
    words = "Parts that the set limits, each with the set's own figure; joins and air are not in it."
    if judged.lacking:
        words += " No sum without " + plain(", ".join(judged.lacking)) + "."
    unsettled = [row for row in judged.rows if row.question and row.asked is not None]
    if unsettled:
        names = plain(", ".join(row.name for row in unsettled))
        words += f" What is asked of {names} is open; the most demanding of the possible figures stands in the sum."
    if judged.trade_off_designed is not None and judged.trade_off_limit is not None:
        traded = [row for row in judged.trade_off_rows if row.group != "window"]
        names = ", ".join(f"{row.name} ({row.note})" if row.note else row.name for row in traded)
        words += (
            f" Trade-off among {plain(names)}: {with_unit(judged.trade_off_designed, 'H_T', system, 4)} provided, "
            f"{with_unit(judged.trade_off_limit, 'H_T', system, 4)} asked."
        )
        if len(traded) < len(judged.trade_off_rows):
            words += " Windows are traded only among those of one orientation."
    return words


def _verdicts(desk: Desk) -> Table | None:
    """The findings on this sum, with their lines in the record."""
    found = [one for one in desk.dossier.findings if one.step == BUILDING]
    if not found:
        return None
    columns = (Column("Question", width=42), Column("Asked and provided", width=80), Column("Verdict"))
    rows = tuple(
        Row((
            f"**{plain(one.question)}**\n{RECORD}, line {desk.line(one)}",
            "\n".join(filter(None, (plain(one.asked), plain(one.given)))), VerdictCell(one.verdict, plain(one.what_follows)),
        ))
        for one in found
    )  # fmt: skip
    return Table(columns, rows)


def _temperatures(study: BuildingStudy, system: str) -> str:
    loss = study.heat_loss
    if loss is None:
        return ""
    inside, outside = (with_unit(one, "theta_i", system) for one in (loss.indoor, loss.outdoor))
    return f"Room air {inside}, outdoor design temperature {outside}. Largest part first."


def _loss_note(desk: Desk, study: BuildingStudy) -> str:
    """What the figure is, and what it is not."""
    loss = study.heat_loss
    if loss is None:
        return ""
    words = ["Steady heat loss without sun, people or equipment; no size of a heating system."]
    ground = [name for name, one in desk.dossier.assemblies.items() if one.faces == ASSEMBLY_AGAINST_GROUND]
    if ground:
        words.append(
            f"Against the ground ({plain(', '.join(ground))}) the outdoor temperature stands in for the milder ground: "
            "the loss there is overstated."
        )
    if loss.air is None:
        words.append(f"Without the air: the project file lacks {plain(loss.lacking)}. The total is higher.")
    else:
        practice = printed("common-practice")
        words.append(f"Leakage in use as a twentieth of the air change at 50 Pa is {practice}; it decides nothing.")
        words += _recovered(desk)
    return " ".join(words)


def _recovered(desk: Desk) -> list[str]:
    """That the recovery of the fan is taken as stated while its paper is open, with the row of the register."""
    register = desk.dossier.register
    rows = [one for one in register.of("heat-recovery", "claim") if one.waits] if register else []
    states = {State.EXPIRED: "has expired", State.MISSING: "is missing"}
    return [
        f"Heat recovery stands as stated; its document {states.get(one.state, 'is not beside this set')} ({one.number})."
        for one in rows[:1] if desk.dossier.project.building.ventilation
    ]  # fmt: skip


def _no_loss(desk: Desk, study: BuildingStudy) -> str:
    if study.conductance is None:
        return "Not calculated while the sum lacks a part."
    project = desk.dossier.project
    wanted = []
    if not (project.indoor and project.indoor.temperature):
        wanted.append("indoor.temperature")
    if not (project.climate and project.climate.heating_design_temperature):
        wanted.append("climate.heating_design_temperature")
    return f"Not calculated: the project file lacks {plain(', '.join(wanted))}."
