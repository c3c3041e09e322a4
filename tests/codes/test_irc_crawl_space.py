"""The space under a suspended floor: both sides of each share and height.

Outside figures: R408.2 (1/150, with a Class I ground cover 1/1500, an opening near each corner), R317.1 item 1 (18 in), R302.13
(1/2 in of gypsum wallboard, 5/8 in of wood panel; its exceptions), as adopted texts of 2018, 2021 and 2024 print them.
"""

from dataclasses import replace
from types import SimpleNamespace as N

import pytest

import builders as b
from codes_builders import insulation, of_resistance
from codes_envelope import judged, only
from codes_irc import SETS
from layerfolio.codes.findings import Verdict

FEET, INCH = 0.3048, 0.0254
AREA, PERIMETER = 150 * FEET**2, 50 * FEET


def floor(under=None, space=None, faces="vented space", depth=9.25, set_id="irc-2021"):
    """Joists of `depth` in under 3/4 in of boards, on what lies under them."""
    joists = b.member(0.1, lam=0.12, name="joist", width=b.length(1.5 * INCH))
    batts = replace(insulation(4.0), member=joists, thickness=b.length(depth * INCH))
    boards = b.layer(9, R=0.1, d=0.75 * INCH, family="timber-board", name="boards")
    layers = [replace(x, number=n) for n, x in enumerate([*([under] if under else []), batts, boards], 1)]
    given = {} if space is None else {"ground": {"perimeter": PERIMETER, "underfloor": space}}
    one = of_resistance(0, layers=layers, kind="floor", faces=faces, name="F1", set_id=set_id, **given)
    return replace(one, area=b.length(AREA))


def of_floor(ending, set_id="irc-2021", **shape):
    return only(judged([floor(set_id=set_id, **shape)], set_id=set_id, zone="6A", assemblies={"F1": N()}), ending)


@pytest.mark.parametrize(("square_feet", "verdict", "word"), [
    (1.0, Verdict.NEEDS_EVIDENCE, "reach 1/150"), (0.999, Verdict.NEEDS_EVIDENCE, "less than 1/150"),
    (0.1, Verdict.NEEDS_EVIDENCE, "Class I"), (0.0999, Verdict.DOES_NOT_MEET, "1/1500"),
])  # fmt: skip
@pytest.mark.parametrize("set_id", SETS)
def test_shares_of_the_openings(set_id, square_feet, verdict, word):
    found = of_floor("/under-floor-vents", set_id, space={"vents": square_feet * FEET**2 / PERIMETER * 1e6})
    assert found.verdict == verdict and word in found.reason and "corner" in found.asked
    if verdict == Verdict.NEEDS_EVIDENCE:
        assert "corner" in found.next_step and "covers the ground" in found.next_step


def test_what_is_not_described_is_asked():
    assert "ground.underfloor.vents" in of_floor("/under-floor-vents", space={}).next_step
    assert "ground.underfloor" in of_floor("/under-floor-vents").next_step
    assert of_floor("/under-floor-vents", faces="unheated space").verdict == Verdict.NOT_ASKED
    assert of_floor("/wood-over-soil", faces="unheated space").verdict == Verdict.NOT_ASKED


@pytest.mark.parametrize(("height", "verdict"), [(28.0, Verdict.NEEDS_EVIDENCE), (27.98, Verdict.NEEDS_JUDGEMENT)])
@pytest.mark.parametrize("set_id", SETS)
def test_joists_above_the_soil(set_id, height, verdict):
    """18 in under joists of 9 1/4 in and boards of 3/4 in; the height is that of the floor above the ground outside."""
    found = of_floor("/wood-over-soil", set_id, space={"height": height * INCH})
    assert found.verdict == verdict and found.limit.value == pytest.approx(18 * INCH)
    assert found.clause.startswith("R304.1" if set_id == "irc-2024" else "R317.1")


def test_a_board_under_the_joists_is_not_counted_as_wood():
    board = b.layer(9, R=0.08, d=0.5 * INCH, family="gypsum", name="board")
    one, two = (of_floor("/wood-over-soil", space={"height": 28 * INCH}, under=x) for x in (None, board))
    assert one.provided.value == pytest.approx(two.provided.value)


@pytest.mark.parametrize(("family", "material", "inches", "verdict"), [
    ("gypsum", "gypsum-board", 0.5, Verdict.MEETS), ("gypsum", "gypsum-board", 0.47, Verdict.NEEDS_JUDGEMENT),
    ("gypsum", "gypsum-sheathing", 0.5, Verdict.NEEDS_JUDGEMENT), ("plywood", "plywood", 0.625, Verdict.MEETS),
    ("strand-board", "strand-board", 0.6, Verdict.NEEDS_JUDGEMENT), ("wood-fibre", "board", 2.0, Verdict.NEEDS_JUDGEMENT),
])  # fmt: skip
@pytest.mark.parametrize("set_id", SETS)
def test_the_underside_of_a_floor(set_id, family, material, inches, verdict):
    under = b.layer(9, R=0.08, d=inches * INCH, family=family, name="board")
    found = of_floor("/floor-protection", set_id, under=replace(under, material=material), space={})
    assert found.verdict == verdict
    assert ("equal to wallboard" in found.next_step) == (material == "gypsum-sheathing")


@pytest.mark.parametrize(("depth", "said"), [(9.25, True), (9.2, False)])
def test_deep_joists_need_no_membrane_when_the_authority_sees_it_so(depth, said):
    found = of_floor("/floor-protection", depth=depth, space={})
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and ("2 by 10" in found.next_step) == said
    assert "heating appliance" in found.next_step


def test_the_cottage_by_hand():
    """7 in2 a foot along 112 ft is 784 in2, 5.44 ft2; 775 ft2 over 150 is 5.17 ft2; 24 in less 11 1/4 and 1 1/8 in is 11 5/8."""
    from pathlib import Path

    from layerfolio.dossier import compile_dossier, open_project

    cottage = Path(__file__).parents[2] / "examples" / "straw-cottage" / "project.yaml"
    found = compile_dossier(open_project(cottage)).findings
    vents, soil = only(found, "/under-floor-vents"), only(found, "/wood-over-soil")
    assert "5.44 ft²" in vents.given and "1/150 (5.17 ft²" in vents.asked and "reach 1/150" in vents.reason
    assert soil.provided.value == pytest.approx(11.625 * INCH) and soil.verdict == Verdict.NEEDS_JUDGEMENT
