"""The drying reserve of enclosed timber: 0.250 kg/m² was read, the lower figure for walls rests on memory."""

from dataclasses import dataclass, field
from types import SimpleNamespace

import pytest

import builders as b
from layerfolio.codes.findings import Verdict
from layerfolio.codes.moisture_two_period import drying_reserve
from layerfolio.studies.condensation.limits import judge_period, reserve_limit


@dataclass(frozen=True)
class TwoPeriods:
    """As much of a two-period study as the finding reads."""

    expected: object
    less_favourable: object
    reserve_limit: float
    outside: tuple = field(default=())


def timber(kind):
    frame = b.member(0.2, lam=0.13)
    layers = [
        b.layer(1, d=0.05, lam=0.04, mu=1),
        b.layer(2, d=0.2, lam=0.04, mu=1, frame=frame),
        b.layer(3, d=0.01, lam=0.2, mu=10),
    ]
    return b.assembly(layers, kind=kind)


def found(kind, expected, less, outside=()):
    assembly = timber(kind)
    limit = reserve_limit(assembly)

    def period(reserve):
        checks = judge_period(assembly, (), 0.0, reserve, 1.0, limit)
        return SimpleNamespace(reserve=reserve, checks=checks)

    return drying_reserve("W1", assembly, TwoPeriods(period(expected), period(less), limit, outside))


@pytest.mark.parametrize(("kind", "reserves", "verdict", "mark"), [
    ("wall", (0.250, 0.250), Verdict.MEETS, "found"),
    ("wall", (0.2499, 0.9), Verdict.NEEDS_JUDGEMENT, "memory"),
    ("wall", (0.100, 0.100), Verdict.NEEDS_JUDGEMENT, "memory"),
    ("wall", (0.099, 0.099), Verdict.DOES_NOT_MEET, "found"),
    ("wall", (0.9, 0.01), Verdict.NEEDS_JUDGEMENT, "found"),
    ("floor", (0.15, 0.15), Verdict.NEEDS_JUDGEMENT, "memory"),
    ("roof", (0.250, 0.250), Verdict.MEETS, "found"),
    ("roof", (0.2499, 0.2499), Verdict.DOES_NOT_MEET, "found"),
])  # fmt: skip
def test_only_the_figure_that_was_read_decides(kind, reserves, verdict, mark):
    """DIN 68800-2: 250 g/m² a year, read in study notes; 100 for walls and floors was never re-read."""
    one = found(kind, *reserves)
    assert (one.verdict, one.mark) == (verdict, mark)
    assert (one.next_step == "") == (verdict is Verdict.MEETS)


def test_the_line_prints_the_figure_that_was_read_first():
    assert found("wall", 1, 1).asked.startswith("0.250 kg/m² or more (for walls 0.100, from memory)")
    assert found("floor", 1, 1).asked.startswith("0.250 kg/m² or more (for floors 0.100, from memory)")
    assert found("roof", 1, 1).asked.startswith("0.250 kg/m² or more")
    assert "memory" not in found("roof", 1, 1).asked


def test_outside_the_reach_of_the_method_nothing_is_decided():
    one = found("wall", 1, 1, outside=("the room is humid",))
    assert one.verdict is Verdict.NEEDS_JUDGEMENT and "humid" in one.reason
