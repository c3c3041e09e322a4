"""Figures of the cover: whichever system the project file is written in, the one that comes first comes first."""

from pathlib import Path

import pytest
from pypdf import PdfReader

from layerfolio.binding import bind
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.cover import written
from layerfolio.sheets.package import package
from layerfolio.units.grammar import parse

ROWS = [  # as written, kind, metric first, customary first
    ("-18 degF", "temperature", "−27.8 °C (−18 °F)", "−18 °F (−27.8 °C)"),
    ("-27 degC", "temperature", "−27 °C", "−16.6 °F (−27 °C)"),
    ("41.8 psf", "pressure", "2.00 kPa (41.8 psf)", "41.8 psf (2.00 kPa)"),
    ("1.8 kPa", "pressure", "1.8 kPa", "37.6 psf (1.8 kPa)"),
    ("775 ft2", "area", "72.0 m² (775 ft²)", "775 ft² (72.0 m²)"),
    ("8650 F.d", "degree_days", "4805.6 K·d (8650 °F·d)", "8650 °F·d (4805.6 K·d)"),
    ("4600 K.d", "degree_days", "4600 K·d", "8280 °F·d (4600 K·d)"),
    ("40 L/s", "airflow", "40 L/s", "84.8 cfm (40 L/s)"),
    ("35 cfm", "airflow", "16.5 L/s (35 cfm)", "35 cfm (16.5 L/s)"),
    ("-28 C", "temperature", "−28 °C", "−18.4 °F (−28 °C)"),
    ("68 F", "temperature", "20.0 °C (68 °F)", "68 °F (20.0 °C)"),
    ("-28°C", "temperature", "−28 °C", "−18.4 °F (−28 °C)"),
    ("70 sqm", "area", "70 m²", "753 ft² (70 m²)"),
    ("543 sq ft", "area", "50.4 m² (543 ft²)", "543 ft² (50.4 m²)"),
    ("4950 cu ft", "volume", "140 m³ (4950 ft³)", "4950 ft³ (140 m³)"),
    ("115 mph", "speed", "51.4 m/s (115 mph)", "115 mph (51.4 m/s)"),
]


@pytest.mark.parametrize(("text", "kind", "metric", "customary"), ROWS, ids=[row[0] for row in ROWS])
def test_the_system_that_comes_first(text, kind, metric, customary):
    quantity = parse(text, kind)
    assert written(quantity, "metric").replace("\u00a0", " ") == metric
    assert written(quantity, "customary").replace("\u00a0", " ") == customary


@pytest.mark.parametrize("name", ["chandlery", "net-loft", "straw-cottage", "straw-cottage/fixed.yaml"])
def test_the_space_for_the_decision_stands_on_the_cover_itself(tmp_path, name):
    """The authority writes beside what the package is: with all its sheets in the index the cover keeps to one page."""
    made = package(compile_dossier(open_project(Path(__file__).parents[2] / "examples" / name)))
    bind(made, tmp_path / "package.pdf")
    assert len(made.sheets) > 20 and PdfReader(tmp_path / "package.pdf").page_labels[:2] == ["G0", "G1"]


def test_a_variant_says_so_in_words_of_an_office():
    """A file's name says nothing to whoever holds the paper."""
    straw = Path(__file__).parents[2] / "examples" / "straw-cottage"
    heads = [package(compile_dossier(open_project(path))).sheets[0].blocks[0] for path in (straw, straw / "fixed.yaml")]
    assert heads[0].subtitle == "Envelope assemblies: permit submittal package"
    assert heads[1].subtitle == "Envelope assemblies: permit submittal package; variant (C2)"


def test_degree_days_name_their_base_in_the_units_that_come_first():
    def bases(name):
        words = as_text(package(compile_dossier(open_project(Path(__file__).parents[2] / "examples" / name))).sheets[0])
        return [line.partition("|")[0].strip() for line in words.splitlines() if line.startswith("Heating degree-days")]

    assert bases("straw-cottage") == ["Heating degree-days below 18 °C (64.4 °F)"]
    assert bases("chandlery") == ["Heating degree-days below 18 °C"]


def test_the_guide_speaks_of_one_assembly_for_all_and_promises_steps_only_where_they_stand():
    def answers(name):
        made = package(compile_dossier(open_project(Path(__file__).parents[2] / "examples" / name)))
        return as_text(next(one for one in made.sheets if one.number == "G1"))

    straw, shop = answers("straw-cottage"), answers("chandlery")
    assert "W1 ..." in straw and "W1-T, W1-V ..." in straw
    assert "cladding through insulation, step by step" not in straw and "cladding through insulation, step by step" in shop


def test_an_assembly_without_a_title_is_called_by_its_kind(tmp_path):
    straw = (Path(__file__).parents[2] / "examples" / "straw-cottage" / "project.yaml").read_text(encoding="utf-8")
    (tmp_path / "project.yaml").write_text(straw.replace("    title: Straw walls\n", ""), encoding="utf-8")
    made = package(compile_dossier(open_project(tmp_path / "project.yaml")))
    heads = {one.number: one.blocks[0] for one in made.sheets}
    assert (heads["W1"].tag, heads["W1"].title) == ("W1", "Wall") and heads["F1"].title == "Floor over the crawl space"


def test_a_share_of_framing_rounds_its_half_up():
    """1 1/2 in at 16 in is 9.375 %."""
    made = package(compile_dossier(open_project(Path(__file__).parents[2] / "examples" / "straw-cottage")))
    assert "Joists of layer 2 take 9.38 % of the area" in as_text(next(one for one in made.sheets if one.number == "C5"))
