"""The structural sheets: a small shed as text in both systems, and laws over what a project states and lacks."""

import re
import sys
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from calculator import recompute
from layerfolio.binding import bind
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets import blocks as b
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.bracing_schedule import bracing_schedule
from layerfolio.sheets.bracing_steps import together
from layerfolio.sheets.desk import BRACING, FASTENING, LOADS, RECORD, STRUCTURE, Desk
from layerfolio.sheets.fastening_schedule import fastening_schedule
from layerfolio.sheets.loads_sheet import loads_sheet
from layerfolio.sheets.package import title_block
from layerfolio.sheets.structural_basis import structural_basis
from layerfolio.sheets.structure import structural_answers, structural_sheets
from layerfolio.sheets.structure_parts import findings_on
from layerfolio.steps.spelling import spell
from layerfolio.steps.trace import Step
from layerfolio.studies.attachment import attachment
from layerfolio.studies.dead_load import dead_load
from layerfolio.studies.wall_line import wall_line_studies

GOLDEN = Path(__file__).parents[1] / "golden"
MAKERS = {STRUCTURE: structural_basis, BRACING: bracing_schedule, FASTENING: fastening_schedule, LOADS: loads_sheet}
SMALL = """layerfolio: 1
project: {title: Small shed, date: 2027-02-03, page: letter, units: metric}
code: {set: nbc-2020}
site_loads: {wind_pressure_1_50: 0.45 kPa, exposure: rough, seismic: {Sa02: 0.3}, snow: 1.8 kPa, source: invented}
materials:
  clad: {conductivity: 0.13 W/(m.K), density: 600 kg/m3, source: own}
  board: {conductivity: 0.04 W/(m.K), density: 70 kg/m3, source: own}
  batt: {conductivity: 0.04 W/(m.K), density: 40 kg/m3, source: own}
  panel: {conductivity: 0.13 W/(m.K), density: 620 kg/m3, source: own}
assemblies:
  W1:
    kind: wall
    title: Outside walls
    faces: outside air
    layers:
      - {material: clad, thickness: 20 mm}
      - {cavity: ventilated, thickness: 38 mm,
         battens: {material: spruce, width: 64 mm, spacing: 600 mm, direction: vertical},
         fasteners: {kind: wood screw, diameter: 6 mm, root_diameter: 4 mm, length: 160 mm, spacing: 400 mm, rows_at: 600 mm}}
      - {material: board, thickness: 50 mm}
      - {material: batt, thickness: 140 mm,
         framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm, fraction: 20 %}}
      - {material: panel, thickness: 12.5 mm, serves: [bracing]}
wall_lines:
  L1: {assembly: W1, title: North wall, length: 9.6 m, height: 2.7 m, supports: roof, hold_downs: true,
       panels: [{length: 2.4 m, at: 0 m}, {length: 1.2 m, at: 4.8 m, height: 2.4 m}, {length: 2.4 m, at: 7.2 m}],
       openings: [{width: 900 mm, at: 3.0 m, sill: 1400 mm, height: 600 mm}],
       panel_fastening: {nail: 63 mm x 3.25 mm, edge: 150 mm, field: 300 mm, blocked: true}, panel: {grade: OSB O-2}}
  L2: {assembly: W1, length: 6.0 m, height: 2.7 m, panels: [{length: 1.2 m}, {length: 0.75 m}]}
"""
BARE = SMALL[: SMALL.index("wall_lines:")]


def desk_of(folder, text=SMALL, findings=()):
    """A desk with the studies of the project; findings are those given, so that the judges' words do not matter here."""
    path = folder / "project.yaml"
    path.write_text(text, encoding="utf-8")
    dossier = compile_dossier(open_project(path))
    shown = {name: getattr(dossier, name) for name in dossier.__dataclass_fields__}
    hung = {name: attachment(one, dossier.project) for name, one in dossier.assemblies.items()}
    shown |= {
        "dead_loads": {name: dead_load(one) for name, one in dossier.assemblies.items()},
        "attachments": {name: one for name, one in hung.items() if one},
        "wall_lines": wall_line_studies(dossier.project, dossier.assemblies),
        "findings": tuple(findings), "system": dossier.system,
    }  # fmt: skip
    return Desk(SimpleNamespace(**shown))


def changed(*pairs, text=SMALL):
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return text


CUSTOMARY = changed(("units: metric", "units: customary"))


def printed(desk):
    return "\n".join(as_text(sheet) for make in MAKERS.values() if (sheet := make(desk)))


def finding(question, subject=None, **more):
    found = Finding(
        f"nbc-2020/9.23.13/{question}", subject, "NBC 2020", "9.23.13", "structure", question, "prescriptive",
        Verdict.NEEDS_JUDGEMENT, "asked this", "that", None, None, "because",
    )  # fmt: skip
    return replace(found, **more)


@pytest.mark.parametrize(("name", "text"), [("metric", SMALL), ("customary", CUSTOMARY)])
def test_golden(tmp_path, name, text):
    """Run this file as a script (with src and tests on the path) to write the goldens again; read the difference."""
    assert printed(desk_of(tmp_path, text)) == (GOLDEN / f"structure-small-{name}.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("text", [SMALL, CUSTOMARY, BARE], ids=["metric", "customary", "without lines"])
def test_every_sheet_begins_with_the_caution(tmp_path, text):
    desk = desk_of(tmp_path, text)
    for number, make in MAKERS.items():
        sheet = make(desk)
        if sheet is None:
            assert text is BARE and number == BRACING
            continue
        assert sheet.number == number
        assert isinstance(sheet.blocks[1], b.Framed)
        words = as_text(sheet)
        assert "These sheets design no structure" in words and "a licensed professional designs" in words


def test_nothing_to_show_gives_no_sheet(tmp_path):
    text = re.sub("site_loads: .*\n", "", changed((", serves: [bracing]", ""), text=BARE))
    lean = re.sub(r"      - \{(?:cavity|material: board).*?\}\}?\n(?=      -)", "", text, flags=re.S)
    desk = desk_of(tmp_path, lean)
    assert structural_basis(desk) is None and bracing_schedule(desk) is None and fastening_schedule(desk) is None
    desk.dossier.dead_loads = {}
    assert loads_sheet(desk) is None


@pytest.mark.parametrize("text", [SMALL, BARE, changed((", serves: [bracing]", ""), text=BARE)], ids=list("abc"))
def test_the_guide_lists_exactly_the_sheets_that_are_there(tmp_path, text):
    desk = desk_of(tmp_path, text)
    listed = [number for number, _, there in structural_answers(desk) if there]
    assert listed == [sheet.number for sheet in structural_sheets(desk)]
    desk.dossier.dead_loads = {}
    assert not structural_sheets(desk) and not any(there for *_, there in structural_answers(desk))


def test_each_finding_stands_on_one_sheet(tmp_path):
    made = [
        finding("bracing", "W1"), finding("panel-length", "L1"), finding("dead-load", "W1"), finding("furring-over-foam", "W1"),
        finding("cladding-attachment", "W1"), finding("foundations"), finding("framing"), finding("vapour", topic="vapour"),
    ]  # fmt: skip
    desk = desk_of(tmp_path, findings=made)
    names = {sheet: [one.question for one in findings_on(desk, sheet)] for sheet in MAKERS}
    assert names == {
        STRUCTURE: ["bracing"], BRACING: ["panel-length"], FASTENING: ["furring-over-foam", "cladding-attachment"],
        LOADS: ["dead-load"],
    }  # fmt: skip
    for sheet, make in MAKERS.items():
        text = as_text(make(desk))
        for number, one in enumerate(made, 1):
            assert (f"{RECORD}, line {number}\n" in text) == (one.question in names[sheet]), (sheet, one.question)
    assert f"{RECORD}, lines 6 and 7, asks for the papers on them." in as_text(structural_basis(desk))


def test_what_is_alike_stands_once_with_all_names_and_lines(tmp_path):
    made = [finding("panel", "L1"), finding("panel", "L2"), finding("length", "L1"), finding("length", "L2", given="other")]
    text = as_text(bracing_schedule(desk_of(tmp_path, findings=made)))
    assert "panel, L1, L2 /" in text and f"{RECORD}, lines 1, 2\n" in text
    assert "length, L1 /" in text and "length, L2 /" in text and f"{RECORD}, line 4\n" in text


def row(sheet, first, name):
    """The first row of that name in a table whose first column has that title."""
    tables = [one for one in sheet.blocks if isinstance(one, b.Table) and one.columns[0].title == first]
    return next(one for table in tables for one in table.rows if one.cells[0].strip("*") == name)


class TestBracing:
    def test_required_and_provided_are_those_of_the_finding(self, tmp_path):
        length = finding("panel-length", "L1", limit=Measured("L_w", 2.0), provided=Measured("L_w", 6.0))
        share = finding("panel-share", "L2", limit=Measured("f_p", 0.25), provided=Measured("f_p", 0.2496))
        sheet = bracing_schedule(desk_of(tmp_path, findings=[length, share]))
        assert row(sheet, "Line", "L1").cells[-2:] == ("2\u00a0m", "6\u00a0m")
        assert row(sheet, "Line", "L2").cells[-2:] == ("25.00 % of the line", "24.96 % of the line")

    def test_panels_in_order_with_their_own_heights(self, tmp_path):
        text = as_text(bracing_schedule(desk_of(tmp_path)))
        assert "L1 | P1 | 0 | 2400 | 2700 | 1.13 : 1" in text
        assert "L1 | P2 | 4800 | 1200 | 2400 | 2.00 : 1" in text
        assert "L2 | P1 | not given | 1200" in text

    def test_panels_stated_out_of_order_keep_their_heights(self, tmp_path):
        turned = changed((
            "{length: 2.4 m, at: 0 m}, {length: 1.2 m, at: 4.8 m, height: 2.4 m}",
            "{length: 1.2 m, at: 4.8 m, height: 2.4 m}, {length: 2.4 m, at: 0 m}",
        ))  # fmt: skip
        assert "L1 | P2 | 4800 | 1200 | 2400" in as_text(bracing_schedule(desk_of(tmp_path, turned)))

    def test_openings_without_a_place_are_named(self, tmp_path):
        sheet = bracing_schedule(desk_of(tmp_path, changed(("width: 900 mm, at: 3.0 m", "width: 900 mm"))))
        drawing = next(one.drawing for one in sheet.blocks if isinstance(one, b.Figure))
        notes = [one.text for group in drawing.marks for one in group.marks if getattr(one, "role", "") == "note"]
        assert "1 of 1 openings have no stated place and are not drawn." in notes

    def test_a_unit_shear_is_information(self, tmp_path):
        text = as_text(bracing_schedule(desk_of(tmp_path)))
        assert "No verdict rests on it" in text and "kN/m" in text
        bare = as_text(bracing_schedule(desk_of(tmp_path, changed((", panel: {grade: OSB O-2}", "")))))
        assert "kN/m" not in bare


class TestAttachment:
    def test_the_least_mode_is_bold_and_alone(self, tmp_path):
        desk = desk_of(tmp_path)
        study = desk.dossier.attachments["W1"]
        cells = row(fastening_schedule(desk), "For", "W1")
        table = next(
            one for one in fastening_schedule(desk).blocks if isinstance(one, b.Table) and one.columns[1].title.startswith("Mode")
        )
        [cells] = [one.cells for one in table.rows]
        bold = [cell for cell in cells[1:] if cell.startswith("**")]
        assert bold == [f"**{study.capacity_lateral:.0f}**"]
        assert min(one.capacity for one in study.modes) == study.capacity_lateral

    def test_weight_and_capacity_are_no_verdict(self, tmp_path):
        text = as_text(fastening_schedule(desk_of(tmp_path)))
        assert "information for the engineer" in text and "No verdict rests on this share" in text
        assert not re.search(r"\b(meets|sufficient|safe|adequate)\b", text)

    def test_the_sketch_is_as_long_as_the_fastener(self, tmp_path):
        sheet = fastening_schedule(desk_of(tmp_path))
        [drawing] = [one.drawing for one in sheet.blocks if isinstance(one, b.Figure)]
        [shank] = [one for group in drawing.marks for one in group.marks if getattr(one, "role", "") == "fastener"]
        xs = [one[1] for one in shank.commands if len(one) > 1]
        assert (max(xs) - min(xs)) * drawing.scale == pytest.approx(160.0)

    def test_what_the_method_does_not_reach_has_no_figures(self, tmp_path):
        text = as_text(fastening_schedule(desk_of(tmp_path, changed(("length: 160 mm", "length: 95 mm")))))
        assert "Beyond the method: to be designed by a licensed professional" in text
        assert "Mode IV" not in text and "(figure" not in text

    def test_a_missing_figure_is_named(self, tmp_path):
        text = as_text(fastening_schedule(desk_of(tmp_path, changed((", root_diameter: 4 mm", "")))))
        assert "What is missing" in text and "Mode IV" not in text


class TestWhatGoesOn:
    """A bracing panel that controls air or vapour too goes on above and below openings, where no panel is drawn."""

    def test_the_schedule_says_so(self, tmp_path):
        text = as_text(bracing_schedule(desk_of(tmp_path, changed(("[bracing]", "[bracing, vapour control, air control]")))))
        assert "As control of air and vapour Panel (layer 5) of W1 goes on without a break above and below openings" in text

    def test_a_panel_that_braces_alone_does_not(self, tmp_path):
        assert "goes on without a break" not in as_text(bracing_schedule(desk_of(tmp_path)))


class TestLoads:
    def test_the_layers_add_up(self, tmp_path):
        """Cladding 600 x 9.80665 x 0.020 = 117.7 Pa, board 34.3, panel 76.0, by hand."""
        sheet = loads_sheet(desk_of(tmp_path))
        table = next(one for one in sheet.blocks if isinstance(one, b.Table) and one.columns[-1].title == "Density from")
        by_name = {one.cells[0]: one.cells[1] for one in table.rows}
        assert (by_name["1 Clad"], by_name["3 Board"], by_name["5 Panel"]) == ("0.118", "0.034", "0.076")
        layers = [float(one.cells[1]) for one in table.rows if one.cells[0][0].isdigit()]
        assert sum(layers) == pytest.approx(float(by_name["Dead load"]), abs=0.0005 * (len(layers) + 1))

    def test_a_layer_without_density_leaves_no_sum(self, tmp_path):
        text = as_text(loads_sheet(desk_of(tmp_path, changed(("panel: {conductivity: 0.13 W/(m.K), density: 620 kg/m3,",
                                                              "panel: {conductivity: 0.13 W/(m.K),")))))  # fmt: skip
        assert "= Dead load | not known" in text and "W1: density and thickness of Panel" in text

    def test_figures_of_the_place_that_are_not_given_say_so(self, tmp_path):
        text = as_text(loads_sheet(desk_of(tmp_path, changed((", seismic: {Sa02: 0.3}", ""), (", snow: 1.8 kPa", "")))))
        assert "Spectral acceleration Sa(0.2) | not given" in text and "Ground snow load | not given" in text

    def test_an_american_set_asks_for_its_own_figures(self, tmp_path):
        text = as_text(loads_sheet(desk_of(tmp_path, changed(("set: nbc-2020", "set: irc-2021")))))
        assert "Basic wind speed | not given" in text and "Seismic design category | not given" in text


@pytest.mark.parametrize("text", [SMALL, CUSTOMARY], ids=["metric", "customary"])
def test_every_step_recomputes_on_a_pocket_calculator(tmp_path, text):
    desk = desk_of(tmp_path, text)
    found = desk.dossier
    traces = [one.trace for group in (found.dead_loads, found.attachments, found.wall_lines) for one in group.values()]
    steps = [step for trace in traces for step in trace.steps()]
    assert len(steps) > 40
    for step in steps:
        words = spell(step, desk.system)
        assert recompute(words.numbers) == pytest.approx(recompute(words.result), rel=1e-3, abs=1e-12), words.numbers


@pytest.mark.parametrize("page", ["letter", "a4", "tabloid", "a3"])
@pytest.mark.parametrize("units", ["metric", "customary"])
def test_every_page_format_binds_and_reduces_no_drawing(page, units, tmp_path):
    from layerfolio.binding.filler import lay_out
    from layerfolio.binding.formats import FORMATS

    desk = desk_of(tmp_path, changed(("page: letter", f"page: {page}"), ("units: metric", f"units: {units}")))
    sheets = tuple(make(desk) for make in MAKERS.values())
    bound = bind(b.Package(title_block(desk.dossier), "test", sheets), tmp_path / "out.pdf")
    assert bound.pages >= len(sheets)
    for leaf in lay_out(sheets, FORMATS[page]):
        for placed in leaf.fields:
            assert all(getattr(piece, "shrink", 1.0) == 1.0 for piece, _ in placed)


LET_IN = changed(
    ("set: nbc-2020", "set: irc-2021"), (", serves: [bracing]", ""), ("L2: {assembly: W1,", "L2: {assembly: W1, method: LIB,"),
    ("title: North wall,", "title: North wall, method: LIB,"), text=CUSTOMARY,
)  # fmt: skip


def notes_of(sheet):
    drawings = [one.drawing for one in sheet.blocks if isinstance(one, b.Figure)]
    marks = [mark for one in drawings for group in one.marks for mark in group.marks]
    return " ".join(one.text for one in marks if getattr(one, "role", "") == "note")


class TestBracesLetIn:
    def test_the_method_stands_with_the_line(self, tmp_path):
        sheet = bracing_schedule(desk_of(tmp_path, LET_IN))
        assert row(sheet, "Line", "L1").after == "North wall; method LIB" and row(sheet, "Line", "L2").after == "method LIB"
        assert row(bracing_schedule(desk_of(tmp_path)), "Line", "L1").after == "North wall"

    def test_what_counts_stands_where_no_length_is_asked(self, tmp_path):
        found = finding("bracing-length", "L1", provided=Measured("L_p", 6.0))
        sheet = bracing_schedule(desk_of(tmp_path, findings=[found]))
        assert row(sheet, "Line", "L1").cells[-2:] == ("no figure", "6\u00a0m")
        assert row(sheet, "Line", "L2").cells[-2:] == ("no figure", "–")

    def test_nails_of_boards_stand_only_where_there_are_boards(self, tmp_path):
        words = "interior or general sheathing"
        without = as_text(fastening_schedule(desk_of(tmp_path, LET_IN)))
        assert words not in without and "bottom plate" in without and "a brace that is let in is not carried here" in without
        boards = changed((", method: LIB", ""), text=LET_IN)
        with_boards = as_text(fastening_schedule(desk_of(tmp_path, boards)))
        assert words in with_boards and "let in" not in with_boards

    def test_newtons_are_announced_only_where_they_stand(self, tmp_path):
        assert "In brackets: mm, N." in as_text(fastening_schedule(desk_of(tmp_path, CUSTOMARY)))
        bare = changed((", root_diameter: 4 mm", ""), text=CUSTOMARY)
        text = as_text(fastening_schedule(desk_of(tmp_path, bare)))
        assert "In brackets: mm." in text and "N." not in text


class TestOpeningsOfALine:
    def test_an_opening_without_a_sill_is_said_to_stand_on_the_floor(self, tmp_path):
        low = "1 of 1 openings have no stated sill and are drawn from the floor."
        assert low not in notes_of(bracing_schedule(desk_of(tmp_path)))
        assert low in notes_of(bracing_schedule(desk_of(tmp_path, changed((", sill: 1400 mm", "")))))

    def test_openings_of_the_wall_that_no_line_states_are_named(self, tmp_path):
        said = "The file states no openings of this line; those of the wall are not drawn."
        assert said not in notes_of(bracing_schedule(desk_of(tmp_path)))
        window = "openings:\n  A1: {kind: window, in: W1, width: 900 mm, height: 600 mm}\n"
        assert notes_of(bracing_schedule(desk_of(tmp_path, SMALL + window))).count(said) == 1  # L2; L1 states its own


def test_steps_of_panels_name_their_lines_where_one_line_has_more(tmp_path):
    even = changed(("{length: 1.2 m}, {length: 0.75 m}", "{length: 2.4 m, at: 0 m}, {length: 1.2 m, at: 2.4 m, height: 2.4 m}"))
    trace = together({name: one.trace for name, one in desk_of(tmp_path, even).dossier.wall_lines.items()})
    steps = [one.about for one in trace.entries if isinstance(one, Step) and one.formula.name == "aspect_ratio"]
    assert steps == ["L1, L2: P1", "L1, L2: P2", "L1: P3"]


def test_furring_that_misses_its_studs_is_said_in_the_units_of_the_file(tmp_path):
    laths, studs = (f"spacing: {{}}, {word}" for word in ("direction", "fraction"))
    missed = changed(*((one.format("600 mm"), one.format(apart)) for one, apart in ((laths, "24 in"), (studs, "36 in"))))
    assert "vertical furring at 24 in does not lie over studs at 36 in" in as_text(fastening_schedule(desk_of(tmp_path, missed)))


def test_the_guide_promises_what_a_panel_inside_changes_only_where_it_stands(tmp_path):
    words = "what a panel inside changes"
    assert any(words in said for _, said, _ in structural_answers(desk_of(tmp_path)))
    outside = changed((", serves: [bracing]", ""))
    assert not any(words in said for _, said, _ in structural_answers(desk_of(tmp_path, outside)))


def test_lengths_from_inches_print_no_more_than_a_tenth(tmp_path):
    short = changed(("length: 160 mm", "length: 3 1/8 in"), ("thickness: 50 mm", "thickness: 80 mm"))
    assert "the fasteners (79.4 mm) do not reach the framing" in as_text(fastening_schedule(desk_of(tmp_path, short)))


def write(folder):
    for name, text in (("metric", SMALL), ("customary", CUSTOMARY)):
        (GOLDEN / f"structure-small-{name}.txt").write_text(printed(desk_of(folder, text)), encoding="utf-8")


if __name__ == "__main__":
    write(Path(sys.argv[1]))
