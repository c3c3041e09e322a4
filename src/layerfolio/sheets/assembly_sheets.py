"""The sheets of one assembly: section, layers and results; then its calculations."""

from layerfolio.assembly.types import Assembly
from layerfolio.codes.findings import Finding, Verdict, limits_of_u
from layerfolio.drawing.marks import Drawing
from layerfolio.drawing.section import section
from layerfolio.sheets.blocks import (
    Band,
    Block,
    Column,
    Figure,
    Head,
    Heading,
    Paragraph,
    ResultBox,
    Row,
    Sheet,
    Space,
    Table,
)
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.cover import written
from layerfolio.sheets.desk import KIND_WORDS, RECORD, SOURCES, Desk, code_words
from layerfolio.sheets.figures import NOT_GIVEN, in_system, rounded, telling, unit_of, with_unit
from layerfolio.sheets.floor_notes import floor_notes
from layerfolio.sheets.formats import FIELDS, WIDE
from layerfolio.sheets.ground_steps import ground_blocks
from layerfolio.sheets.layer_table import MOST_LOOSE_ROWS, layer_table
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import MEANING, NOT_REREAD
from layerfolio.sheets.upright_section import upright_section
from layerfolio.studies.types import ThermalStudy
from layerfolio.units.show import fixed, significant


def assembly_sheet(desk: Desk, name: str) -> Sheet:
    """Drawing, layer table, result box."""
    one, page = desk.dossier.assemblies[name], desk.dossier.project.project.page
    drawing = section(one, units=desk.system, page=page, width=FIELDS[page], notes=page in WIDE, light=desk.is_light)
    table = layer_table(desk.dossier.thermal[name], desk.dossier.vapour[name], desk.system, desk.book)
    blocks: list[Block] = [
        Head(plain(name), plain(one.title if one.title != name else KIND_WORDS[one.kind]), plain(_phrase(desk, name))),
        Figure(drawing),
        table,
        Space(1.75),
        _box(desk, name),
        Paragraph(_key(one, desk.system)),
        *floor_notes(desk, name),
    ]
    if drawing.notes and len(table.rows) > MOST_LOOSE_ROWS:
        desk.moved_notes[name] = drawing.notes
    elif drawing.notes:
        blocks.append(Paragraph(_drawing_notes(drawing)))
    second, families = upright_section(desk, name, drawing)
    title = f"{KIND_WORDS[one.kind]} {name}: assembly"
    legend = tuple(dict.fromkeys((*drawing.families, *families)))
    return Sheet(name, title, drawing.scale_text or "—", (*blocks, *second), legend)


def has_vapour_sheet(one: Assembly) -> bool:
    """Assemblies in the ground have none: diffusion to the outside air is not their question."""
    return one.faces != "ground"


def _key(one: Assembly, system: str) -> str:
    letters = ", ".join(f"**{letter}** {words}" for letter, words in MEANING.items())
    cups = f" {{s_d}}: dry cup; both cups on {plain(one.name)}-V." if has_vapour_sheet(one) else " {s_d}: dry cup."
    brackets = "In brackets {d} in mm, {lam} in W/(m·K), {R} in m²·K/W, {W} in ng/(Pa·s·m²), {U} in W/(m²·K). "
    if system == "customary":
        return f"{brackets}Src: {letters}; see {SOURCES}. {NOT_REREAD} not re-read. {{W}}: dry cup."
    return f"Src: {letters}; see {SOURCES}. {NOT_REREAD} not re-read in its source.{cups}"


def _drawing_notes(drawing: Drawing) -> str:
    return "Drawing: " + plain("; ".join(note.rstrip(".") for note in drawing.notes)) + "."


def _phrase(desk: Desk, name: str) -> str:
    one = desk.dossier.assemblies[name]
    words = [written(one.area, desk.system)] if one.area else []
    if one.kind == "roof":
        words.append(f"slope {_slope(desk, one)}")
    return "; ".join([*words, f"faces {one.faces}" if one.faces != "ground" else "on the ground"])


def _slope(desk: Desk, one: Assembly) -> str:
    """A pitch as it was written, with its degrees; other slopes in degrees."""
    stated = desk.dossier.project.assemblies[one.name].slope
    degrees = f"{round(one.slope, 1):g}°"
    return f"{plain(stated.text)} ({degrees})" if stated and stated.text.endswith("12") else degrees


def _box(desk: Desk, name: str) -> ResultBox:
    study, finding = desk.dossier.thermal[name], desk.thermal_finding(name)
    result = study.final
    if result is None:
        words = "no thermal figure for " + ", ".join(study.missing)
        return ResultBox((("Result", NOT_GIVEN, ""),), plain(words), Verdict.NEEDS_EVIDENCE, "")
    U, limit = result.transmittance, limits_of_u(desk.dossier.findings).get(name)
    figures = [
        (f"{{{_corrected(study)}}}, {unit_of('U', desk.system)}", *_u_figure(U, U, limit, desk.system)),
        (f"{{R}} {_method(study.method)}, {unit_of('R', desk.system)}", *_figure(result.resistance, "R", desk.system, 2)),
    ]
    if finding is None:
        return ResultBox(tuple(figures), f"{_method(study.method)} method", None, "no limit is set by this set")
    whole = desk.judges_whole(finding)
    if whole:
        figures.append(_asked(finding, U, desk.system))
    remark = "; ".join(filter(None, (_margin(finding) if whole else "", f"{RECORD}, line {desk.line(finding)}")))
    judged = f"{code_words(desk)}, {finding.clause}"
    if not finding.limit and finding.verdict is Verdict.NEEDS_JUDGEMENT:
        judged += f": asked {finding.asked}"
    if not whole and finding.limit:
        judged += f": {finding.given.split(';')[0]}; asked {finding.asked.split(';')[0]}"
    return ResultBox(tuple(figures), plain(judged), finding.verdict, remark)


def _asked(finding: Finding, U: float, system: str) -> tuple[str, str, str]:
    """The limit as the third of the large figures."""
    limit = finding.limit.value
    if finding.limit.quantity == "U":
        return (f"{{U}} asked, {unit_of('U', system)}", *_u_figure(limit, U, limit, system))
    return (f"{{R}} asked, {unit_of('R', system)}", *_figure(limit, "R", system, 2))


def _u_figure(shown: float, value: float, limit: float | None, system: str) -> tuple[str, str]:
    """A transmittance with the digits that tell value and limit apart."""
    decimals = telling(value, limit, system)
    if decimals == 3:
        return _figure(shown, "U", system, 3)
    metric = fixed(shown, decimals)
    return (metric, "") if system == "metric" else (fixed(in_system(shown, "U", system), decimals), f"({metric})")


def _corrected(study: ThermalStudy) -> str:
    """The symbol of the transmittance that stands in the result: corrected where corrections count."""
    return "U" if study.final == study.asked else "U_c"


def _method(method: str) -> str:
    return {"isothermal-planes": "effective", "parallel-path": "parallel path", "combined": "total"}[method]


def _figure(value: float, quantity: str, system: str, decimals: int) -> tuple[str, str]:
    """The large figure and, in the customary system, the SI figure behind it in brackets."""
    metric = rounded(value, decimals)
    if system == "metric":
        return metric, ""
    converted = in_system(value, quantity, system)
    return (significant(converted, 3) if quantity == "U" else fixed(converted, 1)), f"({metric})"


def _margin(finding: Finding) -> str:
    """By how much the figure clears or misses the limit, rounded as the set rounds."""
    if not (finding.provided and finding.limit and finding.limit.value):
        return ""
    provided = finding.provided.value
    if finding.provided.decimals is not None:
        provided = round(provided, finding.provided.decimals)
    part = provided / finding.limit.value - 1
    return f"{abs(part) * 100:.0f}\u00a0% {'more' if part > 0 else 'less'} than asked" if abs(part) >= 0.005 else ""


def thermal_sheet(desk: Desk, name: str) -> Sheet:
    """Every step of the thermal study, temperatures at the interfaces, the band with what is asked."""
    study, one = desk.dossier.thermal[name], desk.dossier.assemblies[name]
    blocks: list[Block] = [Head(plain(name), "Thermal resistance and transmittance", _method_phrase(study.method))]
    blocks.append(calculation(study.trace, desk.system, desk.book))
    finding = desk.thermal_finding(name)
    if study.final and finding and finding.limit:
        blocks.append(
            Band(
                f"asked {plain(finding.asked)}",
                f"provided {_provided(desk, finding)}",
                finding.verdict,
                f"{RECORD}, line {desk.line(finding)}",
            )
        )
    if study.by_method:
        blocks += [Space(2.25), Heading("The three methods side by side"), _methods(desk, name)]
    blocks += ground_blocks(desk, name)
    title = f"{KIND_WORDS[one.kind]} {name}: thermal steps"
    return Sheet(f"{name}-T", title, "—", tuple(blocks), series=calculations(one))


def calculations(one: Assembly) -> str:
    """The line that both calculations of an assembly share in the index."""
    return f"{KIND_WORDS[one.kind]} {one.name}: heat and moisture" if has_vapour_sheet(one) else ""


def _provided(desk: Desk, finding: Finding) -> str:
    """What was compared: the resistance with the digits of the steps, else the words of the record."""
    if not desk.judges_whole(finding) or finding.provided.quantity == "U":
        return plain(finding.given)
    return f"**{with_unit(finding.provided.value, 'R', desk.system, decimals=2)}**{_rounded(finding)}"


def _rounded(finding: Finding) -> str:
    return ", rounded as the set asks" if finding.provided and finding.provided.decimals is not None else ""


def _method_phrase(method: str) -> str:
    return f"asked by the set: {method.replace('-', ' ')}"


def _methods(desk: Desk, name: str) -> Table:
    study = desk.dossier.thermal[name]
    columns = (
        Column("Method", width=54),
        Column("{R}", unit_of("R", desk.system), 24, "decimal"),
        Column("{U}", unit_of("U", desk.system), 28, "decimal"),
        Column("Use here"),
    )
    rows = []
    for method, result in study.by_method.items():
        use = "the set asks for this method" if method == study.method else "for comparison"
        if not result.within_limits:
            use = "outside its limits (ratio over 1.5): decides nothing"
        rows.append(
            Row(
                (
                    method.replace("-", " "),
                    significant(in_system(result.resistance, "R", desk.system), 4),
                    significant(in_system(result.transmittance, "U", desk.system), 4),
                    use,
                )
            )
        )
    return Table(columns, tuple(rows))


__all__ = ["assembly_sheet", "has_vapour_sheet", "thermal_sheet"]
