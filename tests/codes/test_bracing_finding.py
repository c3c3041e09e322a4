"""Bracing: which path is open turns on wind and earthquake figures; both sides of each limit of 9.23.13.1 and 9.23.13.2.

Limits: NBC in the Alberta edition of 2023, 9.23.13.1 to 9.23.13.3 (Sa(0.2) 0.70 and 1.8; 1-in-50 hourly wind pressure 0.80
and 1.20 kPa).
"""

from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

import builders as b
from codes_builders import insulation, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.codes.bracing import judge_bracing
from layerfolio.codes.context import Envelope, context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.requirements import requirements
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.units.quantity import Quantity

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery"


def at(wind=450, Sa02=0.3, units="metric"):
    where = project(units=units)
    seismic = None if Sa02 is None else SimpleNamespace(Sa02=Sa02)
    pressure = None if wind is None else Quantity(wind, "pressure", f"{wind} Pa")
    where.site_loads = SimpleNamespace(wind_pressure_1_50=pressure, seismic=seismic)
    return where


def studs(**kwargs):
    return replace(insulation(3, name="Batts"), member=b.member(0.2, R=1.5, **kwargs))


def panel(d=0.015):
    return b.layer(9, R=0.1, d=d, serves=["bracing"], name="Panel")


def found(where, *layers):
    numbered = [replace(one, number=i + 1) for i, one in enumerate(layers or (studs(), panel()))]
    return only(codes.judge(where, studies(of_resistance(0, layers=numbered))), "/bracing")


def test_the_chandlery_states_the_figures_of_its_place():
    dossier = compile_dossier(open_project(CHANDLERY))
    one = only([x for x in dossier.findings if x.assembly == "W1"], "/bracing")
    assert one.verdict is Verdict.NEEDS_JUDGEMENT
    assert "site_loads" not in one.next_step and "the place lead to 9.23.13.1:" in one.reason
    assert one.given == (
        "wind pressure 0.45 kPa; earthquake figure Sa(0.2) 0.3; Panel-15, strand board (layer 6), 15 mm, seams taped; "
        "studs at 600 mm; fastening of the panels as stated of L1, L2, L3 and L4"
    )
    assert "0.70" in one.asked and "0.80 kPa" in one.asked and "9.23.13.1" in one.asked


@pytest.mark.parametrize(("where", "layers", "missing"), [
    (at(Sa02=None), (), "site_loads.seismic.Sa02"), (at(wind=None), (), "site_loads.wind_pressure_1_50"),
    (project(), (), "site_loads.wind_pressure_1_50"), (at(), (studs(), panel(None)), "thickness of Panel (layer 2)"),
    (at(), (studs(spacing=None), panel()), "spacing of the studs"), (at(), (insulation(3), panel()), "spacing of the studs"),
], ids=str)  # fmt: skip
def test_a_figure_that_is_missing_is_named(where, layers, missing):
    one = found(where, *layers)
    assert one.verdict is Verdict.NEEDS_EVIDENCE and missing in one.next_step and "engineer" in one.next_step


@pytest.mark.parametrize(("wind", "Sa02", "clause"), [
    (799, 0.70, "9.23.13.1"), (800, 0.70, "9.23.13.2"), (799, 0.701, "9.23.13.2"), (1199, 1.8, "9.23.13.2"),
    (1200, 0.3, "9.23.13.3"), (450, 1.81, "9.23.13.3"),
])  # fmt: skip
def test_both_sides_of_the_limits(wind, Sa02, clause):
    one = found(at(wind, Sa02))
    assert one.verdict is Verdict.NEEDS_JUDGEMENT
    assert f"{clause}: " in one.reason and "structural engineer" in one.who_decides


@pytest.mark.parametrize("where", [at(), at(Sa02=None), project()], ids=["all", "no earthquake", "nothing"])
@pytest.mark.parametrize("layers", [(studs(), panel()), (panel(), studs()), (studs(),)], ids=["inside", "outside", "none"])
def test_bracing_never_meets(where, layers):
    assert found(where, *layers).verdict in (Verdict.NEEDS_EVIDENCE, Verdict.NEEDS_JUDGEMENT)


def test_without_a_bracing_layer_the_line_says_so():
    one = found(at(), studs())
    assert "no layer is stated to serve bracing" in one.given and one.verdict is Verdict.NEEDS_JUDGEMENT


def test_customary_first():
    one = found(at(units="customary"))
    assert one.given.startswith("wind pressure 9.4 psf (0.45 kPa); ") and "16.7 psf (0.80 kPa)" in one.asked
    assert '9/16" (15 mm)' in one.given


@pytest.mark.parametrize(("stated", "words"), [
    ((), "fastening of the panels not given"), (("L1",), "as stated of L1"), ((None,), "fastening of the panels not given"),
    (("L1", None), "as stated of L1, not stated of L2"),
])  # fmt: skip
def test_fastening_is_said_to_be_given_where_a_line_states_it(stated, words):
    made = [replace(one, number=i + 1) for i, one in enumerate((studs(), panel()))]
    known = studies(of_resistance(0, layers=made))
    fastening = SimpleNamespace(kind="nail")
    lines = {
        f"L{n}": SimpleNamespace(assembly="W1", stated=SimpleNamespace(panel_fastening=fastening if one else None))
        for n, one in enumerate(stated, 1)
    }  # fmt: skip
    about = context(at(), Envelope({name: one[0] for name, one in known.items()}, wall_lines=lines))
    rule = next(one for one in requirements("nbc-2020") if one.question == "bracing")
    assert judge_bracing(rule, *known["W1"], about).given.endswith(words)
