"""The compliance record, the design criteria and the certificate: every finding on one line, every line with a way on."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from layerfolio.catalogue.code_sets import set_ids
from layerfolio.catalogue.sources import all_sources
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.judging import TOPICS
from layerfolio.codes.paths import ways, with_paths
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.blocks import Row, Table, VerdictCell
from layerfolio.sheets.certificate import certificate, insulation_resistance
from layerfolio.sheets.compliance import compliance_record, sheets_to_see
from layerfolio.sheets.cover import cover
from layerfolio.sheets.criteria import criteria
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.guide import guide
from layerfolio.sheets.markup import plain
from layerfolio.sheets.record_summary import ranges, summary

ROOT = Path(__file__).parents[2]
PROJECTS = sorted((ROOT / "examples").glob("*/*.yaml")) + sorted((ROOT / "shared" / "starters").glob("*/project.yaml"))
SHOP = ROOT / "examples" / "chandlery" / "project.yaml"
RSI = 0.3048**2 / 1055.05585262 * 3600 * 5 / 9
"""One ft2.h.F/Btu from its own definition, m2.K/W."""


def desk_of(path, **changes):
    found = compile_dossier(open_project(path))
    findings = changes.pop("findings", None) or with_paths(found.findings, found.project)
    return Desk(replace(found, findings=findings, **changes))


@pytest.fixture(scope="module", params=PROJECTS, ids=lambda p: f"{p.parent.name}/{p.stem}")
def desk(request):
    return desk_of(request.param)


def table_of(sheet):
    return next(block for block in sheet.blocks if isinstance(block, Table) and block.long_text)


def lines_of(desk):
    return [row for row in table_of(compliance_record(desk)).rows if not row.head]


def numbers_of(text):
    """The line numbers of "5, 8 to 10"."""
    parts = [part.split(" to ") for part in text.split(", ")] if text != "–" else []
    return [number for ends in parts for number in range(int(ends[0]), int(ends[-1]) + 1)]


def variant(tmp_path, text, base=SHOP):
    """A project file beside a copy of the shop that holds only what differs."""
    (tmp_path / "project.yaml").write_text(base.read_text(encoding="utf-8"), encoding="utf-8")
    file = tmp_path / "variant.yaml"
    file.write_text(f"layerfolio: 1\nvariant_of: project.yaml\n{text}", encoding="utf-8")
    return file


def a_finding(topic="thermal", verdict=Verdict.DOES_NOT_MEET, **said):
    usual = {"id": "nbc-2020/9.36.2.6/walls", "assembly": "W1", "edition": "NBC", "clause": "9.36.2.6.(1)",
             "question": "Resistance", "path": "prescriptive", "asked": "2.97", "given": "2.00", "reason": "missed",
             "provided": Measured("R_eff", 2.0), "limit": Measured("R_eff", 2.97)}  # fmt: skip
    return Finding(topic=topic, verdict=verdict, **usual | said)


def trade_off(verdict=Verdict.MEETS, **said):
    about = {"id": "nbc-2020/9.36.2.11/trade-off", "assembly": None, "path": "performance", "step": "C3", "limit": None,
             "clause": "9.36.2.11", "question": "Trade-off", "provided": None}  # fmt: skip
    return a_finding(verdict=verdict, **about | said)


class TestEveryLine:
    def test_every_finding_has_exactly_one_line_in_the_order_of_the_dossier(self, desk):
        lines = lines_of(desk)
        assert [int(row.cells[0]) for row in lines] == list(range(1, len(desk.dossier.findings) + 1))
        for row, found in zip(lines, desk.dossier.findings, strict=True):
            assert row.cells[4].verdict is found.verdict
            assert found.clause.partition(",")[0] in row.cells[1].replace("\\", "")

    def test_topics_head_their_lines_and_none_is_silently_missing(self, desk):
        sheet = compliance_record(desk)
        heads = [row.cells[0].strip("*").lower() for row in table_of(sheet).rows if row.head]
        assert heads == [one for one in TOPICS if one in heads]
        named = re.search(r"No line under: ([^.]*)\.", as_text(sheet))
        assert sorted([*heads, *(named.group(1).split(", ") if named else [])]) == sorted(TOPICS)

    def test_every_line_leads_to_a_sheet(self, desk):
        for row, found in zip(lines_of(desk), desk.dossier.findings, strict=True):
            assert re.search(r"_see_ ([A-Z]+\d)", row.cells[1])
            first = sheets_to_see(found, desk)[0]
            if found.assembly in desk.dossier.wall_lines:
                assert first == "ST2"
            else:
                assert first == found.assembly or first in ("C1", "C2", "C3", "C4", "C5") or first == found.step

    def test_what_was_calculated_names_its_sheet_at_the_figure(self, desk):
        for row, found in zip(lines_of(desk), desk.dossier.findings, strict=True):
            if found.step and found.given and found.verdict is not Verdict.NOT_ASKED:
                assert f"({found.step})" in row.cells[2] + row.cells[3]

    def test_whatever_does_not_meet_says_its_path_and_what_follows(self, desk):
        for row, found in zip(lines_of(desk), desk.dossier.findings, strict=True):
            if found.verdict not in (Verdict.MEETS, Verdict.NOT_ASKED):
                assert row.after
                assert "_path_" in row.cells[4].text or found.path == "performance"

    def test_a_met_rule_asks_for_no_other_path(self, desk):
        for row, found in zip(lines_of(desk), desk.dossier.findings, strict=True):
            if found.path == "prescriptive" and found.verdict is Verdict.MEETS and found.topic not in ("applicability",):
                assert row.cells[3].startswith(("Not needed", "–"))

    def test_every_finding_has_performance_and_chosen(self, desk):
        for found in desk.dossier.findings:
            assert found.chosen
            assert found.performance or found.verdict is Verdict.NOT_ASKED

    def test_counts_at_the_end_are_those_of_the_findings(self, desk):
        text = as_text(compliance_record(desk))
        for verdict in Verdict:
            number = sum(one.verdict is verdict for one in desk.dossier.findings)
            assert f"<{verdict}> {number}" in text

    def test_the_head_names_every_open_line_under_its_verdict(self, desk):
        table = summary(desk.dossier.findings)
        for at, verdict in enumerate((Verdict.DOES_NOT_MEET, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE), 4):
            named = [number for row in table.rows if not row.total for number in numbers_of(row.cells[at])]
            assert named == [n for n, one in enumerate(desk.dossier.findings, 1) if one.verdict is verdict]
            (total,) = [row for row in table.rows if row.total]
            assert total.cells[at].split()[0] == str(len(named))

    def test_words_of_the_head_or_the_row_name_the_performance_path_of_every_open_line(self, desk):
        head, rows = "", iter(table_of(compliance_record(desk)).rows)
        for found in desk.dossier.findings:
            row = next(rows)
            if row.head:
                head, row = " ".join(row.cells[1:]), next(rows)
            if found.path == "performance" or found.verdict in (Verdict.MEETS, Verdict.NOT_ASKED):
                continue
            words = found.performance.partition("; ")[0]
            if words not in ("", "none"):
                own = f"{row.cells[3]} {row.after}".lower()
                assert plain(words).lower() in (head.lower() if row.cells[3] == "As headed" else f"{own} {head.lower()}")
            for part in found.what_follows.split("; "):
                assert plain(part).lower() in f"{row.after} {row.cells[2]}".lower()

    def test_who_decides_with_the_authority_is_said_in_the_row_or_its_head(self, desk):
        head, rows = "", iter(table_of(compliance_record(desk)).rows)
        for found in desk.dossier.findings:
            row = next(rows)
            if row.head:
                head, row = " ".join(row.cells[1:]), next(rows)
            if "engineer" in found.who_decides and found.verdict not in (Verdict.NOT_ASKED, Verdict.MEETS):
                assert "ngineer and the authority" in head + row.cells[4].text

    def test_keys_of_the_project_file_keep_their_small_letters(self, desk):
        text = as_text(compliance_record(desk)) + as_text(criteria(desk))
        assert not re.search(r"\b[A-Z][a-z]+_[a-z_]+", text)


class TestPaths:
    project = compile_dossier(open_project(SHOP)).project

    def test_a_trade_off_that_meets_answers_the_line_that_does_not(self):
        line, other = with_paths((a_finding(), trade_off()), self.project)
        assert line.answered_by == other.id
        assert line.chosen == "performance: trade-off"
        assert "trade-off: meets, C3" in line.performance
        assert line.verdict is Verdict.DOES_NOT_MEET
        assert other.chosen == "performance: it answers 1 line of this record"

    def test_a_real_wall_under_its_limit_is_answered_by_the_roof_over_its(self, tmp_path):
        """By-law figure 5.5 for walls: the wall's 5.27 misses it, the roof's 7.28 is well over its 4.67."""
        amended = "{requirement: nbc-2020/9.36.2.6/walls, value: 5.5 m2.K/W, source: by-law 12}"
        desk = desk_of(variant(tmp_path, f"code: {{energy_path: trade-off, amendments: [{amended}]}}\n"))
        numbered = list(enumerate(desk.dossier.findings, 1))
        number, other = next(one for one in numbered if one[1].id.endswith("/trade-off"))
        line, wall = next(one for one in numbered if one[1].id.endswith("/walls"))
        assert (wall.verdict, other.verdict) == (Verdict.DOES_NOT_MEET, Verdict.MEETS)
        assert wall.answered_by == other.id
        row = lines_of(desk)[line - 1]
        assert f"_path_ performance: trade-off, line {number}" in row.cells[4].text
        assert "trade-off: meets, C3" in row.cells[3].replace("\\", "").lower().replace("c3", "C3")

    @pytest.mark.parametrize("verdict", [v for v in Verdict if v is not Verdict.MEETS])
    def test_a_trade_off_that_does_not_meet_answers_nothing(self, verdict):
        line, _ = with_paths((a_finding(), trade_off(verdict)), self.project)
        assert line.answered_by == ""
        assert line.chosen == "open: the limit is not met"

    @pytest.mark.parametrize(
        "said",
        [
            {"topic": "vapour"},
            {"assembly": None},
            {"opening": True, "topic": "openings"},
            {"limit": Measured("g", 0.4), "provided": Measured("g", 0.5)},
            {"verdict": Verdict.NEEDS_EVIDENCE},
        ],
    )
    def test_it_answers_nothing_that_it_does_not_trade(self, said):
        line, _ = with_paths((a_finding(**said), trade_off()), self.project)
        assert line.answered_by == ""

    def test_the_total_of_the_american_code_answers_openings_too(self):
        house = a_finding(topic="openings", opening=True, assembly="A1", limit=Measured("U", 1.7), provided=Measured("U", 1.9))
        line, other = with_paths((house, trade_off(id="irc-2021/N1102.1.5/total-ua")), self.project)
        assert line.answered_by == other.id
        assert line.chosen == "performance: total UA"

    def test_vapour_lines_carry_the_balance_of_their_own_assembly(self):
        said = with_paths(compile_dossier(open_project(SHOP)).findings, self.project)
        for found in said:
            if found.topic == "vapour" and found.path == "prescriptive" and found.assembly:
                assert f"monthly balance clears, {found.assembly}-V" in found.performance

    def test_an_aim_is_no_path(self):
        """Air changes that are aimed at stand among the criteria; they show nothing in the place of a line."""
        for found in with_paths(compile_dossier(open_project(SHOP)).findings, self.project):
            assert "aimed" not in found.performance

    def test_words_of_a_judge_stay(self):
        (line,) = with_paths((a_finding(performance="its own", chosen="its own path"),), self.project)
        assert (line.performance, line.chosen) == ("its own", "its own path")

    def test_a_stated_performance_path_waits_for_the_model(self):
        from types import SimpleNamespace

        project = SimpleNamespace(code=SimpleNamespace(set="nbc-2020", energy_path="performance"))
        (line,) = with_paths((a_finding(),), project)
        assert line.chosen.startswith("performance, as the project file says") and "from elsewhere" in line.chosen

    def test_the_alternative_of_2024_has_its_new_number(self):
        assert [ways(f"irc-{year}")["other"]["words"] for year in (2018, 2021, 2024)] == [
            "alternative, R104.11", "alternative, R104.11", "alternative, R104.2.2",
        ]  # fmt: skip

    @pytest.mark.parametrize("set_id", set_ids())
    def test_every_path_has_source_place_and_mark(self, set_id):
        for name, row in ways(set_id).items():
            if name != "note":
                assert row["words"] and row["place"] and row["mark"] in ("found", "memory")
                assert row["source"] in all_sources() and row.get("via", row["source"]) in all_sources()


class TestLongTexts:
    def test_long_texts_break_and_no_row_is_lost(self, tmp_path):
        from layerfolio.binding import bind
        from layerfolio.sheets.package import package

        words = " ".join(["a question of many words that goes on"] * 60)
        base = compile_dossier(open_project(SHOP))
        one = a_finding(
            topic="structure", question=words, asked=words, given=words, reason=words, performance=words, chosen=words
        )
        made = package(replace(base, findings=(one,) * 3))
        record = next(sheet for sheet in made.sheets if sheet.number == "C1")
        bound = bind(replace(made, sheets=(record,)), tmp_path / "long.pdf")
        assert bound.pages > 2

    def test_a_hundred_lines_take_less_than_two_pages_for_ten(self, tmp_path):
        from layerfolio.binding import bind
        from layerfolio.sheets.package import package

        base = desk_of(SHOP).dossier
        made = package(replace(base, findings=tuple(one for one in base.findings for _ in range(4))))
        record = next(sheet for sheet in made.sheets if sheet.number == "C1")
        bound = bind(replace(made, sheets=(record,)), tmp_path / "many.pdf")
        assert 4 * len(base.findings) >= 96 and bound.pages < 0.24 * 4 * len(base.findings)

    def test_a_topic_that_breaks_says_so_on_the_next_page(self):
        from layerfolio.binding.tables import table_piece

        rows = (Row(("**Thermal**",), head=True), *(Row((str(n), "text")) for n in range(8)), Row(("**Air**",), head=True),
                Row(("9", "text")), Row(("10", "text")))  # fmt: skip
        columns = table_of(compliance_record(desk_of(SHOP))).columns[:2]
        piece = table_piece(Table(columns, rows, long_text=True, upright_rules=(0,)), 100)
        first, rest = piece.split(piece.height * 0.6)
        assert rest.rows[0].head == "**Thermal**, continued"
        assert not first.rows[-1].head
        again = rest.split(rest.height * 0.5, True)
        assert again is None or again[1].rows[0].head in ("**Thermal**, continued", "**Air**", "**Air**, continued")

    def test_a_row_of_six_lines_breaks_before_what_is_provided(self):
        from layerfolio.binding.tables import table_piece

        columns = table_of(compliance_record(desk_of(SHOP))).columns
        asked = "_asked_ " + "words of the rule " * 12 + "\n_provided_ " + "words of the wall " * 12
        usual, tall = (
            Row(("1", "**One**\nclause", "_asked_ a\n_provided_ b", "–", "")),
            Row(("2", "**Two**\n9.1", asked, "–", "")),
        )
        piece = table_piece(Table(columns, (usual, usual, tall, usual, usual), long_text=True, extra=1.2), 180)
        above = piece.head_height + 2 * piece.rows[0].height
        lines = piece.rows[2].cells[2]
        assert piece.rows[2].lines >= 6
        first, rest = piece.split(above + (lines.begins[1] + 1) * 4.35 + 1.2 + 9)
        assert first.rows[-1].cells[2].lines == lines.lines[: lines.begins[1]]
        assert rest.rows[0].cells[2].lines == lines.lines[lines.begins[1] :]
        assert [one.text for one in rest.rows[0].cells[1].lines] == ["Two", "(continued)"]
        first, rest = piece.split(above + (lines.begins[1] - 0.1) * 4.35 + 1.2 + 9)
        assert (len(first.rows), len(rest.rows)) == (2, 3)

    def test_what_follows_stands_beside_only_where_that_is_lower(self):
        from layerfolio.binding.tables import table_piece

        columns = table_of(compliance_record(desk_of(SHOP))).columns
        long, short = "words of the rule " * 14, "a rule"
        made = [
            table_piece(Table(columns, (Row(("1", "**One**", text, "–", "", ), after="what to do " * 8, after_beside=3),)), 180)
            for text in (long, short)
        ]  # fmt: skip
        assert [piece.rows[0].after.beside for piece in made] == [True, False]
        assert made[0].rows[0].lines == made[0].rows[0].count

    def test_a_row_taller_than_a_page_parts_below_its_topic(self):
        from layerfolio.binding.tables import table_piece

        tall = " ".join(["word"] * 900)
        columns = table_of(compliance_record(desk_of(SHOP))).columns[:2]
        piece = table_piece(Table(columns, (Row(("**Air**",), head=True), Row(("1", tall))), long_text=True), 60)
        parts = 0
        while piece is not None and piece.height > 100 and parts < 50:
            split = piece.split(100, True)
            assert split is not None
            assert len(split[0].rows) == 2
            parts, piece = parts + 1, split[1]
        assert 1 < parts < 50


class TestCriteria:
    def test_every_figure_of_climate_loads_and_room_is_there_with_its_source(self, desk):
        text = as_text(criteria(desk))
        climate, loads = desk.dossier.project.climate, desk.dossier.project.site_loads
        for quantity in (climate.heating_degree_days, climate.heating_design_temperature, loads.snow, loads.wind_pressure_1_50):
            if quantity is not None:
                assert quantity.text.partition(" ")[0].replace("-", "−") in text
        for row in re.findall(r"^([^|\n]+) \| ([^|\n]+) \| ?(.*)$", text, re.M):
            assert row[1].strip()

    def test_a_soil_report_is_no_structural_design(self, tmp_path):
        papers = "documents: [{title: Soil report of the lot, number: G-1, issuer: x, edition: 2026, for: [structure]}]\n"
        text = as_text(criteria(desk_of(variant(tmp_path, papers))))
        design = next(line for line in text.splitlines() if line.startswith("Structural design"))
        assert "Soil" not in design and "not given" in design
        assert re.search(r"^Soil report of the lot \| structure \| .*G-1", text, re.M)

    def test_what_is_not_given_says_so(self, tmp_path):
        file = variant(tmp_path, "climate: {heating_design_temperature: null}\nsite_loads: null\nair_changes_at_50_pa: null\n")
        text = as_text(criteria(desk_of(file)))
        for words in ("Outside temperature, heating design", "Ground snow load", "Airtightness aimed at"):
            assert re.search(rf"^{re.escape(words)} \| not given", text, re.M)

    def test_amendments_stand_with_their_source(self, tmp_path):
        amended = "{requirement: nbc-2020/9.36.2.6/walls, value: 3.5 m2.K/W, source: by-law 12}"
        text = as_text(criteria(desk_of(variant(tmp_path, f"code: {{amendments: [{amended}]}}\n"))))
        assert "Amendment: nbc-2020/9.36.2.6/walls | 3.5 m2.K/W | by-law 12" in text

    def test_what_the_record_asks_for_is_listed_by_its_lines(self, desk):
        text = as_text(criteria(desk)).partition("still asks for")[2]
        for number, one in enumerate(desk.dossier.findings, 1):
            if one.verdict not in (Verdict.MEETS, Verdict.NOT_ASKED) and not one.answered_by:
                assert re.search(rf"\b{number}\b", text)
            elif one.verdict in (Verdict.MEETS, Verdict.NOT_ASKED):
                assert not re.search(rf"\b{number} \({one.assembly}\)", text)

    def test_keys_stand_before_papers_and_these_before_questions(self, desk):
        text = as_text(criteria(desk)).partition("still asks for")[2]
        heads = [text.find(words) for words in ("Answers for the project file", "Papers and figures", "Questions to the")]
        found = [one for one in heads if one >= 0]
        assert found == sorted(found) and found

    def test_a_key_that_a_question_asks_for_is_among_them(self, tmp_path):
        text = as_text(criteria(desk_of(variant(tmp_path, "building: {occupancy: workshop}\n"))))
        assert re.search(r"^Hazard of the occupancy \| not given", text, re.M)
        assert "building.hazard" in text.partition("Answers for the project file")[2].partition("Papers and figures")[0]

    def test_the_cover_repeats_a_few_and_names_the_sheet_of_all(self, desk):
        text = as_text(cover(desk))
        assert "All design criteria with their sources: sheet C2." in text
        assert "Cooling degree-days" not in text

    def test_the_mean_of_the_year_is_that_of_its_months(self):
        months = (-12, -10, -2.5, 4.5, 10.5, 15, 18, 17.5, 13.5, 9, 4, -4)
        assert f"Mean temperature of the year | {sum(months) / 12:.1f} °C" in as_text(criteria(desk_of(SHOP)))


HOUSE = """building: {occupancy: house, use: house}
code: {set: SET, zone: 6A, heat_recovery: null}
climate: {cooling_degree_days: 900 K.d}
"""


class TestCertificate:
    def house(self, tmp_path, set_id="irc-2021", more=""):
        return desk_of(variant(tmp_path, HOUSE.replace("SET", set_id) + more))

    def test_canadian_and_method_sets_have_none(self):
        assert certificate(desk_of(SHOP)) is None

    def test_american_criteria_name_what_the_authority_fills_in(self, tmp_path):
        text = as_text(criteria(self.house(tmp_path)))
        for words in ("Damage from weathering", "Damage from termites", "Air freezing index", "Flood hazards"):
            assert f"{words} | not given | the authority states it" in text
        assert "from memory †" in text

    @pytest.mark.parametrize("set_id", ["irc-2018", "irc-2021", "irc-2024"])
    def test_contents_follow_the_edition(self, tmp_path, set_id):
        text = as_text(certificate(self.house(tmp_path, set_id)))
        year = int(set_id[-4:])
        for words in ("Ceiling", "Roof", "Walls", "Floors", "Foundation", "Ducts", "Windows", "Leakage of the ducts", "Heating"):
            assert words in text
        assert ("Photovoltaics" in text) == ("Mean by area" in text) == ("Path of the energy chapter" in text) == (year >= 2021)
        assert ("solar-ready zone" in text) == (year >= 2024)
        assert "must not cover the panel's own labels" in text

    def test_it_stands_on_one_page(self, tmp_path):
        from layerfolio.binding import bind
        from layerfolio.sheets.package import package

        for set_id in ("irc-2018", "irc-2021", "irc-2024"):
            desk = self.house(tmp_path, set_id)
            made = replace(package(desk.dossier), sheets=(certificate(desk),))
            assert bind(made, tmp_path / "c.pdf").pages == 1

    def test_the_value_is_that_of_the_insulation_alone(self, tmp_path):
        """50 mm at 0.035 and 184 mm at 0.040: 1.429 + 4.600 = 6.029 m2.K/W, R-34.2."""
        desk = self.house(tmp_path)
        assert insulation_resistance(desk.dossier.thermal["W1"]) == pytest.approx(0.050 / 0.035 + 0.184 / 0.040)
        assert f"R-{(0.050 / 0.035 + 0.184 / 0.040) / RSI:.1f} (6.03 m²·K/W)" in as_text(certificate(desk))

    def test_of_two_walls_the_larger_stands_and_the_mean_is_by_area(self, tmp_path):
        second = """assemblies:
  W2: {kind: wall, title: West wall, area: 20 m2, faces: outside air, layers: [{material: mineral-wool-board, thickness: 70 mm}]}
"""
        text = as_text(certificate(self.house(tmp_path, more=second)))
        first, other = 0.050 / 0.035 + 0.184 / 0.040, 0.070 / 0.035
        assert f"Walls, W1 | R-{first / RSI:.1f}" in text
        assert f"({(65 * first + 20 * other) / 85:.2f} m²·K/W)" in text


def test_the_guide_names_the_sheets_a_project_can_have():
    american = as_text(guide(desk_of(ROOT / "examples" / "straw-cottage" / "project.yaml")))
    canadian = as_text(guide(desk_of(SHOP)))
    assert "C7 |" in american and "C7 |" not in canadian
    for text in (american, canadian):
        assert "How to read the compliance record" in text and "C2 |" in text and "E1 |" in text


def test_a_verdict_cell_is_on_every_line():
    assert all(isinstance(row.cells[4], VerdictCell) for row in lines_of(desk_of(SHOP)))


@pytest.mark.parametrize(("numbers", "words"), [([], "–"), ([3], "3"), ([3, 4], "3, 4"), ([3, 4, 5, 8], "3 to 5, 8")])
def test_three_lines_in_a_row_are_drawn_together(numbers, words):
    assert ranges(numbers) == words


def test_of_two_tables_the_one_that_is_met_is_named_by_its_line():
    desk = desk_of(ROOT / "examples" / "straw-cottage" / "project.yaml")
    findings, rows = desk.dossier.findings, lines_of(desk)
    met, other = (next(n for n, one in enumerate(findings) if one.id.endswith(end) and one.assembly == "W1")
                  for end in ("/wall-insulation", "/walls"))  # fmt: skip
    said = tuple(
        replace(one, verdict=verdict, chosen="", performance="", answered_by="")
        if n in (met, other) and (verdict := Verdict.MEETS if n == met else Verdict.DOES_NOT_MEET) else one
        for n, one in enumerate(findings)
    )  # fmt: skip
    desk = desk_of(ROOT / "examples" / "straw-cottage" / "project.yaml", findings=with_paths(said, desk.dossier.project))
    row = lines_of(desk)[other]
    assert row.cells[4].verdict is Verdict.NOT_ASKED and len(rows) == len(findings)
    shown = row.cells[4].text + (row.after or "")
    assert f"table of insulation R-values, line {met + 1}" in shown.replace("\\", "")
    counted = sum(one.verdict is Verdict.DOES_NOT_MEET for one in said)
    assert sum(one.verdict is Verdict.DOES_NOT_MEET for one in desk.dossier.findings) == counted - 1


class TestVariants:
    def test_a_variant_names_its_base_and_what_differs(self, tmp_path):
        desk = desk_of(variant(tmp_path, "project: {permit: BP-7, parcel: PID 025-117}\nindoor: {temperature: 21 degC}\n"))
        first, second = as_text(cover(desk)), as_text(criteria(desk))
        assert "permit submittal package; variant (C2)" in first
        assert "It states otherwise: project.permit, project.parcel, indoor.temperature." in second
        assert "BP-7" in first and "PID 025-117" in first

    def test_no_more_than_twenty_keys_are_named(self, tmp_path):
        keys = "".join(f"  stuff-{n}: {{conductivity: 0.04 W/(m.K), source: own}}\n" for n in range(23))
        text = as_text(criteria(desk_of(variant(tmp_path, f"materials:\n{keys}"))))
        assert "materials.stuff-19, and 3 more." in text

    def test_a_file_of_its_own_is_no_variant(self):
        desk = desk_of(SHOP)
        assert "ariant of" not in as_text(cover(desk)) + as_text(criteria(desk))
        assert "Permit |" not in as_text(cover(desk)) and "Parcel" not in as_text(cover(desk))


class TestStatedAnswers:
    def test_each_answer_of_the_shop_stands_on_the_criteria_with_its_lines(self):
        desk = desk_of(SHOP)
        text = as_text(criteria(desk)).replace("*", "")
        number = next(n for n, one in enumerate(desk.dossier.findings, 1) if one.id.endswith("/cladding-to-ground"))
        assert f"W1 | Cladding above the ground | 300 mm | {number}" in text
        for said in ("Vents, low, net free area | 0.48 m²", "Fire blocks, apart along the wall | 8 m", "steel sheet 0.38 mm"):
            assert said in text

    def test_a_line_that_rests_on_an_answer_leads_to_the_criteria(self, desk):
        resting = [one for one in desk.dossier.findings if one.id.endswith(("/roof-vents", "/roof-ventilation", "/fire-blocks"))]
        for one in resting:
            stated = desk.dossier.project.assemblies[one.assembly]
            known = stated.vents if "roof" in one.id else stated.fire_blocks
            assert ("C2" in sheets_to_see(one, desk)) == (known is not None)

    def test_in_customary_units_both_systems_print(self):
        text = as_text(criteria(desk_of(ROOT / "examples" / "straw-cottage" / "project.yaml")))
        assert "(356 mm)" in text and "Flame spread of Straw bales on edge | 10, smoke developed 340" in text

    def test_figures_of_the_united_states_are_not_missing_in_canada(self):
        text = as_text(criteria(desk_of(SHOP)))
        assert "Seismic design category" not in text and "Basic wind speed" not in text


class TestCertificateParts:
    def test_a_hatch_has_its_own_row(self):
        text = as_text(certificate(desk_of(ROOT / "examples" / "straw-cottage" / "project.yaml"))).replace("*", "")
        assert "Doors | 0.170 (0.965)" in text and "Attic hatches | ______________________ | –" in text.replace("\\", "")

    def test_a_figure_whose_line_is_open_is_left_blank_and_named(self):
        desk = desk_of(ROOT / "examples" / "straw-cottage" / "project.yaml")
        text = as_text(certificate(desk)).replace("*", "").replace("\\", "")
        number = {(one.id.rpartition("/")[2], one.assembly): n for n, one in enumerate(desk.dossier.findings, 1)}
        assert "Ceiling, CL1 | R-64.8" in text and "Walls, W1 | ____" in text and "Floors, F1 | ____" in text
        for key in (("strawbale-resistance", "W1"), ("floor-insulation", "F1"), ("fenestration", "A4"), ("hatches", "H1")):
            said = next(part for part in text.split(";") if f"{key[1]}: open" in part)
            assert str(number[key]) in said or f"{number[key] - 1} and {number[key]}" in said
        assert "A2: not rated" in text and "confirmed as installed" in text

    def test_the_insulation_of_an_edge_stands_beside_the_slab(self, tmp_path):
        """0.47 m is 1'-6 1/2" and 2.2 m2.K/W is 12.5 h.ft2.F/Btu."""
        file = variant(tmp_path, 'code: {set: irc-2021, zone: "6A"}\nproject: {units: customary}\n')
        text = as_text(certificate(desk_of(file)))
        assert 'Slab edge, S1 | R-12.5 (2.20 m²·K/W) | 18 1/2" (470 mm) vertical' in text.replace("*", "")
