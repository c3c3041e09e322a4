"""The moisture studies as findings: the chandlery and its variants, and each limit of the method from both sides."""

from pathlib import Path

import pytest

from layerfolio.catalogue.sources import source
from layerfolio.codes.findings import Verdict
from layerfolio.codes.moisture_cautions import dew_point
from layerfolio.dossier import compile_dossier, open_project

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery"


def findings(path, question, assembly="W1"):
    dossier = compile_dossier(open_project(path))
    return [f for f in dossier.findings if f.assembly == assembly and f.id.endswith(f"/{question}")]


def changed(tmp_path, *changes, base="project.yaml"):
    text = (CHANDLERY / base).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    file = tmp_path / "project.yaml"
    file.write_text(text, encoding="utf-8")
    return file


@pytest.mark.parametrize("variant", ["no-panel", "foam-no-panel"])
def test_without_the_panel_the_vapour_barrier_article_is_not_met(variant):
    """NBC 2020, 9.25.4.2.(1): 60 ng/(Pa.s.m2) or less."""
    dossier = compile_dossier(open_project(CHANDLERY / f"{variant}.yaml"))
    found = [f for f in dossier.findings if f.assembly == "W1" and "9.25.4.2" in f.clause]
    assert [f.verdict for f in found] == [Verdict.DOES_NOT_MEET]


def test_the_chandlery_clears_with_both_readings():
    [found] = findings(CHANDLERY, "condensation")
    assert found.verdict is Verdict.MEETS and "none in any month" in found.given


def test_more_than_the_two_period_limit_is_for_somebody_to_judge():
    [found] = findings(CHANDLERY / "foam-no-panel.yaml", "condensation")
    assert found.verdict is Verdict.NEEDS_JUDGEMENT and "DIN 4108-3" in found.reason


def test_missing_monthly_values_name_what_to_add(tmp_path):
    text = (CHANDLERY / "project.yaml").read_text(encoding="utf-8")
    start, end = text.index("  monthly:"), text.index("site_loads:")
    file = tmp_path / "project.yaml"
    file.write_text(text[:start] + "\n" + text[end:], encoding="utf-8")
    [found] = findings(file, "condensation")
    assert found.verdict is Verdict.NEEDS_EVIDENCE and "climate.monthly" in found.next_step


def test_a_layer_without_vapour_figure_is_named_and_never_guessed(tmp_path):
    file = changed(tmp_path, ("    vapour_resistance_factor: {dry: 2, wet: 1}\n", ""))
    text = file.read_text(encoding="utf-8").replace("hemp-batt", "unknown-fill").replace("Hemp batts", "Unknown fill")
    file.write_text(text, encoding="utf-8")
    [found] = findings(file, "condensation")
    assert found.verdict is Verdict.NEEDS_EVIDENCE and "figures of Unknown fill (layer 5)" in found.next_step


def test_the_surface_limit_rests_on_memory_and_decides_nothing():
    [found] = findings(CHANDLERY, "surface")
    assert found.verdict is Verdict.NEEDS_JUDGEMENT and found.mark == "memory"


def test_slabs_have_no_moisture_findings():
    dossier = compile_dossier(open_project(CHANDLERY))
    assert not [f for f in dossier.findings if f.assembly == "S1" and f.id.startswith("iso-13788")]


class TestCautions:
    """Each rule has a project that touches it and a near miss that does not."""

    def test_humid_room(self, tmp_path):
        assert not findings(CHANDLERY, "humid-room")
        assert not findings(changed(tmp_path, ("humidity: {class: 2}", "humidity: {class: 3}")), "humid-room")
        assert findings(changed(tmp_path, ("humidity: {class: 2}", "humidity: {class: 4}")), "humid-room")
        humid = changed(tmp_path, ("humidity: {class: 2}", "humidity: {relative_humidity: 51 %}"))
        assert findings(humid, "humid-room")
        dry = changed(tmp_path, ("humidity: {class: 2}", "humidity: {relative_humidity: 50 %}"))
        assert not findings(dry, "humid-room")

    def test_inward_drive(self, tmp_path):
        assert not findings(CHANDLERY, "inward-drive")
        hot = changed(tmp_path, ("15, 18, 17.5, 13.5", "15, 31, 17.5, 13.5"))
        assert [f.given for f in findings(hot, "inward-drive")] == ["above it in July"]

    def test_no_ventilated_cavity(self, tmp_path):
        assert not findings(CHANDLERY, "no-ventilated-cavity")
        air = "ventilated\n        thickness: 38 mm"
        still = changed(tmp_path, (f"cavity: {air}", f"cavity: un{air}"))
        assert findings(still, "no-ventilated-cavity")

    def test_vents_under_snow(self, tmp_path):
        assert not findings(CHANDLERY, "vents-under-snow", "R1")
        assert not findings(changed(tmp_path, ("slope: 30 deg", "slope: 10 deg")), "vents-under-snow", "R1")
        assert findings(changed(tmp_path, ("slope: 30 deg", "slope: 9.9 deg")), "vents-under-snow", "R1")
        assert not findings(changed(tmp_path, ("snow: 1.8 kPa", "snow: 2.5 kPa")), "vents-under-snow", "R1")
        assert findings(changed(tmp_path, ("snow: 1.8 kPa", "snow: 2.6 kPa")), "vents-under-snow", "R1")

    def test_closed_roof(self, tmp_path):
        assert not findings(CHANDLERY, "closed-roof", "R1")
        closed = changed(tmp_path, ("{cavity: ventilated, thickness: 64 mm", "{cavity: unventilated, thickness: 64 mm"))
        assert findings(closed, "closed-roof", "R1")

    def test_tight_outside_and_inner_finish(self):
        assert not findings(CHANDLERY, "tight-outside") and not findings(CHANDLERY, "inner-finish")
        assert findings(CHANDLERY / "foam-outside.yaml", "tight-outside")
        assert findings(CHANDLERY / "no-panel.yaml", "inner-finish")

    def test_the_title_says_which_side_is_tighter(self):
        """Sums of s_d by the sheet: foam outside 0.57 : 1, without panel 1.37 : 1."""
        [foam], [open_] = (findings(CHANDLERY / f"{name}.yaml", "tight-outside") for name in ("foam-outside", "no-panel"))
        assert foam.question == "Outside layers tighter than inside ones" and foam.given.startswith("0.57")
        assert open_.question == "Outside layers nearly as tight as inside ones" and open_.given.startswith("1.4")


def test_one_value_of_each_layer_is_no_second_reading():
    """The straw wall states one vapour factor of each layer; the shop states dry and wet cups."""
    straw = CHANDLERY.parent / "straw-cottage" / "project.yaml"
    [one] = findings(straw, "condensation", "W1")
    assert "no second reading" in one.given and "less favourable" not in one.given
    [two] = findings(CHANDLERY, "condensation", "W1")
    assert "less favourable" in two.given

    def test_reclaimed(self, tmp_path):
        assert not findings(CHANDLERY, "reclaimed")
        old = ("{material: larch-board, thickness: 19 mm", "{material: larch-board, name: reclaimed boards, thickness: 19 mm")
        assert findings(changed(tmp_path, old), "reclaimed")


def test_dew_point_of_saturated_air_is_its_temperature():
    for theta in (-20.0, -5.0, 0.0, 12.0, 25.0):
        assert dew_point(theta, 1.0) == pytest.approx(theta, abs=0.02)


@pytest.mark.parametrize("occupancy", ["normal", "high"])
def test_the_continental_chart_is_a_way_to_state_the_room(tmp_path, occupancy):
    file = changed(tmp_path, ("humidity: {class: 2}", f"humidity: {{continental: {occupancy}}}"))
    [found] = findings(file, "condensation")
    assert found.verdict is Verdict.MEETS


def test_an_unknown_occupancy_of_the_chart_is_a_problem(tmp_path):
    from layerfolio.problems import ProblemsFound

    with pytest.raises(ProblemsFound, match="normal"):
        open_project(changed(tmp_path, ("humidity: {class: 2}", "humidity: {continental: low}")))


def on_standards(path):
    """Findings that rest on a standard and not on the code set."""
    found = compile_dossier(open_project(path)).findings
    return [f for f in found if f.path == "performance" and not f.id.endswith("/trade-off")]


STANDARDS = {
    "iso-13788-2012": "ISO 13788:2012",
    "din-4108-3-2018": "DIN 4108-3:2018",
    "din-68800-2": "DIN 68800-2, edition not known",
}


@pytest.mark.parametrize("file", sorted(CHANDLERY.glob("*.yaml")), ids=lambda one: one.stem)
def test_a_standard_stands_beside_the_code_set(file):
    """None of these standards is asked by the code: the line says so, with the edition as its source names it."""
    found = on_standards(file)
    assert found
    for one in found:
        assert one.clause.endswith("beside the code set"), one.clause
        if "limits-of-the-method" in one.id:
            assert one.source == "common-practice" and one.clause.startswith("common practice beside ISO 13788:2012")
            continue
        assert one.clause.startswith(STANDARDS[one.source])
        assert STANDARDS[one.source].startswith(source(one.source).short)


def test_two_periods_stand_beside_the_code_set_too(tmp_path):
    kind = "    kind: wall\n"
    file = changed(tmp_path, (kind, f"{kind}    moisture: {{method: two-period}}\n"))
    [one] = [f for f in findings(file, "two-period")]
    assert one.clause == "DIN 4108-3:2018, two periods; beside the code set"
