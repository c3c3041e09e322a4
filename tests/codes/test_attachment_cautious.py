"""What a table for furring over foam supposes and a project file may leave out: no verdict of *meets* without it.

Conditions: IRC 2021 R703.15.2 as adopted (framing and furring of 0.42, foam of 15 psi to ASTM C578 or C1289, studs under the
furring, wood panels on the framing); the same in IBC 2018, Table 2603.13.2.
"""

from dataclasses import replace

import pytest

import builders as b
from codes_irc import wall
from layerfolio.catalogue.datum import Document
from layerfolio.codes.findings import Verdict
from layerfolio.studies.attachment import attachment
from layerfolio.studies.fastener_kinds import kind_of
from structure_walls import INCH, PSF, board, cladding, fasteners, furring, hung, of_clause, studs

FURRING, DIRECT, NBC = "/furring-over-foam", "/cladding-through-foam", "/cladding-attachment"
MEETS, WAITS, ASKS = Verdict.MEETS, Verdict.NEEDS_EVIDENCE, Verdict.NEEDS_JUDGEMENT
PINS = fasteners("screw", length=4.0, spacing=12)
PSI = PSF * 144


def judged(*layers, set_id="irc-2021", ending=FURRING):
    return of_clause(ending, wall(*layers, set_id=set_id), set_id)


def plain(boards=None, pins=PINS):
    return of_clause(FURRING, hung(pins, weight=3, boards=boards))


# the strength of the boards


@pytest.mark.parametrize(("strength", "verdict"), [
    (15.0, MEETS), (103000 / PSI, MEETS), (102900 / PSI, ASKS), (5.0, ASKS), (None, WAITS),
])  # fmt: skip
def test_boards_of_15_psi(strength, verdict):
    found = plain((board(1, strength=strength),))
    assert found.verdict == verdict, found.reason
    if verdict == ASKS:
        assert "15 psi" in found.reason and "designed" in found.next_step
    if verdict == WAITS:
        assert "compressive_strength" in found.next_step


def test_words_of_a_document_are_no_figure():
    weak = Document(number="CS-9", issuer="a laboratory", proves=("compressive strength: 5 psi, far below",))
    assert plain((board(1, strength=None, documents=(weak,)),)).verdict == WAITS
    assert plain((board(1, strength=5, documents=(weak,)),)).verdict == ASKS


@pytest.mark.parametrize("claim", ["no compressive strength", "density", "incompressible"])
def test_a_figure_waits_for_the_document_that_shows_it(claim):
    other = Document(number="CS-9", issuer="a laboratory", proves=(claim,))
    for documents in ((), (other,), (Document(proves=("compressive strength",)),)):
        assert plain((board(1, documents=documents),)).verdict == WAITS


def test_the_weakest_of_two_boards_decides():
    assert plain((board(0.5, name="a"), board(0.5, name="b"))).verdict == MEETS
    assert plain((board(0.5, name="a"), board(0.5, name="b", strength=10))).verdict == ASKS
    assert plain((board(0.5, name="a"), board(0.5, name="b", strength=None))).verdict == WAITS


# whose fasteners, and what hangs on them


@pytest.mark.parametrize(("ending", "set_id"), [
    (FURRING, "irc-2021"), (FURRING, "irc-2018"), (NBC, "nbc-2020"), (NBC, "bc-2024"),
])  # fmt: skip
def test_fasteners_of_the_board_are_not_those_of_the_furring(ending, set_id):
    found = judged(cladding(3), furring(None), replace(board(1), fasteners=PINS), studs(), ending=ending, set_id=set_id)
    assert found.verdict == WAITS and "state the fasteners of what hangs outside" in found.next_step
    own = judged(cladding(3), furring(PINS), replace(board(1), fasteners=PINS), studs(), ending=ending, set_id=set_id)
    assert own.verdict == (MEETS if ending == FURRING else ASKS)


@pytest.mark.parametrize("ending", [FURRING, NBC])
def test_furring_without_cladding_is_not_weighed(ending):
    set_id = "irc-2021" if ending == FURRING else "nbc-2020"
    sheet = b.layer(9, kind="membrane", s_d=5, name="sheet")
    for outside in ((), (sheet,)):
        layers = (*outside, furring(PINS, width=2.5), board(1), studs())
        found = judged(*layers, ending=ending, set_id=set_id)
        assert found.verdict == WAITS and "cladding" in found.next_step, found.reason
        study = attachment(wall(*layers), None)
        assert study.capacity_lateral is None and any("cladding" in one for one in study.missing)
    assert judged(sheet, cladding(3), furring(PINS, width=2.5), board(1), studs(), ending=ending, set_id=set_id).verdict != WAITS


def spaced(one, apart):
    return replace(one, member=replace(one.member, spacing=None if apart is None else b.length(apart * INCH)))


@pytest.mark.parametrize(("battens", "framing", "verdict", "word"), [
    (16, 16, MEETS, ""), (16, None, WAITS, "spacing of Studs"), (None, 16, MEETS, ""), (None, None, WAITS, "spacing of Studs"),
    (None, 24, ASKS, "does not lie over studs"), (16, 24, ASKS, "does not lie over studs"),
])  # fmt: skip
def test_vertical_furring_waits_for_the_spacing_of_the_studs(battens, framing, verdict, word):
    """Where the furring states no spacing, the rows of its fasteners say where it is."""
    found = judged(cladding(3), spaced(furring(PINS), battens), board(1), spaced(studs(), framing))
    assert found.verdict == verdict and word in found.reason, found.reason


# what a fastener is


@pytest.mark.parametrize("words", [
    "drywall screw", "sheet-metal screw", "sheet metal screws", "masonry screw", "concrete screw", "machine screw",
    "drywall wood screw", "deck screw", "self-drilling screw", "screw anchor", "thumbscrew", "screwdriver",
    "masonry nail", "concrete nail", "drywall nail", "finish nail", "finishing nails", "brad nail", "roofing nail", "nailer",
    "screw nail", "nail or screw", "nails and lag screws", "lag shield", "lag", "flagged", "tie", "bolt", "no screws",
])  # fmt: skip
def test_words_that_name_no_fastener_of_the_table(words):
    assert kind_of(words) == ""
    found = of_clause(FURRING, hung(replace(PINS, kind=words), weight=3))
    assert found.verdict == ASKS and "only nails, wood screws and lag screws" in found.reason


@pytest.mark.parametrize(("words", "kind"), [
    ("nail", "nail"), ("Nails", "nail"), ("flag-head nail", "nail"), ("16d common nail", "nail"), ("box nails, 3 in", "nail"),
    ("ring-shank nail", "nail"), ("screw", "screw"), ("wood screw", "screw"), ("Wood screws", "screw"), ("wood-screw", "screw"),
    ("stainless wood screw", "screw"), ("screw, partial thread", "screw"), ("countersunk screw", "screw"),
    ("No. 10 wood screw", "screw"), ("structural wood screw", "screw"), ("lag screw", "lag"), ("Lag screws", "lag"),
    ("lag bolt", "lag"), ("galvanized lag screw", "lag"),
])  # fmt: skip
def test_words_that_name_one(words, kind):
    assert kind_of(words) == kind


# wood panels


def panel(name="panel", d=0.018):
    return replace(b.layer(9, R=0.1, d=d, mu=60, family="plywood", name=name), density=b.datum(500))


@pytest.mark.parametrize(("boards", "verdict"), [
    ((board(1), panel()), MEETS), ((panel(), board(1)), ASKS), ((board(0.5, name="a"), panel(), board(0.5, name="b")), ASKS),
    ((panel("outer"), board(1), panel()), ASKS),
])  # fmt: skip
def test_a_panel_lies_on_the_framing_or_is_beyond_the_table(boards, verdict):
    found = of_clause(FURRING, hung(fasteners("screw", length=5.0, spacing=12), weight=3, boards=boards))
    assert found.verdict == verdict
    if verdict == ASKS:
        assert "panel" in found.reason and "designed" in found.next_step and "foam plastics alone" not in found.reason


def test_a_panel_outside_the_foam_is_beyond_the_table_of_nailed_cladding_too():
    nailed = replace(cladding(3), fasteners=fasteners("nail", outer=0.131, length=6.0, spacing=6))
    sheathed = judged(nailed, board(1), panel(), studs(), ending=DIRECT)
    assert sheathed.verdict == ASKS and "not read" in sheathed.reason
    deep = judged(nailed, board(4.5), studs(), ending=DIRECT)
    assert deep.verdict == Verdict.DOES_NOT_MEET
