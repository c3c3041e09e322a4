"""Furring over foam against every cell of the published table on both sides, and what stands in the way of *meets*."""

from dataclasses import replace

import pytest

import builders as b
from codes_builders import cases
from codes_irc import SETS, wall
from layerfolio.codes.findings import Verdict
from layerfolio.codes.requirements import requirements
from structure_walls import INCH, PSF, SIZES, board, cladding, fasteners, furring, hung, long_enough, of_clause, studs

TABLE = cases("irc-furring")
FURRING, DIRECT, WIND, NBC = "/furring-over-foam", "/cladding-through-foam", "/wind-on-cladding", "/cladding-attachment"
NEAR, MM = 0.02, 1 / 25.4


def row_cells(rows):
    for kind, diameter, penetration, spacing, *columns in rows:
        for rows_at, text in zip((16, 24), columns, strict=True):
            for weight, depth in zip(TABLE["weights"], text.split(), strict=True):
                yield kind, diameter, penetration, spacing, rows_at, weight, None if depth == "DR" else float(depth)


CELLS = list(row_cells(TABLE["rows"]))
DIRECT_CELLS = list(row_cells([["nail", one[0], None, *one[1:]] for one in TABLE["direct"]]))


def judged(cell, *, depth, set_id="irc-2021", more=0.05, **changes):
    kind, diameter, penetration, spacing, rows_at, weight, _ = cell
    pins = fasteners(kind, outer=diameter, length=0.75 + depth + penetration + more, spacing=spacing, rows=rows_at)
    return of_clause(FURRING, hung(pins, weight=weight, depth=depth, apart=rows_at, **changes), set_id)


@pytest.mark.parametrize("set_id", ["irc-2021", "irc-2024"])
@pytest.mark.parametrize("cell", CELLS, ids=str)
def test_every_cell_on_both_sides(cell, set_id):
    depth = cell[-1]
    if depth is None:
        found = judged(cell, depth=0.5, set_id=set_id)
        assert found.verdict == Verdict.NEEDS_JUDGEMENT and "to be designed by a licensed professional" in found.next_step
        return
    within, beyond = (judged(cell, depth=depth + shift, set_id=set_id) for shift in (0, NEAR))
    assert within.verdict == Verdict.MEETS and within.limit.value == pytest.approx(depth * INCH)
    assert beyond.verdict == Verdict.DOES_NOT_MEET and beyond.mark == "found"


@pytest.mark.parametrize("cell", CELLS, ids=str)
def test_a_heavier_cladding_or_a_wider_spacing_takes_the_next_cell(cell):
    kind, diameter, penetration, spacing, rows_at, weight, depth = cell
    if depth is None or weight == 25:
        return
    columns = TABLE["weights"]
    after = next(c[-1] for c in CELLS if c[:5] == cell[:5] and c[5] == columns[columns.index(weight) + 1])
    heavier = judged((kind, diameter, penetration, spacing, rows_at, weight * 1.01, None), depth=depth)
    if after is None:
        assert heavier.verdict == Verdict.NEEDS_JUDGEMENT
    else:
        assert heavier.verdict == (Verdict.MEETS if after >= depth else Verdict.DOES_NOT_MEET)
        assert heavier.limit.value == pytest.approx(after * INCH)


def test_2018_has_no_column_of_15_psf():
    cell = ("nail", 0.131, 1.25, 8, 16, 15, None)
    assert judged(cell, depth=1.45, set_id="irc-2018").verdict == Verdict.MEETS
    assert judged(cell, depth=1.60, set_id="irc-2018").verdict == Verdict.DOES_NOT_MEET
    assert judged(cell, depth=1.60, set_id="irc-2021").verdict == Verdict.MEETS


def test_a_screw_of_4_8_mm_is_a_no_10():
    found = of_clause(FURRING, hung(fasteners("screw", outer=4.8 * MM, root=3.9 * MM, length=4, spacing=300 * MM, rows=400 * MM),
                                    weight=10, apart=400 * MM))  # fmt: skip
    assert found.verdict == Verdict.MEETS
    thin = fasteners("screw", outer=4.7 * MM, root=3.8 * MM, length=4, spacing=300 * MM, rows=400 * MM)
    assert of_clause(FURRING, hung(thin, weight=10, apart=400 * MM)).verdict == Verdict.NEEDS_JUDGEMENT


@pytest.mark.parametrize("kind", SIZES)
@pytest.mark.parametrize(("more", "verdict"), [(0.0, Verdict.MEETS), (-0.02, Verdict.DOES_NOT_MEET)])
def test_penetration_on_both_sides(kind, more, verdict):
    pins = fasteners(kind, length=long_enough(kind, more=more), spacing=12)
    found = of_clause(FURRING, hung(pins, weight=3))
    assert found.verdict == verdict, found.reason


@pytest.mark.parametrize(("set_id", "verdict"), [
    ("irc-2018", Verdict.DOES_NOT_MEET), ("irc-2021", Verdict.MEETS), ("irc-2024", Verdict.MEETS),
])  # fmt: skip
def test_wood_panels_count_as_penetration_since_2021(set_id, verdict):
    panel = replace(b.layer(9, R=0.1, d=0.5 * INCH, mu=60, family="plywood", name="panel"), density=b.datum(500))
    pins = fasteners("screw", length=0.75 + 1.0 + 0.5 + 0.5, spacing=12)
    assert of_clause(FURRING, hung(pins, weight=3, boards=(board(1), panel)), set_id).verdict == verdict


WALLS = {
    "two boards of foam": (dict(boards=(board(0.5, name="a"), board(0.5, name="b"))), Verdict.MEETS, ""),
    "light furring wood": (dict(wood=0.41), Verdict.NEEDS_JUDGEMENT, "0.41"),
    "light studs": (dict(studs_wood=0.41), Verdict.NEEDS_JUDGEMENT, "0.41"),
    "thin furring": (dict(thickness=0.7), Verdict.NEEDS_JUDGEMENT, "thinner"),
    "wood-fibre boards": (dict(boards=(board(1, family="wood-fibre"),)), Verdict.NEEDS_JUDGEMENT, "foam plastics alone"),
    "mineral wool": (dict(boards=(board(1, family="mineral-board"),)), Verdict.NEEDS_JUDGEMENT, "foam plastics alone"),
    "foam beside wood fibre": (
        dict(boards=(board(0.5), board(0.5, family="wood-fibre", name="b"))), Verdict.NEEDS_JUDGEMENT, "foam plastics alone",
    ),
    "foamed glass": (dict(boards=(board(1, material="cellular-glass"),)), Verdict.NEEDS_JUDGEMENT, "foam plastics alone"),
    "no paper of strength": (dict(boards=(board(1, documents=()),)), Verdict.NEEDS_EVIDENCE, "compressive"),
    "horizontal": (dict(direction="horizontal"), Verdict.NEEDS_JUDGEMENT, "horizontal"),
    "direction unknown": (dict(direction=""), Verdict.NEEDS_EVIDENCE, "direction"),
    "too heavy": (dict(weight=25.1), Verdict.NEEDS_JUDGEMENT, "25 psf"),
}  # fmt: skip


@pytest.mark.parametrize("name", WALLS)
def test_conditions_of_the_table(name):
    changes, verdict, word = WALLS[name]
    pins = fasteners("screw", length=4.0, spacing=12)
    found = of_clause(FURRING, hung(pins, **{"weight": 3, **changes}))
    assert found.verdict == verdict and word in found.reason, found.reason
    if verdict == Verdict.NEEDS_JUDGEMENT:
        assert "to be designed by a licensed professional" in found.next_step


@pytest.mark.parametrize(("apart", "verdict"), [(24, Verdict.MEETS), (24.1, Verdict.NEEDS_JUDGEMENT)])
def test_furring_no_wider_apart_than_24_in(apart, verdict):
    pins = fasteners("screw", length=4.0, spacing=12, rows=apart)
    assert of_clause(FURRING, hung(pins, weight=3, apart=apart)).verdict == verdict


@pytest.mark.parametrize(("spacing", "verdict"), [(24, Verdict.MEETS), (24.1, Verdict.NEEDS_JUDGEMENT)])
def test_fasteners_no_wider_apart_than_the_table(spacing, verdict):
    pins = fasteners("screw", length=4.0, spacing=spacing)
    assert of_clause(FURRING, hung(pins, weight=3)).verdict == verdict


def test_a_stamp_that_is_not_named_is_asked_for():
    pins = fasteners("screw", length=4.0, spacing=12)
    found = of_clause(FURRING, hung(pins, weight=3, wood=None, material="spruce"))
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "stamp" in found.reason and "species group" in found.next_step
    named = of_clause(FURRING, hung(pins, weight=3, wood=None, material="spruce-pine-fir"))
    assert named.verdict == Verdict.MEETS
    light = of_clause(FURRING, hung(pins, weight=3, wood=None, material="spruce-pine-fir-south"))
    assert light.verdict == Verdict.NEEDS_JUDGEMENT and "0.36" in light.reason


def test_nothing_is_judged_while_fasteners_are_not_stated():
    found = of_clause(FURRING, hung(None))
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "fasteners" in found.next_step
    half = of_clause(FURRING, hung(fasteners("screw", length=None)))
    assert half.verdict == Verdict.NEEDS_EVIDENCE and "fasteners.length" in half.reason


def test_the_root_is_not_asked_by_the_table():
    pins = replace(fasteners("screw", length=4.0, spacing=12), root=None)
    assert of_clause(FURRING, hung(pins, weight=3)).verdict == Verdict.MEETS


def nailed(diameter, spacing, rows_at, weight, depth, set_id="irc-2021"):
    pins = fasteners("nail", outer=diameter, length=6.0, spacing=spacing, rows=rows_at)
    return of_clause(DIRECT, wall(replace(cladding(weight), fasteners=pins), board(depth), studs(apart=rows_at)), set_id)


@pytest.mark.parametrize("cell", DIRECT_CELLS, ids=str)
def test_nailed_through_foam_never_meets_and_fails_beyond_each_cell(cell):
    _, diameter, _, spacing, rows_at, weight, depth = cell
    if depth is None:
        assert nailed(diameter, spacing, rows_at, weight, 0.5).verdict == Verdict.NEEDS_JUDGEMENT
        return
    within, beyond = (nailed(diameter, spacing, rows_at, weight, depth + shift) for shift in (0, NEAR))
    assert within.verdict == Verdict.NEEDS_JUDGEMENT and "not read" in within.reason
    assert beyond.verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize("set_id", ["irc-2018", "irc-2024"])
def test_the_table_of_the_editions_that_were_not_read_decides_nothing(set_id):
    assert nailed(0.131, 6, 16, 3, 4.5, set_id).verdict == Verdict.NEEDS_JUDGEMENT


def test_each_wall_is_asked_by_one_table_alone():
    furred = hung(fasteners("screw", length=4.0))
    assert of_clause(DIRECT, furred) is None and of_clause(FURRING, furred) is not None
    bare = wall(cladding(3), furring(fasteners("screw")), studs())
    assert of_clause(FURRING, bare) is None and of_clause(WIND, bare) is None


@pytest.mark.parametrize(("psf", "verdict", "word"), [
    (None, Verdict.NEEDS_EVIDENCE, "not given"), (30, Verdict.NEEDS_JUDGEMENT, "within"),
    (30.1, Verdict.NEEDS_JUDGEMENT, "beyond"),
])  # fmt: skip
def test_wind_on_the_cladding(psf, verdict, word):
    found = of_clause(WIND, hung(fasteners("screw", length=4.0)), suction=None if psf is None else psf * PSF)
    assert found.verdict == verdict and word in found.reason


@pytest.mark.parametrize("set_id", ["nbc-2015", "nbc-2020", "bc-2024"])
@pytest.mark.parametrize("family", ["foam", "wood-fibre", "mineral-board"])
def test_canadian_sets_never_meet(set_id, family):
    one = hung(fasteners("screw", length=4.0, spacing=12), weight=3, boards=(board(1, family=family),), set_id=set_id)
    found = of_clause(NBC, one, set_id)
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "in mode I" in found.reason and found.provided.quantity == "Z_y"
    assert of_clause(NBC, hung(None, set_id=set_id), set_id).verdict == Verdict.NEEDS_EVIDENCE
    short = of_clause(NBC, hung(fasteners("screw", length=1.0), set_id=set_id), set_id)
    assert short.verdict == (Verdict.NEEDS_JUDGEMENT if set_id == "nbc-2015" else Verdict.DOES_NOT_MEET)
    assert "end before the framing" in short.reason


def test_without_a_design_suction_it_is_asked_for():
    one = hung(fasteners("screw", length=4.0, spacing=12), weight=3, set_id="nbc-2020")
    assert "site_loads.wind_suction" in of_clause(NBC, one, "nbc-2020").next_step


@pytest.mark.parametrize("pins", [None, fasteners("screw", length=4.0, spacing=12)], ids=["not stated", "stated"])
def test_furring_on_a_roof_has_a_line_of_its_own_and_is_designed(pins):
    roof = replace(hung(pins, weight=3, set_id="nbc-2020"), kind="roof", slope=30.0)
    found = of_clause("/roof-furring", roof, "nbc-2020")
    assert found.verdict in (Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE) and found.mark == "memory"
    assert "licensed professional" in found.next_step and "Part 4" in found.asked


def test_the_data_is_the_printed_table():
    for set_id in SETS:
        own = {one.question: one for one in requirements(set_id)}
        table = own["furring-over-foam"].rule["table"]
        carried = {(x["kind"], x["diameter"], x["penetration"], x["spacing"]): x["depth"] for x in table}
        assert len(carried) == len(TABLE["rows"]) == 12
        for cell in CELLS:
            *row, rows_at, weight, depth = cell
            assert carried[tuple(row)][(16, 24).index(rows_at)][TABLE["weights"].index(weight)] == depth


# what is settled before a fastener is named


def misplaced(pins, boards=None, direction="vertical", battens=24.0, framing=36.0):
    layers = [cladding(3.0), furring(pins, apart=battens, direction=direction), *(boards or (board(1.0),)), studs(apart=framing)]
    return of_clause(FURRING, wall(*layers))


@pytest.mark.parametrize("pins", [None, fasteners("screw", length=4.0, spacing=16.0, rows=24.0)])
def test_furring_that_misses_the_studs_is_designed_whatever_fastens_it(pins):
    found = misplaced(pins)
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "does not lie over studs" in found.reason
    assert "designed" in found.next_step and "state the fasteners" not in found.next_step


def test_furring_over_the_studs_waits_for_its_fasteners():
    found = misplaced(None, battens=24.0, framing=24.0)
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "state the fasteners" in found.next_step


def test_boards_that_are_no_foam_have_no_table():
    found = misplaced(None, boards=(board(1.0, family="wood-fibre"),), battens=24.0, framing=24.0)
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "foam plastics alone" in found.reason and "designed" in found.next_step
    assert "foam" not in found.question.lower()
    assert "foam plastics of 15 psi" not in found.asked


SHORT = 0.75 + 1.0
"""Inches from the face of the furring to the studs."""


@pytest.mark.parametrize(("ending", "set_id"), [(FURRING, "irc-2021"), (FURRING, "irc-2018"), (NBC, "nbc-2020")])
@pytest.mark.parametrize(("length", "fails"), [(SHORT - 0.1, True), (SHORT, True), (SHORT + 0.1, False)])
def test_fasteners_that_end_before_the_framing_do_not_meet(ending, set_id, length, fails):
    found = of_clause(ending, hung(fasteners("screw", length=length), set_id=set_id), set_id)
    assert ("end before the framing" in found.reason) == fails
    if fails:
        assert found.verdict == Verdict.DOES_NOT_MEET and "longer than" in found.next_step
    assert found.what_follows.count("to be designed by a licensed professional") <= 1


def test_too_short_stands_whatever_else_is_missing():
    pins = replace(fasteners("screw", length=1.0), root=None, spacing=None)
    found = of_clause(FURRING, hung(pins))
    assert found.verdict == Verdict.DOES_NOT_MEET


def test_short_fasteners_of_a_board_leave_those_of_the_furring_open():
    boards = (replace(board(1.0), fasteners=fasteners("screw", length=1.5)),)
    found = of_clause(FURRING, hung(None, boards=boards))
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "state the fasteners of what hangs outside" in found.next_step
