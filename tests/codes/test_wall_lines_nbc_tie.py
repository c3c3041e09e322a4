"""The tie of the bottom plate: nails, strips of steel, or the sheathing's lap; asked on every path.

Source: NBC as read in the Alberta edition of 2023 and in Ontario's code of 2024, Table 9.23.3.4 (82 mm at 400 mm, at required
braced panels 82 mm at 150 mm, for interior walls above and below) and 9.23.3.4.(2) (lap; strips of 50 × 0.41 mm at 1.2 m, two
nails of 63 mm at each end).
"""

from types import SimpleNamespace

import pytest

import builders as b
from codes_lines import findings, line, mm, pins, place, shank, strips, verdicts, wall, whole
from layerfolio.assembly.junction_types import Junction
from layerfolio.reading.wall_lines import PlateNailing

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
FULL = (("4.8 m", "0 m"), ("4.8 m", "4.8 m"))
LOW, HIGH = {}, {"Sa02": 0.8}
BARE = {"plate_nailing": None}


def nails(nail="82 mm x 3.66 mm", spacing="400 mm"):
    return PlateNailing(nail=shank(nail) if nail else None, spacing=mm(spacing) if spacing else None)


def tie(figures, assembly=None, **stated):
    return findings(place(**figures), line(FULL, **stated), assembly)["wall-line-tie"]


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize(("figures", "nail", "spacing", "verdict"), [
    (LOW, "82 mm x 3.66 mm", "400 mm", MEETS), (LOW, "82 mm x 3.66 mm", "401 mm", NOT), (LOW, "81 mm x 3.66 mm", "400 mm", NOT),
    (LOW, "82 mm x 3.25 mm", "400 mm", NOT), (LOW, "3-1/4 in x 0.148 in", "16 in", MEETS),
    (HIGH, "82 mm x 3.66 mm", "150 mm", MEETS), (HIGH, "82 mm x 3.66 mm", "151 mm", NOT),
    (HIGH, "82 mm x 3.66 mm", "400 mm", NOT), ({"wind": 900, "Sa02": 0.5}, "82 mm x 3.66 mm", "151 mm", NOT),
])  # fmt: skip
def test_nails_of_the_plate(inside, figures, nail, spacing, verdict):
    assert str(tie(figures, wall(inside), plate_nailing=nails(nail, spacing)).verdict) == verdict


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize("stated", [None, nails(None), nails(spacing=None)])
def test_without_a_tie_no_line_meets(inside, figures, stated):
    assert whole(place(**figures), line(FULL, plate_nailing=stated), wall(inside)) == EVIDENCE
    assert "plate_nailing" in tie(figures, wall(inside), plate_nailing=stated).next_step


@pytest.mark.parametrize(("change", "verdict"), [
    ({}, MEETS), ({"width": "49 mm"}, NOT), ({"thickness": "0.4 mm"}, NOT), ({"spacing": "1.21 m"}, NOT), ({"nails": 1}, NOT),
    ({"nail": "62 mm x 3.25 mm"}, NOT), ({"width": "2 in", "spacing": "48 in", "nail": "2-1/2 in x 0.131 in"}, MEETS),
    ({"width": None}, EVIDENCE), ({"thickness": None}, EVIDENCE), ({"spacing": None}, EVIDENCE), ({"nails": None}, EVIDENCE),
    ({"nail": None}, EVIDENCE),
])  # fmt: skip
@pytest.mark.parametrize("inside", [True, False])
def test_strips_on_the_low_path(change, verdict, inside):
    assert str(tie(LOW, wall(inside), **BARE, plate_strips=strips(**change)).verdict) == verdict


def test_strips_at_required_braced_panels_are_a_question():
    one = tie(HIGH, **BARE, plate_strips=strips())
    assert str(one.verdict) == JUDGE and "9.23.3.4.(2)" in one.reason
    assert str(tie(HIGH, **BARE, plate_strips=strips(spacing="1.21 m")).verdict) == NOT


@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize(("inside", "lap", "verdict"), [
    (False, True, MEETS), (False, False, EVIDENCE), (False, None, EVIDENCE), (True, True, JUDGE), (True, False, EVIDENCE),
])  # fmt: skip
def test_the_lap_of_the_sheathing(figures, inside, lap, verdict):
    assert str(tie(figures, wall(inside), **BARE, sheathing_lap=lap).verdict) == verdict


@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize(("change", "verdict"), [
    ({"panel_fastening": pins("45 mm x 2.84 mm")}, NOT), ({"panel_fastening": None}, EVIDENCE),
    ({"panel_fastening": pins("63 mm x 4 mm", kind="screw")}, JUDGE), ({"grade": "fibreboard"}, JUDGE),
    ({"grade": None}, EVIDENCE),
])  # fmt: skip
def test_the_lap_holds_as_its_nails_do(figures, change, verdict):
    """9.23.3.4.(2)(a): plywood, strand board or waferboard, nailed by 9.23.3.5."""
    assert str(tie(figures, wall(False), **BARE, sheathing_lap=True, **change).verdict) == verdict


def test_one_sufficient_tie_is_enough():
    assert str(tie(LOW, plate_nailing=nails(spacing="600 mm"), plate_strips=strips()).verdict) == MEETS
    assert str(tie(LOW, plate_nailing=nails(), plate_strips=strips(nails=1)).verdict) == MEETS


def test_an_interior_line_is_nailed_above_too():
    one = tie(HIGH, interior=True)
    assert str(one.verdict) == JUDGE and "above" in one.reason
    assert str(tie(HIGH, interior=True, plate_nailing=nails(spacing="151 mm")).verdict) == NOT
    assert str(tie(HIGH, wall(False), interior=True, **BARE, sheathing_lap=True, plate_strips=strips()).verdict) == EVIDENCE


@pytest.mark.parametrize("figures", [LOW, HIGH])
def test_anchors_are_said_not_to_be_judged(figures):
    one = tie(figures)
    assert "9.23.6.1" in one.asked and "not judged" in one.asked


def test_a_low_line_with_its_tie_meets_in_every_question():
    found = verdicts(place(**LOW), line(FULL, plate_nailing=nails()))
    assert found.pop("wall-line-length") == "not asked"
    assert set(found.values()) == {MEETS} and "wall-line-tie" in found


# a wall on a slab


def assembled(kind, name):
    made = b.layer(1, R=1, d=0.1, family="concrete" if kind == "slab" else "timber")
    return b.assembly([made], kind=kind, name=name, slope=0.0)


def sill(kind, name, stated=True):
    return Junction(1, "sill", ("W1", name), f"Sill: wall W1 on {kind} {name}", (), stated)


S1, F1 = assembled("slab", "S1"), assembled("floor", "F1")


def on(figures=LOW, *, joints=(), others=(S1,), storeys=1, documents=(), **stated):
    where = place(**figures, storeys=storeys)
    where.documents = documents
    found = findings(where, line(FULL, plate_nailing=nails(spacing="150 mm"), **stated), wall(), others=others, junctions=joints)
    return found["wall-line-tie"]


@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize("joints", [(), (sill("slab", "S1"),), (sill("slab", "S1", False),)])
def test_a_plate_on_a_slab_waits_for_its_anchors(figures, joints):
    one = on(figures, joints=joints)
    assert str(one.verdict) == EVIDENCE and "9.23.6.1" in one.reason and "structural drawings" in one.next_step
    assert "joists" in one.reason


@pytest.mark.parametrize("for_", ["structure", "anchorage"])
def test_the_document_that_is_given_for_the_structure_is_named(for_):
    paper = SimpleNamespace(title="Structural drawings", number="TP-S1", issuer="an engineer", edition=2027, for_=(for_,))
    one = on(documents=(paper,))
    assert str(one.verdict) == EVIDENCE and "TP-S1" in one.next_step
    other = SimpleNamespace(title="Test", number="T-1", issuer="a laboratory", edition=2027, for_=("airtightness",))
    assert "T-1" not in on(documents=(other,)).next_step


@pytest.mark.parametrize(("stands", "verdict"), [("wood", MEETS), ("concrete", EVIDENCE), (None, EVIDENCE)])
def test_what_the_plate_stands_on_can_be_stated(stands, verdict):
    one = on(plate_on=stands, joints=(sill("slab", "S1"),))
    assert str(one.verdict) == verdict
    if stands == "wood":
        assert "anchors" in one.reason and "not judged" in one.reason


def test_a_sole_plate_is_judged_by_its_row():
    assert str(on(HIGH, plate_on="wood").verdict) == MEETS
    where = place(**HIGH, storeys=1)
    far = findings(where, line(FULL, plate_nailing=nails(spacing="151 mm"), plate_on="wood"), wall(), others=(S1,))
    assert str(far["wall-line-tie"].verdict) == NOT


@pytest.mark.parametrize(("more", "verdict"), [
    ({"others": (F1,)}, MEETS), ({"others": (S1, F1), "joints": (sill("floor", "F1"),)}, MEETS), ({"others": ()}, MEETS),
    ({"others": (S1, F1), "joints": (sill("slab", "S1"),)}, EVIDENCE), ({"storeys": 2}, MEETS),
    ({"storeys": 2, "storeys_above": 1}, EVIDENCE), ({"others": (), "plate_on": "concrete"}, EVIDENCE),
])  # fmt: skip
def test_what_the_wall_stands_on(more, verdict):
    assert str(on(**more).verdict) == verdict


def test_nothing_of_a_line_on_concrete_ties_but_its_anchors():
    bare = {"plate_strips": strips(), "sheathing_lap": True}
    one = findings(place(**LOW), line(FULL, **BARE, **bare), wall(False), others=(S1,))["wall-line-tie"]
    assert str(one.verdict) == EVIDENCE
