"""What the American sets say of bracing as a whole: beside the lines that are judged, and where none is stated."""

import pytest

from codes_builders import studies
from codes_irc import SETS, house, panel, studs, wall
from codes_lines import line, studied
from layerfolio import codes
from layerfolio.codes.context import Envelope, context
from layerfolio.codes.findings import Verdict


def reminder(lines, set_id="irc-2021", layers=()):
    one = wall(studs(), *layers, set_id=set_id)
    known, where = studies(one), house("6A", set_id)
    made = {name: studied(line(), one, name) for name in lines}
    envelope = Envelope({"W1": known["W1"][0]}, wall_lines=made)
    found = codes.judge(where, known, envelope, context(where, envelope))
    (said,) = [one for one in found if one.id.endswith("/bracing")]
    return said


@pytest.mark.parametrize("set_id", SETS)
def test_stated_lines_are_named_and_not_asked_again(set_id):
    said = reminder(("L1", "L2"), set_id)
    assert said.verdict == Verdict.NEEDS_EVIDENCE and "L1 and L2" in said.given
    assert "length of each panel" not in said.next_step and "foundation" in said.next_step


@pytest.mark.parametrize("set_id", SETS)
def test_without_lines_a_design_comes_first(set_id):
    said = reminder((), set_id)
    assert said.next_step.startswith("supply the engineer's design") and "no layer that braces" in said.given
    assert "panel (layer 2) of W1" in reminder((), set_id, (panel(1, serves=("bracing",)),)).given
