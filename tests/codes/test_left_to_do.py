"""What open lines leave to do: every open line once at least, closed lines never, keys of the project file first."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from codes_builders import finding
from layerfolio.codes.findings import Verdict
from layerfolio.codes.left_to_do import Kind, left_to_do

STEPS = (
    "state building.hazard (low, medium or high)", "supply the detail", "ask the authority: is it so?", "more insulation",
    "state face_area; supply the plan", "where there is none, state building.absent: [appendages]",
)  # fmt: skip


@given(st.lists(st.tuples(st.sampled_from(Verdict), st.sampled_from(("", *STEPS)), st.booleans()), max_size=12))
def test_every_open_line_stands_in_it_and_no_other(rows):
    findings = [finding(verdict, step, answered="x" if answered else "") for verdict, step, answered in rows]
    wishes = left_to_do(findings)
    lines = {number for one in wishes for number, _ in one.lines}
    closed = (Verdict.MEETS, Verdict.NOT_ASKED)
    assert lines == {n for n, one in enumerate(findings, 1) if one.verdict not in closed and not one.answered_by}
    order = [list(Kind).index(one.kind) for one in wishes]
    assert order == sorted(order)
    assert len({(one.kind, one.words) for one in wishes}) == len(wishes)


@pytest.mark.parametrize(("verdict", "step", "kinds"), [
    (Verdict.NEEDS_JUDGEMENT, STEPS[0], [Kind.ANSWER]), (Verdict.NEEDS_EVIDENCE, STEPS[1], [Kind.PAPER]),
    (Verdict.NEEDS_JUDGEMENT, STEPS[2], [Kind.QUESTION]), (Verdict.DOES_NOT_MEET, STEPS[3], [Kind.CHANGE]),
    (Verdict.NEEDS_EVIDENCE, STEPS[4], [Kind.ANSWER, Kind.PAPER]), (Verdict.NEEDS_JUDGEMENT, "", [Kind.QUESTION]),
    (Verdict.NEEDS_JUDGEMENT, "answer: does the floor lie above the frost line (ground.above_frost_line)?", [Kind.ANSWER]),
    (Verdict.NEEDS_JUDGEMENT, "name the vapour barrier (serves: [vapour control])", [Kind.ANSWER]),
])  # fmt: skip
def test_who_can_do_it(verdict, step, kinds):
    assert [one.kind for one in left_to_do([finding(verdict, step)])] == kinds


def test_absences_are_one_wish():
    steps = [f"where there is none, state building.absent: [{one}]" for one in ("appendages", "services in walls")]
    (wish,) = left_to_do([finding(Verdict.NEEDS_EVIDENCE, one) for one in steps])
    assert wish.words.endswith("appendages, services in walls") and [n for n, _ in wish.lines] == [1, 2]
