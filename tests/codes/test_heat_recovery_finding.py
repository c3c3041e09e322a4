"""Efficiency asked of heat recovery: it turns on January's 2.5 % temperature (NBC 9.36.3.9, read in the Alberta edition)."""

import pytest

from codes_builders import of_resistance, only, project, quantity, studies
from layerfolio import codes
from layerfolio.codes.findings import Verdict

COLD = "60 % sensible recovery at 0 °C and 55 % at −25 °C, January's 2.5 % temperature being below −10 °C"
MILD = "60 % sensible recovery at 0 °C, January's 2.5 % temperature not being below −10 °C"
OPEN = "60 % sensible recovery at 0 °C; where January's 2.5 % temperature is below −10 °C, also 55 % at −25 °C"


def found(theta, units="metric"):
    where = project(units=units)
    where.climate.heating_design_temperature = quantity(theta, "temperature")
    return only(codes.judge(where, studies(of_resistance(5))), "/heat-recovery")


@pytest.mark.parametrize(("theta", "asked", "step"), [
    (-27, COLD, "at 0 °C and at −25 °C"), (-10.1, COLD, "at 0 °C and at −25 °C"), (-10, MILD, "at 0 °C"), (-7, MILD, "at 0 °C"),
    (None, OPEN, "at both temperatures"),
])  # fmt: skip
def test_both_sides_of_the_january_temperature(theta, asked, step):
    one = found(theta)
    assert one.verdict is Verdict.NEEDS_EVIDENCE and one.asked == asked
    assert one.next_step == f"supply the rating of the equipment {step}"


def test_the_temperature_used_is_printed():
    assert found(-27).given == (
        "heat recovery is stated; no equipment is named; heating design temperature −27 °C, taken as January's 2.5 %"
    )
    assert found(None).given.endswith("heating design temperature not given")


def test_customary_first():
    one = found(-27, "customary")
    assert "−16.6 °F (−27 °C)" in one.given
    assert one.asked.startswith("60 % sensible recovery at 32 °F (0 °C) and 55 % at −13 °F (−25 °C), January's")
    assert "below 14 °F (−10 °C)" in one.asked and one.next_step.endswith("at 32 °F (0 °C) and at −13 °F (−25 °C)")


def test_a_named_document_turns_the_question():
    """With a document in hand nothing is missing: somebody has to read whether the equipment reaches the figures."""
    from types import SimpleNamespace as Stated

    where = project()
    paper = Stated(number="HR-20", issuer="a test house", edition="2026", title=None, expires=None, for_=("heat recovery",))
    where.documents = (paper,)
    one = only(codes.judge(where, studies(of_resistance(5))), "/heat-recovery")
    assert one.verdict is Verdict.NEEDS_JUDGEMENT and "its document is HR-20" in one.given
    paper.number = paper.issuer = paper.edition = None
    one = only(codes.judge(where, studies(of_resistance(5))), "/heat-recovery")
    assert one.verdict is Verdict.NEEDS_EVIDENCE and "no equipment is named" in one.given
