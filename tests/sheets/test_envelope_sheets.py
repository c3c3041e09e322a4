"""The sheets of the whole building and of the openings: a small house as text, and laws over what a project may lack."""

import re
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from calculator import recompute
from layerfolio.codes.envelope import EnvelopeJudged, EnvelopeRow
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets import blocks as b
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.opening_schedule import opening_schedule
from layerfolio.sheets.whole_building import whole_building
from layerfolio.steps.spelling import spell

GOLDEN = Path(__file__).parents[1] / "golden"
SMALL = """layerfolio: 1
project: {title: Small house, date: 2027-02-03, page: letter, units: metric}
code: {set: iso}
building: {conditioned_volume: 100 m3, ventilation: {flow: 25 L/s, recovery: 80 %}}
climate: {heating_design_temperature: -20 degC}
indoor: {temperature: 20 degC}
air_changes_at_50_pa: 2.0
materials:
  fill: {conductivity: 0.040 W/(m.K), source: own}
assemblies:
  W1:
    {kind: wall, title: Outside walls, area: 80 m2, faces: outside air, area_includes_openings: true,
     layers: [{material: fill, thickness: 200 mm}]}
  R1: {kind: roof, title: Roof, area: 50 m2, faces: outside air, slope: 0 deg, layers: [{material: fill, thickness: 300 mm}]}
openings:
  A1:
    {kind: window, count: 2, in: W1, orientation: south, width: 1200 mm, height: 1400 mm, operation: tilt and turn,
     transmittance: 0.92 W/(m2.K), basis: declared to EN 14351-1, solar_factor: 0.5, sill_height: 900 mm}
  A2:
    {kind: window, title: Kitchen window, in: W1, orientation: east, width: 900 mm, height: 1200 mm,
     frame: {width: 110 mm, transmittance: 1.1 W/(m2.K), material: wood},
     glass: {transmittance: 0.6 W/(m2.K), panes: 3, coating: true}, edge: {spacer: improved},
     clear_opening: {width: 600 mm, height: 900 mm}, egress: true, safety_glazing: false}
  D1:
    {kind: door, title: Entrance, in: W1, orientation: north, width: 910 mm, height: 2030 mm, operation: swinging,
     transmittance: 1.2 W/(m2.K), basis: rated to CSA A440.2, source: door sheet D-4}
joins:
  - {at: eave, of: [W1, R1], length: 26 m, psi: 0.05 W/(m.K), source: detail sheet 3}
  - {at: corner, of: [W1]}
"""


def desk_of(folder, text=SMALL, **more):
    path = folder / "project.yaml"
    path.write_text(text, encoding="utf-8")
    dossier = compile_dossier(open_project(path))
    if not more:
        return Desk(dossier)
    shown = {name: getattr(dossier, name) for name in dossier.__dataclass_fields__}
    return Desk(SimpleNamespace(**(shown | {"system": dossier.system} | more)))


def changed(*pairs):
    text = SMALL
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return text


CUSTOMARY = changed(("units: metric", "units: customary"))


def both(desk):
    return "\n".join(as_text(make(desk)) for make in (whole_building, opening_schedule))


@pytest.mark.parametrize(("name", "text"), [("metric", SMALL), ("customary", CUSTOMARY)])
def test_golden(tmp_path, name, text):
    """Run this file as a script (with src and tests on the path) to write the goldens again; read the difference."""
    assert both(desk_of(tmp_path, text)) == (GOLDEN / f"envelope-small-{name}.txt").read_text(encoding="utf-8")


def rows(sheet, title):
    """The rows of the table whose first column has that title, by their first cell."""
    table = next(x for x in sheet.blocks if isinstance(x, b.Table) and x.columns[0].title == title)
    return {row.cells[0].strip("*"): row for row in table.rows}


class TestWholeBuilding:
    def test_worked_by_hand(self, tmp_path):
        """W1: (80 - 3.36 - 1.08 - 1.8473) / (0.2/0.04 + 0.17) = 73.7127/5.17 = 14.258; R1: 50/(7.5 + 0.14) = 6.545 W/K;
        A1 3.36 x 0.92 = 3.091; D1 1.8473 x 1.2 = 2.217; eave 26 x 0.05 = 1.3; 40 K."""
        found = rows(whole_building(desk_of(tmp_path)), "Part")
        assert found["W1"].cells[2:7] == ("73.7", "0.193", "14.26", found["W1"].cells[5], "570")
        assert found["R1"].cells[2:5] == ("50.0", "0.131", "6.54")
        assert found["A1"].cells[4] == "3.09" and found["D1"].cells[4] == "2.22"

    def test_heat_is_counted_by_the_degree_that_comes_first(self, tmp_path):
        assert rows(whole_building(desk_of(tmp_path, CUSTOMARY)), "Heat per degree")
        assert rows(whole_building(desk_of(tmp_path)), "Heat per kelvin")

    def test_shares_add_up_to_the_whole(self, tmp_path):
        sheet = whole_building(desk_of(tmp_path))
        shares = [float(row.cells[5]) for row in rows(sheet, "Part").values() if not row.total]
        shares += [float(row.cells[4]) for row in rows(sheet, "Join").values() if not row.total]
        shares.append(float(rows(sheet, "Heat per kelvin")["Air"].cells[3]))
        assert sum(shares) == pytest.approx(100.0, abs=0.05 * len(shares))
        assert rows(sheet, "Heat per kelvin")["Building"].cells[3] == "100.0"

    @pytest.mark.parametrize("text", [SMALL, CUSTOMARY], ids=["metric", "customary"])
    def test_every_step_recomputes_on_a_pocket_calculator(self, tmp_path, text):
        desk = desk_of(tmp_path, text)
        studies = [desk.dossier.building, *desk.dossier.openings.values()]
        steps = [step for study in studies for step in study.trace.steps()]
        assert len(steps) > 15
        for step in steps:
            words = spell(step, desk.system)
            assert recompute(words.numbers) == pytest.approx(recompute(words.result), rel=1e-3), words.numbers

    def test_the_chart_has_a_bar_for_every_part_and_the_air(self, tmp_path):
        desk = desk_of(tmp_path)
        drawing = next(x.drawing for x in whole_building(desk).blocks if isinstance(x, b.Figure))
        names = [mark.text for mark in drawing.marks if getattr(mark, "role", "") == "name"]
        assert len(names) == len(desk.dossier.building.parts) + 1 and "air change" in names

    def test_a_join_without_psi_is_named_as_not_counted(self, tmp_path):
        assert "Not counted, because the project file states no ψ_j: corner W1." in as_text(whole_building(desk_of(tmp_path)))

    def test_a_missing_area_leaves_no_sum_and_is_named(self, tmp_path):
        text = as_text(whole_building(desk_of(tmp_path, changed(("area: 50 m2, ", "")))))
        assert "- R1: area" in text and "Not calculated while the sum lacks a part." in text
        assert "(figure" not in text and "Building | transmission and air | not known" in text

    @pytest.mark.parametrize(
        ("gone", "wanted"),
        [
            ("climate: {heating_design_temperature: -20 degC}\n", "lacks climate.heating\\_design\\_temperature"),
            ("indoor: {temperature: 20 degC}\n", "lacks indoor.temperature"),
            ("air_changes_at_50_pa: 2.0\n", "Without the air: the project file lacks air"),
        ],
    )
    def test_what_the_heat_loss_lacks_is_named(self, tmp_path, gone, wanted):
        text = as_text(whole_building(desk_of(tmp_path, changed((gone, "")))))
        assert wanted.replace("\\", "") in text

    def test_against_the_ground_the_loss_is_said_to_be_overstated(self, tmp_path):
        assert "overstated" not in as_text(whole_building(desk_of(tmp_path)))

    def test_the_codes_own_sum_stands_beside(self, tmp_path):
        row = EnvelopeRow("W1", "wall", 73.7, 0.193, 0.25, 14.22, 18.43, "", "U", "x")
        judged = EnvelopeJudged((row,), 14.22, 18.43, 14.22, 18.43, "meets", (row,))
        text = as_text(whole_building(desk_of(tmp_path, envelope=judged)))
        assert "W1 | 73.7 | 0.193 | 0.250 | 14.22 | 18.43" in text
        assert "Trade-off among W1: 14.22 W/K provided, 18.43 W/K asked." in text

    def test_nothing_to_show_without_an_envelope(self, tmp_path):
        assert whole_building(desk_of(tmp_path, building=None)) is None


class TestOpenings:
    def test_a_declared_value_prints_what_it_is_not_once(self, tmp_path):
        text = as_text(opening_schedule(desk_of(tmp_path)))
        assert text.count("declared to EN 14351-1 is found at other boundary conditions") == 1
        assert text.count("does not stand in for") == 1
        without = changed(("declared to EN 14351-1", "rated to CSA A440.2"))
        assert "EN 14351-1" not in as_text(opening_schedule(desk_of(tmp_path, without)))

    def test_the_codes_default_stands_beside_a_declared_value(self, tmp_path):
        """0.55 Btu/(h.ft2.F) for two panes or more in wood is 3.12 W/(m2.K); a rated door has none beside it."""
        known = changed(("solar_factor: 0.5,", "solar_factor: 0.5, frame: {material: wood}, glass: {panes: 3},"))
        heat = rows_of_heat(under(tmp_path, "irc-2021", known))
        assert "3.12 s1" in heat["A1"] and "| – |" in heat["D1"]
        assert "or for the code's default beside it" in as_text(opening_schedule(under(tmp_path, "irc-2021", known)))
        lacking = as_text(opening_schedule(under(tmp_path, "irc-2021")))
        assert "For the code's default of A1 the project file lacks frame.material, glass.panes." in lacking

    def test_a_default_edge_is_marked_and_a_stated_one_is_not(self, tmp_path):
        marked = rows_of_heat(desk_of(tmp_path))["A2"]
        assert "†" in marked
        stated = changed(("edge: {spacer: improved}", "edge: {psi: 0.06 W/(m.K)}"))
        assert "†" not in rows_of_heat(desk_of(tmp_path, stated))["A2"]

    def test_the_escape_window_and_the_glass(self, tmp_path):
        text = as_text(opening_schedule(desk_of(tmp_path)))
        assert re.search(r"^A2 \| not given \| 600 × 900 \| 0.540 \| not given \| yes \| no$", text, re.M)
        assert "does not say whether the glass of A1, D1 is safety glass" in text
        assert "No opening is stated to be the way of escape" not in text
        assert "No opening is stated to be the way of escape" in as_text(
            opening_schedule(desk_of(tmp_path, changed(("egress: true, ", ""))))
        )

    def test_what_a_window_lacks_is_named(self, tmp_path):
        gone = "\n     transmittance: 1.2 W/(m2.K), basis: rated to CSA A440.2, source: door sheet D-4}"
        desk = desk_of(tmp_path, changed((gone, "}")))
        assert "- D1: transmittance with its basis (or frame, glass and edge)" in as_text(opening_schedule(desk))
        assert "D1 | Entrance | 1.85 | not given | not known" in as_text(whole_building(desk))

    def test_alike_windows_fold_into_one_step(self, tmp_path):
        more = """  A3:
    {kind: window, in: W1, orientation: west, width: 600 mm, height: 600 mm,
     frame: {width: 110 mm, transmittance: 1.1 W/(m2.K), material: wood},
     glass: {transmittance: 0.6 W/(m2.K), panes: 3, coating: true}, edge: {spacer: improved}, source: sheet}
"""
        same = changed(("joins:\n", more + "joins:\n"), ("egress: true,", "egress: true, source: sheet,"))
        text = as_text(opening_schedule(desk_of(tmp_path, same)))
        assert "1  Frame, glass and edge of A2, A3" in text and "2  Frame" not in text
        other = same.replace("width: 600 mm, height: 600 mm,\n     frame: {width: 110 mm, transmittance: 1.1",
                             "width: 600 mm, height: 600 mm,\n     frame: {width: 110 mm, transmittance: 1.3")  # fmt: skip
        assert "2  Frame, glass and edge of A3" in as_text(opening_schedule(desk_of(tmp_path, other)))

    def test_evidence_names_the_rows_of_the_register(self, tmp_path):
        kept = [SimpleNamespace(number="E1-04", waits=False), SimpleNamespace(number="E1-05", waits=True)]
        register = SimpleNamespace(of=lambda name, kind: kept if (name, kind) == ("A1", "opening") else [])
        heat = rows_of_heat(desk_of(tmp_path, register=register))
        assert "E1-04, **E1-05**" in heat["A1"] and "E1" not in heat["D1"]

    def test_no_openings_no_schedule(self, tmp_path):
        assert opening_schedule(desk_of(tmp_path, re.sub(r"openings:\n.*?(?=joins:)", "", SMALL, flags=re.S))) is None


def under(folder, set_id, text=SMALL):
    """The small house as if another set were chosen: nothing is judged again."""
    project = desk_of(folder, text).dossier.project
    return desk_of(folder, text, project=project.but(code=project.code.but(set=set_id)))


def rows_of_heat(desk):
    sheet = opening_schedule(desk)
    table = next(x for x in sheet.blocks if isinstance(x, b.Table) and x.columns[1].title == "{U_w}")
    return {row.cells[0].strip("*"): " | ".join(row.cells) for row in table.rows}


if __name__ == "__main__":
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        for name, text in (("metric", SMALL), ("customary", CUSTOMARY)):
            (GOLDEN / f"envelope-small-{name}.txt").write_text(both(desk_of(Path(folder), text)), encoding="utf-8")
    sys.exit(0)
