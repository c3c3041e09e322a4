"""An amendment is used or refused, never accepted and forgotten."""

from dataclasses import replace
from types import SimpleNamespace as N

import pytest

import builders as b
from codes_builders import amendment, of_resistance
from codes_envelope import judged, only
from codes_irc import RSI, SETS, board, found, panel, sheathing, studs
from layerfolio import codes
from layerfolio.codes.amendments import amendable, amendment_problems
from layerfolio.codes.findings import Verdict
from layerfolio.codes.requirements import requirements

ALL = ("nbc-2015", "nbc-2020", "bc-2024", *SETS, "iso")
READ = {
    "at_least", "at_most", "vapour_barrier", "rated_opening", "glass_block", "nominal_resistance", "capillary_break", "clearance",
    "roof_clearance", "foundation_wall", "insulation", "vapour_retarder", "figures_only", "slab_insulation", "fenestration",
    "unvented_roof", "retarder_with_foam", "straw_bales",
}  # fmt: skip
"""Judges that take an amended figure, each by a test of its own here or beside its table."""
TABLED = ("furring-over-foam", "cladding-through-foam", "unvented-roof-foam")


@pytest.mark.parametrize("set_id", ALL)
def test_no_figure_can_be_amended_that_nothing_reads(set_id):
    judges = {one.id: one.judge for one in requirements(set_id)}
    assert {judges[one] for one, kind in amendable(set_id).items() if kind != "date"} <= READ


@pytest.mark.parametrize("question", TABLED)
@pytest.mark.parametrize("set_id", SETS)
def test_a_table_of_cells_or_a_class_has_no_figure_to_amend(set_id, question):
    (asked,) = [one.id for one in requirements(set_id) if one.question == question]
    project = N(code=N(set=set_id, amendments=(amendment(asked, "200 mm"),)))
    (found,) = amendment_problems(project)
    assert found.path == "code.amendments[0].requirement" and asked in found.message
    assert "table or a class" in found.message and "authority" in found.message
    with pytest.raises(KeyError):
        amendable(set_id)[asked]


def straw(inches, amendments=(), set_id="irc-2018"):
    bales = b.layer(1, lam=0.052, d=inches * 0.0254, mu=2, name="bales", family="straw", insulating=True)
    one = of_resistance(0, layers=[replace(bales, number=1)], method="parallel-path", set_id=set_id)
    found = judged([one], set_id=set_id, zone="6A", degree_days=None, amendments=list(amendments), assemblies={"W1": N()})
    return only(found, "/strawbale-bales")


@pytest.mark.parametrize("set_id", SETS)
def test_an_amended_thickness_of_bales(set_id):
    (asked,) = [one for one in codes.amendable(set_id) if one.endswith("/strawbale-bales")]
    change = amendment(asked, "16 in", "ordinance 9")
    found = [straw(inches, [change], set_id) for inches in (16, 15.99)]
    assert [one.verdict for one in found] == [Verdict.MEETS, Verdict.DOES_NOT_MEET]
    assert all(one.amended == "ordinance 9" and one.limit.value == pytest.approx(0.4064) for one in found)


@pytest.mark.parametrize("set_id", ["irc-2021", "irc-2024"])
def test_amended_insulation_outside_a_tight_retarder(set_id):
    change = amendment(f"{set_id}/R702.7/retarder-with-foam", f"{8 * RSI} m2.K/W", "ordinance 9")
    layers = (sheathing(), studs(), panel(0.8, 2.4))
    at = [found("/retarder-with-foam", board(R), *layers, set_id=set_id, amendments=[change]) for R in (8, 7.99)]
    assert [one.verdict for one in at] == [Verdict.MEETS, Verdict.DOES_NOT_MEET]
    assert all(one.amended == "ordinance 9" for one in at)
