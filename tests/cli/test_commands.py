"""The commands as a person runs them: what is written, what is printed, which exit code."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from layerfolio.cli import main

ROOT = Path(__file__).parents[2]
VERDICT_KEYS = (
    "basis", "frame", "glass", "edge", "clear_opening", "egress", "sill_height", "safety_glazing", "glazed", "joins", "documents",
    "for", "proves", "ground", "edge_insulation", "vents", "fire_blocks", "distance_to_boundary", "clearance_to_ground",
    "site_loads", "energy_path", "zone_source", "heat_recovery", "area_includes_openings", "wall_lines",
)  # fmt: skip
CHANDLERY = ROOT / "examples" / "chandlery"


def run(*arguments):
    return CliRunner().invoke(main, [str(a) for a in arguments])


@pytest.fixture
def project(tmp_path):
    """A copy of the chandlery that a test may change."""
    return Path(shutil.copytree(CHANDLERY, tmp_path / "chandlery"))


def change(project, old, new):
    file = project / "project.yaml"
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


class TestCheck:
    def test_prints_results_findings_and_who_decides(self):
        result = run("check", CHANDLERY)
        assert result.exit_code == 0
        assert "W1  R 5.27 m²·K/W" in result.stdout
        assert "needs evidence" in result.stdout
        assert result.stdout.rstrip().endswith("have the final say.")

    def test_json_is_the_results_file(self):
        found = json.loads(run("check", CHANDLERY, "--format", "json").stdout)
        assert found["layerfolio"]["results_format"] == 1
        wall = found["assemblies"]["W1"]
        assert [layer["name"] for layer in wall["layers"]][:2] == ["larch-board", "ventilated"]
        thermal = wall["thermal"]
        assert thermal["method"] == "isothermal-planes"
        assert thermal["resistance"] == thermal["by_method"]["isothermal-planes"]["resistance"]
        assert thermal["by_method"]["combined"]["upper_limit"] == thermal["by_method"]["parallel-path"]["resistance"]
        assert (
            thermal["by_method"]["combined"]["lower_limit"] == thermal["by_method"]["isothermal-planes"]["resistance"]
        )
        assert wall["vapour"]["control_layer"] == "panel-15"
        assert wall["vapour"]["control_permeance"]["dry"]["value"] == pytest.approx(48e-12)
        finding = next(f for f in found["findings"] if f["assembly"] == "W1" and f["topic"] == "thermal")
        assert finding["id"].startswith("nbc-2020/9.36.2.6")
        assert finding["limit"] == {"value": 2.97, "unit": "m2.K/W"}
        assert found["explanations"][0]["assembly"] == "W1"

    def test_quantities_carry_only_the_agreed_units(self):
        agreed = {
            "m",
            "m2",
            "m3",
            "kg/m2",
            "kg/m3",
            "W/(m.K)",
            "m2.K/W",
            "W/(m2.K)",
            "W/K",
            "W",
            "kg/(m2.s.Pa)",
            "Pa",
            "kPa",
            "degC",
            "N",
            "kN/m",
            "kgCO2e/m2",
            "kgC/m2",
            "kg",
            "1",
        }

        def units(node):
            if isinstance(node, dict):
                if set(node) == {"value", "unit"}:
                    yield node["unit"]
                else:
                    for inner in node.values():
                        yield from units(inner)
            elif isinstance(node, list):
                for inner in node:
                    yield from units(inner)

        assert set(units(json.loads(run("check", CHANDLERY, "--format", "json").stdout))) <= agreed

    def test_strict_tells_a_finding_that_does_not_meet(self, project):
        assert run("check", project, "--strict").exit_code == 0
        change(project, "thickness: 184 mm", "thickness: 38 mm")
        change(
            project,
            "{material: mineral-wool-board, thickness: 50 mm}",
            "{material: mineral-wool-board, thickness: 20 mm}",
        )
        assert run("check", project).exit_code == 0
        strict = run("check", project, "--strict")
        assert strict.exit_code == 1
        assert "does not meet" in strict.stdout

    def test_every_mistake_in_one_run_and_nothing_on_standard_output(self, project):
        change(project, "thickness: 19 mm", "thickness: 19")
        change(project, "material: gypsum-board", "material: gypsum-bord")
        change(project, "amendments: []", "amendments: [{requirement: nbc-2020/1/none, value: 3 m2.K/W, source: by-law}]")
        result = run("check", project)
        assert result.exit_code == 2 and result.stdout == ""
        lines = result.stderr.strip().splitlines()
        assert len(lines) >= 4 and any("code.amendments[0]" in line for line in lines)
        assert all(line.startswith(f"{project / 'project.yaml'}:") for line in lines)
        assert any("gypsum-board" in line for line in lines)

    def test_unknown_amendment_is_a_problem_with_its_line(self, project):
        change(
            project, "amendments: []", "amendments: [{requirement: nbc-2020/1/none, value: 3 m2.K/W, source: by-law}]"
        )
        result = run("check", project)
        assert result.exit_code == 2
        assert "code.amendments[0]" in result.stderr and ":32:30: " in result.stderr

    def test_cladding_on_the_room_side_is_a_warning(self, project):
        text = (project / "project.yaml").read_text(encoding="utf-8")
        first = "      - {material: larch-board, thickness: 19 mm, serves: [weather face]}\n"
        text = text.replace(first, "", 1)
        lining = "      - {material: gypsum-board, thickness: 12.7 mm, serves: [lining]}\n"
        text = text.replace(lining, lining + first, 1)
        (project / "project.yaml").write_text(text, encoding="utf-8")
        result = run("check", project, "--format", "json")
        assert result.exit_code == 0
        assert any("room side" in w["message"] for w in json.loads(result.stdout)["warnings"])


class TestBuild:
    def test_writes_beside_the_project_file(self, project):
        result = run("build", project)
        assert result.exit_code == 0
        reader = PdfReader(project / "project.pdf")
        assert len(reader.pages) > 10
        assert reader.metadata.title == "Tern Point chandlery"
        text = "\n".join(page.extract_text() for page in reader.pages)
        for words in ("Outside walls", "5.27", "needs evidence", "panel-15", "Space for the authority"):
            assert words in text

    def test_outline_lists_every_sheet(self, project):
        run("build", project)
        titles = [entry.title for entry in PdfReader(project / "project.pdf").outline]
        assert [t.split()[0] for t in titles][:4] == ["G0", "G1", "C1", "C2"]
        assert {"W1", "W1-T", "R1", "S1", "X1"} <= {t.split()[0] for t in titles}

    def test_no_annotations_and_the_notice_on_every_page(self, project):
        run("build", project)
        for page in PdfReader(project / "project.pdf").pages:
            assert "/Annots" not in page
            assert "authority having jurisdiction" in page.extract_text()

    def test_customary_variant(self, project):
        result = run("build", project / "customary.yaml")
        assert result.exit_code == 0
        text = "\n".join(page.extract_text() for page in PdfReader(project / "customary.pdf").pages)
        assert "29.9" in text and "ft²·°F·h/Btu" in text

    def test_unwritable_output_leaves_nothing(self, project, tmp_path):
        result = run("build", project, "--output", tmp_path / "no such folder" / "out.pdf")
        assert result.exit_code == 2 and "Traceback" not in result.output
        assert not (tmp_path / "no such folder").exists()
        folder = tmp_path / "taken.pdf"
        folder.mkdir()
        assert run("build", project, "--output", folder).exit_code == 2

    def test_a_broken_project_leaves_the_old_package(self, project):
        run("build", project)
        before = (project / "project.pdf").read_bytes()
        change(project, "thickness: 19 mm", "thickness: nan m")
        assert run("build", project).exit_code == 2
        assert (project / "project.pdf").read_bytes() == before

    def test_same_bytes_from_two_folders_and_two_hash_seeds(self, tmp_path):
        found = []
        for seed, name in (("1", "here"), ("77", "there")):
            copy = shutil.copytree(CHANDLERY, tmp_path / name / "chandlery")
            command = [
                sys.executable,
                "-m",
                "layerfolio",
                "build",
                str(copy),
                "--output",
                str(tmp_path / f"{name}.pdf"),
            ]
            subprocess.run(command, check=True, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True)
            found.append((tmp_path / f"{name}.pdf").read_bytes())
        assert found[0] == found[1]


HOSTILE = '<img src="file:///etc/hosts"> & {{ 7*7 }} **bold** \u202eabc\u05d0\u05d1 {R_si} ' + "very long " * 60


def test_hostile_texts_print_as_text(project):
    import yaml

    file = project / "project.yaml"
    text = file.read_text(encoding="utf-8").replace(
        "title: Tern Point chandlery", f"title: {json.dumps(HOSTILE[:180])}"
    )
    text = text.replace("title: Outside walls", f"title: {json.dumps(HOSTILE[:190])}")
    assert yaml.safe_load(text)
    file.write_text(text, encoding="utf-8")
    result = run("build", project)
    assert result.exit_code == 0, result.output
    printed = "\n".join(page.extract_text() for page in PdfReader(project / "project.pdf").pages)
    assert "{{ 7*7 }}" in printed and "49" not in printed.split("{{ 7*7 }}")[0][-40:]
    assert "<img src=" in printed


class TestDraw:
    @pytest.mark.parametrize("ending", ["svg", "pdf"])
    def test_one_assembly(self, project, tmp_path, ending):
        target = tmp_path / f"W1.{ending}"
        assert run("draw", project, "W1", "--output", target).exit_code == 0
        start = target.read_bytes()[:200]
        assert start.startswith(b"%PDF-") if ending == "pdf" else b"<svg" in start

    def test_other_endings_and_names_are_refused(self, project, tmp_path):
        assert run("draw", project, "W1", "--output", tmp_path / "W1.dwg").exit_code == 2
        result = run("draw", project, "W9", "--output", tmp_path / "W9.svg")
        assert result.exit_code == 2 and "W1" in result.stderr
        assert not list(tmp_path.glob("W*"))

    @pytest.mark.parametrize("written", ["10", "1:10", "1 : 10"])
    def test_the_scale_that_is_asked_for(self, project, tmp_path, written):
        target = tmp_path / "W1.svg"
        assert run("draw", project, "W1", "-o", target, "--scale", written).exit_code == 0
        assert "1 : 10" in target.read_text(encoding="utf-8")

    def test_view_and_hatch_change_the_drawing(self, project, tmp_path):
        for name, more in (("a", []), ("b", ["--view", "plan"]), ("c", ["--view", "vertical"]), ("d", ["--hatch", "light"])):
            assert run("draw", project, "W1", "-o", tmp_path / f"{name}.svg", *more).exit_code == 0
        plan, same, upright, light = ((tmp_path / f"{name}.svg").read_bytes() for name in "abcd")
        assert plan == same and len({plan, upright, light}) == 3 and len(light) < len(plan)

    def test_a_dxf_and_a_junction(self, project, tmp_path):
        assert run("draw", project, "W1", "-o", tmp_path / "W1.dxf").exit_code == 0
        assert (tmp_path / "W1.dxf").read_text(encoding="utf-8").lstrip().startswith("0")
        assert run("draw", project, "D1", "-o", tmp_path / "D1.pdf").exit_code == 0
        assert run("draw", project, "D99", "-o", tmp_path / "D99.pdf").exit_code == 2

    @pytest.mark.parametrize(
        ("more", "words"),
        [(["W1", "--scale", "small"], "no scale"), (["W1", "--scale", "0"], "1 : 1 to"),
         (["R1", "--view", "plan"], "no section in plan"),
         (["D1", "--view", "plan"], "one view"), (["W1", "--view", "side"], "vertical"), (["W1", "--hatch", "none"], "light")],
    )  # fmt: skip
    def test_what_cannot_be_drawn_is_said_in_a_sentence(self, project, tmp_path, more, words):
        result = run("draw", project, *more, "-o", tmp_path / "x.svg")
        assert result.exit_code == 2 and words in result.stderr and not list(tmp_path.glob("x*"))

    def test_dxf_without_its_library_says_what_to_install(self, project, tmp_path, monkeypatch):
        monkeypatch.setattr("layerfolio.drawing.writers.dxf.is_there", lambda: False)
        result = run("draw", project, "W1", "-o", tmp_path / "W1.dxf")
        assert result.exit_code == 2 and "pip install layerfolio[dxf]" in result.stderr and not list(tmp_path.glob("W1*"))


class TestNew:
    @pytest.mark.parametrize("starter", ["wall", "iso-wall", "house"])
    def test_a_starter_builds_as_it_stands(self, tmp_path, starter):
        assert run("new", tmp_path / "mine", "--starter", starter).exit_code == 0
        assert run("check", tmp_path / "mine").exit_code == 0
        assert run("build", tmp_path / "mine").exit_code == 0
        assert (tmp_path / "mine" / "project.pdf").stat().st_size > 10_000

    def test_the_house_holds_the_keys_that_verdicts_hang_on_and_turns_canadian_as_its_head_says(self, tmp_path):
        run("new", tmp_path / "mine", "--starter", "house")
        file = tmp_path / "mine" / "project.yaml"
        text = file.read_text(encoding="utf-8")
        assert [key for key in VERDICT_KEYS if f"{key}:" not in text] == []
        for old, new in (
            ("set: irc-2021", "set: nbc-2020"), ("  # heat_recovery: true ", "  heat_recovery: true "),
            ("basis: rated to NFRC 100", "basis: rated to CSA A440.2"),
            ("seismic: {category: B}", "seismic: {Sa02: 0.3}"), ("wind_speed: 115 mph", "wind_pressure_1_50: 0.45 kPa"),
        ):  # fmt: skip
            assert old in text
            text = text.replace(old, new)
        text = re.sub("  (energy_path|zone_source): .*\n", "", text)
        file.write_text(text, encoding="utf-8")
        result = run("check", file)
        assert result.exit_code == 0 and "9.36.2.7" in result.stdout and "To look at again" not in result.stdout

    def test_the_readme_lists_those_keys(self):
        text = (ROOT / "README.md").read_text(encoding="utf-8")
        section = text.partition("## Keys that verdicts hang on\n")[2].partition("\n## ")[0]
        assert [key for key in VERDICT_KEYS if f"`{key}`" not in section] == []

    def test_nothing_is_overwritten(self, tmp_path):
        (tmp_path / "note.txt").write_text("mine")
        assert run("new", tmp_path).exit_code == 2
        assert [p.name for p in tmp_path.iterdir()] == ["note.txt"]

    def test_unknown_starter_names_the_known_ones(self, tmp_path):
        result = run("new", tmp_path / "x", "--starter", "castle")
        assert result.exit_code == 2 and "wall" in result.stderr


@pytest.mark.parametrize(
    ("what", "words"),
    [
        ("materials", "gypsum-board"),
        ("codes", "nbc-2020"),
        ("questions", "inside-panel"),
        ("climates", "Whistler"),
        ("starters", "wall"),
    ],
)
def test_lists(what, words):
    result = run("list", what)
    assert result.exit_code == 0 and words in result.stdout


def test_schema_holds_the_example_and_refuses_a_misspelt_key():
    import yaml
    from jsonschema import Draft202012Validator

    class WithoutDates(yaml.SafeLoader):
        """Dates stay text, as an editor sees them."""

    WithoutDates.yaml_implicit_resolvers = {
        first: [(tag, pattern) for tag, pattern in rows if not tag.endswith("timestamp")]
        for first, rows in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }
    schema = json.loads(run("schema").stdout)
    Draft202012Validator.check_schema(schema)
    example = yaml.load((CHANDLERY / "project.yaml").read_text(encoding="utf-8"), Loader=WithoutDates)
    assert list(Draft202012Validator(schema).iter_errors(example)) == []
    example["assemblies"]["W1"]["layer"] = []
    assert list(Draft202012Validator(schema).iter_errors(example))


@pytest.mark.parametrize(
    "arguments", [["biuld", "x"], ["check"], ["check", "nowhere"], ["list", "things"], ["check", "/", "-x"]]
)
def test_wrong_calls_end_with_two_and_a_sentence(arguments):
    result = run(*arguments)
    assert result.exit_code == 2
    assert result.stderr.strip() and "Traceback" not in result.output


def test_a_mistyped_command_is_guessed():
    assert "build" in run("biuld", "x").stderr


class TestOutputsTakeNothingElsesPlace:
    def test_the_project_file_and_its_documents(self, project):
        for name in ("project.yaml", "data-sheets/panel-15.pdf"):
            before = (project / name).read_bytes()
            result = run("build", project, "--output", project / name)
            assert result.exit_code == 2 and "nothing was written" in result.stderr
            assert (project / name).read_bytes() == before

    @pytest.mark.parametrize("command", [["build"], ["draw"]])
    def test_of_a_variant_by_any_name_and_before_it_is_there(self, project, tmp_path, command):
        wall = ["W1"] if command == ["draw"] else []
        (project / "project.pdf").write_bytes((project / "project.yaml").read_bytes())
        change(project, "file: data-sheets/panel-15.pdf", "file: data-sheets/coming.pdf")
        variant = project / "customary.yaml"
        variant.write_text(variant.read_text(encoding="utf-8").replace("project.yaml", "project.pdf"), encoding="utf-8")
        os.link(project / "data-sheets" / "hemp-batt.pdf", tmp_path / "linked.pdf")
        change(project, "layerfolio: 1", "layerfolio: 1 ")
        before = {one: one.read_bytes() for one in tmp_path.rglob("*") if one.is_file()}
        (project / "project.pdf").write_bytes((project / "project.yaml").read_bytes())
        before[project / "project.pdf"] = (project / "project.yaml").read_bytes()
        for target in (project / "project.pdf", project / "data-sheets/../project.pdf", tmp_path / "linked.pdf",
                       project / "data-sheets" / "coming.pdf"):  # fmt: skip
            result = run(*command, variant, *wall, "--output", target)
            assert result.exit_code == 2 and "a file of the project itself" in result.stderr
        assert {one: one.read_bytes() for one in tmp_path.rglob("*") if one.is_file()} == before

    def test_a_folder_of_that_name_stays(self, project, tmp_path):
        (tmp_path / "folder.pdf").mkdir()
        for command in (["build", project], ["draw", project, "W1"]):
            result = run(*command, "--output", tmp_path / "folder.pdf")
            assert result.exit_code == 2 and result.stderr.startswith(f"{tmp_path / 'folder.pdf'}: ")
        assert list((tmp_path / "folder.pdf").iterdir()) == []

    @pytest.mark.parametrize("name", ["out.txt", "out", "out.svg"])
    def test_another_ending(self, project, tmp_path, name):
        result = run("build", project, "--output", tmp_path / name)
        assert result.exit_code == 2 and ".pdf" in result.stderr and not (tmp_path / name).exists()

    def test_links_and_devices(self, project, tmp_path):
        (tmp_path / "real.pdf").write_bytes(b"old")
        (tmp_path / "link.pdf").symlink_to(tmp_path / "real.pdf")
        os.mkfifo(tmp_path / "pipe.pdf")
        for name in ("link.pdf", "pipe.pdf"):
            assert run("build", project, "--output", tmp_path / name).exit_code == 2
        assert (tmp_path / "real.pdf").read_bytes() == b"old"

    def test_a_missing_folder_is_named(self, project, tmp_path):
        result = run("draw", project, "W1", "--output", tmp_path / "nodir" / "W1.svg")
        assert result.exit_code == 2 and f"create the folder {tmp_path / 'nodir'} first" in result.stderr


def test_a_reader_that_leaves_early_is_no_error(tmp_path):
    command = f"{sys.executable} -m layerfolio list materials | head -1; exit ${{PIPESTATUS[0]}}"
    done = subprocess.run(["bash", "-c", command], capture_output=True, text=True)
    assert done.stderr == "" and done.stdout.count("\n") == 1


@pytest.mark.parametrize("name", ["G0", "C1", "X12", "E1", "c2"])
def test_numbers_of_the_packages_own_sheets_name_no_assembly(project, name):
    change(project, "  W1:\n", f"  {name}:\n")
    result = run("check", project)
    assert result.exit_code == 2 and f"assemblies.{name}" in result.stderr and "S1" in result.stderr


def test_an_assembly_with_nothing_below_it_is_a_problem(project):
    change(project, "  S1:\n", "  S2:\n  S1:\n")
    result = run("check", project)
    assert result.exit_code == 2 and "nothing stands below S2" in result.stderr


@pytest.mark.parametrize(
    ("asked", "meant"),
    [("hempcrete", "hemp-lime"), ("fir", "douglas-fir"), ("mineral-wool", "mineral-wool-batt"), ("hemp-bat", "hemp-batt")],
)
def test_an_unknown_material_is_guessed_and_the_list_named(project, asked, meant):
    change(project, "material: larch-board", f"material: {asked}")
    result = run("check", project)
    assert result.exit_code == 2 and f'"{meant}"' in result.stderr and "layerfolio list materials" in result.stderr


@pytest.mark.parametrize(("asked", "words"), [("w1", 'did you mean "W1"?'), ("W11", '"W1"'), ("zz", "W1, ")])
def test_an_unknown_assembly_is_guessed(project, asked, words):
    result = run("draw", project, asked)
    assert result.exit_code == 2 and words in result.stderr


class TestWhatIsToBeLookedAt:
    def test_build_counts_verdicts_and_cautions_as_check_does(self, project):
        checked = run("check", project, "--format", "json")
        assert json.loads(checked.stdout)["warnings"] == []
        lines = run("build", project).stdout.splitlines()
        assert len(lines) == 2 and lines[0].startswith("wrote ")
        assert lines[1].removeprefix("findings: ") in run("check", project).stdout.splitlines()
        change(project, "  temperature: 20 degC", "  temperature: 36 degC")
        change(project, "title: Outside walls", "title: North \u6771")
        built = run("build", project).stdout.splitlines()
        assert built[2] == "To look at again" and len(built) == 5
        assert set(built[3:]) <= set(run("check", project).stdout.splitlines())

    def test_characters_without_a_sign_in_the_fonts(self, project):
        change(project, "title: Tern Point chandlery", "title: Térn Pöint ½ λ chandlery")
        assert "U+" not in run("check", project).stdout
        change(project, "title: Térn", "title: \u6771\u4eac Térn")
        change(project, "gypsum-board, thickness", "gypsum-board, title: \U0001f3e0, thickness")
        found = json.loads(run("check", project, "--format", "json").stdout)["warnings"]
        assert found[0]["path"] == "project.title"
        assert "\u6771 \u4eac" in found[0]["message"] and "U+6771, U+4EAC" in found[0]["message"]
        assert all("U+1F3E0" in w["message"] and w["path"].endswith(".title") for w in found[1:]) and len(found) > 1


class TestListsSayWhatTheyList:
    def test_starters_and_questions_in_words(self):
        for line in run("list", "starters").stdout.splitlines():
            assert "code set" in line and "W1" in line
        for line in run("list", "questions").stdout.partition("\n\n")[0].splitlines():
            assert line.endswith("?") and "{" not in line and len(line.split()) > 5

    def test_climates_name_the_keys(self):
        first = run("list", "climates").stdout.splitlines()[0]
        for word in ("climate:", "heating_degree_days", "heating_design_temperature", "site_loads:", "wind_pressure_1_50"):
            assert word in first

    def test_the_schema_names_hatch_families_and_what_evidence_proves(self):
        made = json.loads(run("schema").stdout)["$defs"]
        assert "strand-board" in made["Layer"]["properties"]["family"]["description"]
        proves = made["Evidence"]["properties"]["proves"]["description"]
        assert "permeance" in proves and "air permeance" in proves and "bracing" in proves


def test_questions_list_what_amendments_can_replace():
    lines = run("list", "questions").stdout.splitlines()
    head = next(n for n, line in enumerate(lines) if line.startswith("irc-2021: "))
    (walls,) = [n for n, line in enumerate(lines) if line.split()[:1] == ["irc-2021/N1102.1.2/walls"]]
    assert walls > head and "W/(m2.K) or Btu/(h.ft2.F)" in lines[walls]
    assert not any(line.startswith("  ") and "inside-panel" in line for line in lines) and "inside-panel" in lines[0] + lines[1]
