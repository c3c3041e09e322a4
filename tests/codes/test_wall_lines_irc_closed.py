"""Lines of bracing whose method is ruled out, under the American code: nothing of them meets, and what is settled is said.

Outside figures: Table R602.10.4 (method LIB: studs at 16 in), Table R602.10.5 (55, 62 and 69 in for walls of 8, 9 and 10 ft, none
higher), R602.10.4.3 (gypsum board opposite the bracing, which LIB may not leave out), as adopted texts of 2021 print them.
"""

import pytest

from codes_lines import findings, judged, line, pins, place, verdicts, wall
from layerfolio.reading.wall_lines import PanelBoard

MEETS, NOT, JUDGE, EVIDENCE, FREE = "meets", "does not meet", "needs judgement", "needs evidence", "not asked"
ENDS = (("12 ft", "0 ft"), ("12 ft", "20 ft"))


def us(panels=ENDS, **more):
    return line(panels, **{
        "length": "32 ft", "height": "9 ft", "line_spacing": "30 ft", "eave_to_ridge": "10 ft", "grade": "plywood",
        "thickness": "3/8 in", "panel_fastening": pins("2 in x 0.113 in", "6 in", "12 in"), "storeys_above": 0,
        "plate_nailing": None, "gypsum_opposite": False,
    } | more)  # fmt: skip


def let_in(panels=ENDS, **more):
    return us(panels, **{"method": "LIB", "grade": None, "panel_fastening": None, "gypsum_opposite": True} | more)


def at(**more):
    return place("irc-2021", **{"mph": 115, "exposure": "B"} | more)


CLOSE = wall(studs="16 in", gypsum_outside=True)


@pytest.mark.parametrize(("change", "studs", "word"), [
    ({"gypsum_opposite": False}, "16 in", "gypsum"), ({}, "17 in", "studs"), ({"height": "11 ft"}, "16 in", "height"),
    ({"storeys_above": 2}, "16 in", "load"), ({"gypsum_opposite": False}, "36 in", "gypsum"),
])  # fmt: skip
def test_nothing_of_a_line_meets_whose_method_is_ruled_out(change, studs, word):
    found = findings(at(storeys=3), let_in(**change), wall(studs=studs))
    assert MEETS not in [str(one.verdict) for one in found.values()]
    assert str(found["wall-line"].verdict) == NOT and word in found["wall-line"].reason
    assert "design" in found["wall-line"].next_step
    assert {str(found[x].verdict) for x in ("wall-line-layout", "wall-line-fastening")} == {FREE}
    assert all("LIB" in found[x].reason for x in ("wall-line-layout", "wall-line-fastening"))


def test_braces_that_the_method_takes_are_not_ruled_out():
    found = verdicts(at(), let_in(), CLOSE)
    assert found["wall-line"] == found["wall-line-layout"] == found["wall-line-length"] == MEETS


@pytest.mark.parametrize(("stated", "verdict"), [(False, NOT), (None, EVIDENCE), (True, MEETS)])
def test_the_gypsum_board_that_let_in_braces_need(stated, verdict):
    one = findings(at(), let_in(gypsum_opposite=stated), CLOSE)["wall-line-length"]
    assert str(one.verdict) == verdict
    assert bool(one.next_step) is (verdict != MEETS)
    if stated is None:
        assert "gypsum_opposite" in one.next_step


def test_gypsum_board_that_no_layer_shows_is_a_question():
    one = findings(at(), let_in(), wall(studs="16 in", gypsum_inside=False))["wall-line-length"]
    assert str(one.verdict) == JUDGE and "gypsum" in one.next_step


def test_a_finding_that_settles_says_what_to_do():
    for change in ({"gypsum_opposite": False}, {"storeys_above": 2}):
        one = findings(at(storeys=3), let_in(**change), CLOSE)["wall-line-length"]
        assert str(one.verdict) == NOT and "design" in one.next_step


@pytest.mark.parametrize(("thickness", "verdict"), [("3/8 in", MEETS), ("5/16 in", FREE)])
def test_panels_that_are_none_of_the_method_count_for_nothing(thickness, verdict):
    from codes_lines import mm

    stated = us((("12 ft", "0 ft"), ("12 ft", "20 ft")), panel=PanelBoard(grade="plywood", thickness=mm(thickness)))
    found = verdicts(at(), stated, CLOSE)
    assert found["wall-line-layout"] == found["wall-line-length"] == verdict


def test_a_brace_has_no_face_and_no_panel():
    found = findings(at(), let_in(), CLOSE)
    assert "face not known" not in found["wall-line"].given and "let into" in found["wall-line"].given
    assert "braces" in found["wall-line-length"].given and "panels" not in found["wall-line-length"].given


@pytest.mark.parametrize(("height", "method", "least"), [
    ("8 ft", "LIB", "4'-7\""), ("8 ft 6 in", "LIB", "5'-2\""), ("9 ft", "WSP", "4'-0\""), ("11 ft", "WSP", "4'-5\""),
])  # fmt: skip
def test_the_least_length_and_the_own_lengths_print(height, method, least):
    stated = let_in(height=height) if method == "LIB" else us(height=height, method="WSP")
    one = findings(at(units="customary"), stated, CLOSE)["wall-line-layout"]
    assert least in one.asked and "each" in one.asked and "12'-0\"" in one.given
    assert "2 of 2" in one.given


def test_short_panels_are_told_apart():
    one = findings(at(), us((("12 ft", "0 ft"), ("3 ft", "14 ft"), ("12 ft", "20 ft"))), CLOSE)["wall-line-layout"]
    assert "2 of 3" in one.given and "3" in one.given


def test_the_steps_of_a_ruled_out_line_carry_no_length():
    assert judged(at(), let_in(gypsum_opposite=False), CLOSE).required is None
