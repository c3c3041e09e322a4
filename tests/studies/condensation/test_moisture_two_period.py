"""The two-period method: its limits on both sides, its films, several planes, and where it does not reach."""

from dataclasses import replace

import pytest

from builders import assembly, datum, layer, member
from layerfolio.studies.condensation import two_period
from layerfolio.studies.condensation.limits import judge_period, overall, worst
from layerfolio.studies.condensation.timber import enclosed_timber
from layerfolio.studies.condensation.types import TWO_PERIOD
from moisture_cases import CLASS_2, CLASS_4, WALLS, published_wall, study, wall


def judged(name, condensed=0.2, evaporated=5.0, limit=1.0, reserve=None, planes=None, one=None):
    one = one or published_wall()
    planes = planes if planes is not None else ((("outer board", "mineral wool"), condensed),)
    checks = judge_period(one, planes, condensed, evaporated, limit, reserve)
    return next(check for check in checks if check.name.startswith(name))


@pytest.mark.parametrize(("condensed", "verdict"), [(0.5, "meets"), (0.5001, "does not meet")])
def test_limit_where_a_layer_absorbs_nothing(condensed, verdict):
    assert judged("amount", condensed, limit=0.5).verdict == verdict


@pytest.mark.parametrize(("condensed", "verdict"), [(1.0, "meets"), (1.0001, "does not meet")])
def test_general_limit(condensed, verdict):
    assert judged("amount", condensed).verdict == verdict


@pytest.mark.parametrize(("evaporated", "verdict"), [(0.2, "meets"), (0.1999, "does not meet")])
def test_condensate_must_dry_in_summer(evaporated, verdict):
    assert judged("condensate dries", 0.2, evaporated).verdict == verdict


@pytest.mark.parametrize(
    ("family", "condensed", "verdict"),
    [("timber-board", 0.665, "meets"), ("timber-board", 0.666, "does not meet"), ("plywood", 0.399, "meets"),
     ("plywood", 0.400, "does not meet")],
)  # fmt: skip
def test_wood_takes_five_and_wood_panels_three_percent(family, condensed, verdict):
    """19 mm of 700 kg/m3 weigh 13.3 kg/m2: 5 % is 0.665, 3 % is 0.399 kg/m2."""
    one = published_wall()
    one = replace(one, layers=(replace(one.layers[0], family=family), *one.layers[1:]))
    assert judged("moisture content of outer board", condensed, one=one).verdict == verdict


def test_wood_without_density_needs_evidence():
    one = published_wall()
    one = replace(one, layers=(replace(one.layers[0], density=None), *one.layers[1:]))
    check = judged("moisture content of outer board", one=one)
    assert (check.verdict, check.value) == ("needs evidence", None) and "outer board" in check.reason


def test_wood_wool_boards_have_no_limit_on_their_moisture():
    one = published_wall()
    one = replace(one, layers=(replace(one.layers[0], material="wood-wool-board"), *one.layers[1:]))
    assert not any("moisture content" in c.name for c in study(one, None).two_period.expected.checks)


@pytest.mark.parametrize(
    ("reserve", "value", "verdict", "mark"),
    [(0.25, 0.2501, "meets", "found"), (0.25, 0.2499, "does not meet", "found"), (0.10, 0.2501, "meets", "memory"),
     (0.10, 0.2499, "needs judgement", "memory"), (0.10, 0.1001, "needs judgement", "memory"),
     (0.10, 0.0999, "does not meet", "memory")],
)  # fmt: skip
def test_drying_reserve_of_roofs_and_walls(reserve, value, verdict, mark):
    """The 100 g/m2 of walls and floors were not re-read: alone they decide nothing."""
    check = judged("drying reserve", 1.0, 1.0 + value, reserve=reserve)
    assert (check.verdict, check.mark) == (verdict, mark)


def test_reserve_is_asked_only_where_timber_is_enclosed():
    plain = wall((("render", 0.02, 1.0, 15, None), ("block", 0.24, 0.5, 8, None), ("plaster", 0.01, 0.7, 10, None)))
    assert enclosed_timber(plain) == "" and study(plain, None).two_period.reserve_limit is None
    framed = assembly(
        [
            layer(1, name="render", d=0.02, lam=1.0, mu=15),
            layer(2, name="fill", d=0.14, lam=0.04, mu=1, frame=member(0.15, lam=0.13)),
            layer(3, name="gypsum", d=0.0125, lam=0.25, mu=10),
        ]
    )
    assert study(framed, None).two_period.reserve_limit == 0.10
    assert study(replace(framed, kind="roof", heat_direction="up"), None).two_period.reserve_limit == 0.25
    steel = replace(framed.layers[1], member=replace(framed.layers[1].member, is_metal=True))
    assert enclosed_timber(replace(framed, layers=(framed.layers[0], steel, framed.layers[2]))) == ""


def test_boards_open_to_the_room_are_not_enclosed():
    boards = replace(layer(2, name="floor boards", d=0.02, lam=0.13, mu=50), timber=True)
    assert enclosed_timber(assembly([layer(1, name="concrete", d=0.2, lam=2.0, mu=100), boards])) == ""
    assert "floor boards" in enclosed_timber(assembly([boards, layer(3, name="gypsum", d=0.01, lam=0.25, mu=10)]))


def test_the_absorbing_layer_decides_the_limit():
    absorbing = published_wall()
    rows = tuple(replace(row, absorbent=True) for row in absorbing.layers)
    assert study(absorbing, None).two_period.limit == 0.5
    assert study(replace(absorbing, layers=rows), None).two_period.limit == 1.0


def test_outside_film_beside_a_ventilated_cavity():
    plain, ventilated = study(published_wall(), None), study(published_wall(ventilated=True), None)
    assert two_period.outside_film(plain.assembly) == 0.04
    assert two_period.outside_film(ventilated.assembly) == 0.08
    assert ventilated.two_period.expected.condensed < plain.two_period.expected.condensed


def test_roofs_dry_from_a_warmer_plane():
    as_wall = study(published_wall(), None).two_period.expected
    as_roof = study(published_wall(kind="roof"), None).two_period.expected
    assert as_roof.evaporated / as_wall.evaporated == pytest.approx((2000 - 1200) / (1700 - 1200))
    assert as_roof.condensed == as_wall.condensed


def test_two_wet_planes_dry_each_to_its_own_side():
    """By hand: planes at 1 and 3 of 4 m; 2e-10 * 500 Pa * 7.776e6 s = 0.7776 kg/m over the s_d to each side."""
    amount = 2e-10 * 500 * 90 * 86400
    both = two_period.evaporation([(1.0, 9.0), (3.0, 9.0)], 4.0, 1700.0)
    assert both == pytest.approx(amount * (1 / 1.0 + 1 / 1.0))
    early = two_period.evaporation([(1.0, 9.0), (3.0, amount / 2)], 4.0, 1700.0)
    assert early == pytest.approx(amount * (1 / 1.0 + 0.5 / 1.0 + 0.5 / 3.0))


def test_a_wet_zone_counts_as_one_plane_in_its_middle():
    """Fill between a tight board and an open lining: saturation is touched over a stretch of the fill."""
    rows = (("tight board", 0.02, 0.13, 2000, None), ("fill", 0.5, 0.04, 30, None))
    values_ = study(wall(rows), None).two_period.expected
    assert len(values_.planes) == 1
    assert values_.condensed == pytest.approx(sum(amount for _, amount in values_.planes))
    assert values_.planes[0][0] in {("tight board", "fill"), ("fill", "fill")}


def test_without_condensation_the_reserve_is_that_of_the_plane_nearest_to_saturation():
    found = study(wall(WALLS["A"]), None).two_period.expected
    assert found.condensed == 0 and found.planes == ()
    near = 0.175  # behind the soft board; the whole is 3.655
    assert found.reserve == pytest.approx(2e-10 * 500 * 7.776e6 * (1 / near + 1 / (3.655 - near)), rel=1e-6)


def test_where_the_method_does_not_reach():
    assert study(published_wall(faces="ground"), CLASS_2).two_period is None
    unheated = study(published_wall(faces="unheated space"), None).two_period
    assert unheated.verdict == "needs judgement" and "unheated space" in unheated.outside[0]
    damp = study(published_wall(), CLASS_4.with_points(0.1, "damp")).two_period
    assert damp.verdict == "needs judgement" and "damper" in damp.outside[0]
    assert study(published_wall(), CLASS_2).two_period.outside == ()


def test_the_two_period_method_can_decide():
    found = study(published_wall(), None, method=TWO_PERIOD)
    assert found.evaluated and found.clears is True
    assert found.greatest_accumulation == found.two_period.expected.condensed
    assert [month.planes for month in found.months] == [()] * 12


def test_a_verdict_on_both_choices_of_cups():
    """The board's wet cup lets less of the vapour out in the less favourable run: the two are judged together."""
    cups = layer(4, name="inner board", d=0.019, lam=0.127, mu=(400, 10), family="particle-board")
    one = published_wall()
    one = replace(one, layers=(*one.layers[:2], replace(cups, number=3, density=datum(700))))
    found = study(one, None).two_period
    assert found.expected.verdict == "meets" and found.less_favourable.verdict == "does not meet"
    assert found.verdict == "needs judgement"


@pytest.mark.parametrize(
    ("verdicts", "every", "both"),
    [(["meets", "meets"], "meets", "meets"), (["meets", "does not meet"], "does not meet", "needs judgement"),
     (["needs evidence", "meets"], "needs evidence", "needs judgement"),
     (["does not meet", "does not meet"], "does not meet", "does not meet"), ([], "meets", "needs judgement")],
)  # fmt: skip
def test_verdicts_together(verdicts, every, both):
    assert worst(verdicts) == every
    assert overall(verdicts) == both
