"""Where customary units come first, areas, degree-days and temperatures of a finding do so too."""

import re
from pathlib import Path

import pytest

from codes_builders import of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.codes import site_figures as figures
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.units.quantity import Quantity

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery"
EVERYWHERE = r"\d (m²(?!·)|m²·K/W|°C|K·d|degree-days"
ALONE = {"nbc-2020": re.compile(EVERYWHERE + "|kPa|mm)"), "irc-2021": re.compile(EVERYWHERE + ")")}


def outside_brackets(text):
    return re.sub(r"\([^()]*\)", "", text)


@pytest.mark.parametrize("code", sorted(ALONE))
def test_no_metric_figure_stands_first(code, tmp_path):
    text = (CHANDLERY / "project.yaml").read_text(encoding="utf-8").replace("units: metric", "units: customary")
    text = text.replace("set: nbc-2020", f"set: {code}").replace("slope: 30 deg", "slope: 9 deg")
    file = tmp_path / "project.yaml"
    file.write_text(text, encoding="utf-8")
    findings = compile_dossier(open_project(file)).findings
    assert findings
    for one in findings:
        for said in (one.asked, one.given):
            assert not ALONE[code].search(outside_brackets(said)), said


def lines(**about):
    findings = codes.judge(project(units="customary", **about), studies(of_resistance(5)))
    return only(findings, "/applies"), only(findings, "/zone"), only(findings, "/energy-scope")


def test_the_lines_on_the_building():
    applies, zone, energy = lines()
    assert applies.asked.startswith("3 storeys and 6458 ft² (600 m²) at most")
    assert applies.given == "1 storey, building area 560 ft² (52 m²), mercantile"
    assert zone.asked == "zone 6: 7200 to 8998 °F·d (4000 to 4999 K·d) below 64.4 °F (18 °C)"
    assert zone.given == "zone 6, 8280 °F·d (4600 K·d)"
    assert "3229 ft² (300 m²) floor area" in energy.asked
    assert energy.given == "1 storey, conditioned floor area 495 ft² (46 m²), building area 560 ft² (52 m²), mercantile"


@pytest.mark.parametrize(("said", "metric", "customary"), [
    (figures.area, (46, "46 m²"), "495 ft² (46 m²)"),
    (figures.degree_days, (4600, "4600 degree-days"), "8280 °F·d (4600 K·d)"),
    (figures.temperature, (-27, "−27 °C"), "−16.6 °F (−27 °C)"),
    (figures.temperature, (0, "0 °C"), "32 °F (0 °C)"),
    (figures.pressure, (800, "0.80 kPa"), "16.7 psf (0.80 kPa)"),
    (figures.length, (Quantity(0.015, "length", "15 mm"), "15 mm"), '9/16" (15 mm)'),
    (figures.length, (Quantity(0.6, "length", "600 mm"), "600 mm"), '23 5/8" (600 mm)'),
], ids=str)  # fmt: skip
def test_figures_in_both_systems(said, metric, customary):
    """1 ft is 0.3048 m, 1 psf 47.88 Pa, by definition of the pound and the foot."""
    value, text = metric
    assert said(value) == text and said(value, True) == customary


def test_temperatures_in_a_sets_own_words():
    words = "by heating degree-days below 18 °C and cooling degree-days above 10 °C; at −25 °C"
    assert figures.in_system(words) == words
    assert figures.in_system(words, True) == (
        "by heating degree-days below 64.4 °F (18 °C) and cooling degree-days above 50 °F (10 °C); at −13 °F (−25 °C)"
    )
