"""The examples as a reader runs them: every file checks and builds, and what each says of itself is so."""

import json
import shutil
from calendar import monthrange
from pathlib import Path

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from layerfolio.cli import main
from layerfolio.dossier import open_project

EXAMPLES = Path(__file__).parents[2] / "examples"
FILES = sorted(EXAMPLES.glob("*/*.yaml"))
COTTAGE = EXAMPLES / "straw-cottage"
every_file = pytest.mark.parametrize("path", FILES, ids=lambda p: f"{p.parent.name}/{p.stem}")


def run(*arguments):
    return CliRunner().invoke(main, [str(a) for a in arguments])


def results(path):
    ran = run("check", path, "--format", "json")
    assert ran.exit_code == 0, ran.stderr
    return json.loads(ran.stdout)


def verdicts(found, ending, subject):
    return [f["verdict"] for f in found["findings"] if f["id"].endswith(ending) and f["assembly"] == subject]


@pytest.mark.parametrize("name", ["chandlery", "straw-cottage"])
def test_each_example_is_a_folder_with_a_project_and_variants_of_it(name):
    mains = [p for p in FILES if p.parent.name == name]
    assert EXAMPLES / name / "project.yaml" in mains and len(mains) > 1
    for path in mains:
        variant = "variant_of: project.yaml" in path.read_text(encoding="utf-8")
        assert variant == (path.name != "project.yaml")


@every_file
def test_it_checks_and_every_finding_reads(path):
    found = results(path)
    assert found["findings"] and all(f["verdict"] and f["clause"] for f in found["findings"])
    plain = run("check", path)
    assert plain.exit_code == 0 and plain.exception is None
    assert plain.stdout.rstrip().endswith("have the final say.")


@every_file
def test_it_builds(path, tmp_path):
    made = run("build", path, "--output", tmp_path / "made.pdf")
    assert made.exit_code == 0 and made.exception is None, made.stderr
    title = results(path)["project"]["title"]
    assert title in " ".join(PdfReader(tmp_path / "made.pdf").pages[0].extract_text().split())


@every_file
def test_data_sheets_are_there_and_print_their_number_and_that_they_are_invented(path):
    documents = list(evidence(open_project(path).project))
    assert documents
    for one in documents:
        if not one.file:
            continue
        text = " ".join(PdfReader(path.parent / one.file).pages[0].extract_text().split())
        assert "Invented example document: no real product, maker or laboratory." in text
        assert one.number in text and one.edition in text and one.issuer.split(" (")[0] in text
        assert one.expires.isoformat() in text


def evidence(project):
    """Every document that a project names, wherever it stands."""
    for one in (*project.materials.values(), *(project.openings or {}).values()):
        yield from one.evidence
    for assembly in project.assemblies.values():
        for layer in assembly.layers:
            yield from layer.evidence
    yield from project.documents


def test_no_data_sheet_lies_about_unused():
    for folder in EXAMPLES.glob("*/data-sheets"):
        texts = "".join(p.read_text(encoding="utf-8") for p in folder.parent.glob("*.yaml"))
        assert [p.name for p in sorted(folder.iterdir()) if f"data-sheets/{p.name}" not in texts] == []


class TestChandlery:
    def test_resistances(self):
        """Worked by hand: 9.36.2.4 of the NBC, isothermal planes."""
        found = results(EXAMPLES / "chandlery")["assemblies"]
        shown = {name: round(one["thermal"]["resistance"]["value"], 2) for name, one in found.items()}
        assert shown == {"W1": 5.27, "R1": 7.28, "S1": 4.68}

    def test_the_walls_are_as_large_as_shop_and_openings_ask(self):
        """8.0 m by 6.5 m over all, 2.0 m to the eaves, gables of 30 degrees: 70 m2 less the openings, to 3 %."""
        project = open_project(EXAMPLES / "chandlery").project
        gross = 2 * (8.0 + 6.5) * 2.0 + 2 * 6.5 * (6.5 / 2 * 0.57735) / 2
        openings = sum(one.count * one.width.value * one.height.value for one in project.openings.values())
        assert project.assemblies["W1"].area.value + openings == pytest.approx(gross, rel=0.03)


class TestStrawCottage:
    def test_degree_days_agree_with_the_months(self):
        climate = open_project(COTTAGE).project.climate
        months = climate.monthly.temperature.values
        summed = sum(max(0.0, 18.0 - t) * monthrange(2027, n)[1] for n, t in enumerate(months, start=1))
        assert climate.heating_degree_days.value == pytest.approx(summed, rel=0.03)
        cooling = sum(max(0.0, t - 10.0) * monthrange(2027, n)[1] for n, t in enumerate(months, start=1))
        assert climate.cooling_degree_days.value == pytest.approx(cooling, rel=0.06)
        assert climate.heating_design_temperature.value < min(months) - 10

    def test_zone_6_by_the_limits_of_the_set(self):
        """IRC 2021, N1101.7.2: 4000 to 5000 K.d below 18 degC are zone 6."""
        project = open_project(COTTAGE).project
        assert 4000 < project.climate.heating_degree_days.value <= 5000 and project.code.zone == "6"

    def test_the_wall_is_straw_without_an_inside_panel_or_retarder(self):
        wall = open_project(COTTAGE).project.assemblies["W1"]
        assert [layer.material or layer.cavity for layer in wall.layers] == [
            "larch-board", "ventilated", "wood-fibre-board", "straw-bales", "clay-plaster",
        ]  # fmt: skip
        assert not any({"vapour control", "bracing"} & set(layer.serves) for layer in wall.layers)

    def test_openness_ratio_of_the_first_wall(self):
        """Inside 30 mm of 8, outside 80 mm of 5: 0.24 m over 0.40 m."""
        found = results(COTTAGE)["assemblies"]["W1"]["vapour"]
        assert found["ratio"] == pytest.approx(0.6, abs=0.01) and found["control_layer"] is None

    def test_the_retarder_fails_first_and_is_put_right(self):
        before, after = results(COTTAGE), results(COTTAGE / "fixed.yaml")
        assert verdicts(before, "/vapour-retarder", "W1") == ["does not meet"]
        assert verdicts(after, "/vapour-retarder", "W1") == ["meets"]
        assert after["assemblies"]["W1"]["vapour"]["ratio"] > 5

    def test_no_window_of_the_variant_rests_on_a_european_declaration(self):
        bases = [one.basis for one in open_project(COTTAGE / "fixed.yaml").project.openings.values() if one.kind == "window"]
        assert set(bases) == {"rated to NFRC 100"}
        assert "declared to EN 14351-1" in [one.basis for one in open_project(COTTAGE).project.openings.values()]

    def test_nothing_fails_in_the_variant(self):
        found = results(COTTAGE / "fixed.yaml")["findings"]
        assert [f["id"] for f in found if f["verdict"] == "does not meet" and not f.get("answered_by")] == []

    def test_the_figure_of_a_strawbale_appendix_would_not_turn_the_wall(self, tmp_path):
        """1.85 ft2.h.F/Btu an inch, bales on edge, as an author of the appendix states it."""
        folder = shutil.copytree(COTTAGE, tmp_path / "straw-cottage")
        text = "layerfolio: 1\nvariant_of: project.yaml\nmaterials: {straw-bales: {conductivity: 0.0780 W/(m.K)}}\n"
        (folder / "appendix.yaml").write_text(text, encoding="utf-8")
        found = results(folder / "appendix.yaml")
        assert found["assemblies"]["W1"]["thermal"]["transmittance"]["value"] < 0.045 * 5.678263
        assert verdicts(found, "/walls", "W1") == ["meets"]

    def test_one_document_has_run_out_and_some_are_missing(self):
        project = open_project(COTTAGE).project
        on = project.project.date
        assert [one.number for one in evidence(project) if one.expires and one.expires < on] == ["MB-11", "HU-9"]
        assert [one.for_ for one in project.documents if not one.number] == [("bracing",), ("structure",), ("airtightness",)]
