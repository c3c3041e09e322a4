"""The second plane of protection in the words of the wall's own layers (NBC 9.27.3, read in the Alberta edition of 2023)."""

from dataclasses import replace
from pathlib import Path

import pytest

import builders as b
from codes_builders import insulation, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.codes.findings import Verdict
from layerfolio.dossier import compile_dossier, open_project

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery"


def cladding():
    return replace(b.layer(1, R=0.1, d=0.019, counts=False, serves=["weather face"], name="Boards"), is_cladding=True)


def cavity():
    return b.layer(2, d=0.038, counts=False, kind="cavity", cavity="ventilated", name="Cavity")


def membrane(name="Membrane"):
    return b.layer(3, s_d=0.05, kind="membrane", serves=["water control"], name=name, family="membrane")


def board(family, name="Board", insulating=False, serves=()):
    return b.layer(4, R=1.0, d=0.05, name=name, family=family, insulating=insulating, serves=serves)


def studs():
    return replace(insulation(3, name="Batts"), member=b.member(0.2, R=1.5))


def found(*layers):
    numbered = [replace(one, number=i + 1) for i, one in enumerate(layers)]
    return only(codes.judge(project(), studies(of_resistance(0, layers=numbered))), "/second-plane")


def test_the_chandlery_has_one_membrane_over_mineral_wool_and_no_wood_fibre():
    dossier = compile_dossier(open_project(CHANDLERY))
    one = only([x for x in dossier.findings if x.assembly == "W1"], "/second-plane")
    assert one.given == "; ".join(
        ("Sheathing membrane (layer 3) over Mineral-wool board (layer 4)", "no other sheathing outside the studs (layer 5)")
    )
    assert "9.27.3.4" in one.next_step and "Mineral-wool board (layer 4)" in one.next_step
    assert "not wood-based" in one.next_step and one.verdict is Verdict.NEEDS_JUDGEMENT
    assert "fibre" not in " ".join((one.asked, one.given, one.reason, one.next_step))


@pytest.mark.parametrize(("layers", "given", "clause"), [
    ([membrane(), board("plywood")], "Membrane (layer 3) over Board (layer 4)", "9.27.3.3"),
    ([membrane(), board("foam", insulating=True)], "Membrane (layer 3) over Board (layer 4); no other sheathing", "9.27.3.4"),
    ([board("foam", insulating=True)], "no sheathing membrane; Board (layer 3); no other sheathing", "9.27.3.4"),
    ([membrane(), board("wood-fibre", insulating=True)], "Membrane (layer 3) over Board (layer 4)", "9.27.3.5.(3)"),
    ([board("wood-fibre", insulating=True)], "no sheathing membrane; Board (layer 3)", "integral"),
    ([membrane(), membrane("Second")], "Membrane (layer 3) and Second (layer 4); no sheathing outside the studs", "9.27.3.5"),
    ([membrane()], "Membrane (layer 3); no sheathing outside the studs", "second"),
    ([], "no sheathing membrane; no sheathing outside the studs", "9.27.3.3"),
    ([board("plywood")], "no sheathing membrane; Board (layer 3)", "9.27.3.3"),
    ([membrane(), board("foam", insulating=True), board("plywood", "Ply")],
     "Membrane (layer 3) over Board (layer 4) and Ply (layer 5)", "9.27.3.3"),
], ids=str)  # fmt: skip
def test_each_make_of_wall_has_its_own_words(layers, given, clause):
    one = found(cladding(), cavity(), *layers, studs())
    assert one.given.startswith(given), one.given
    assert clause in one.next_step, one.next_step
    assert one.verdict is Verdict.NEEDS_JUDGEMENT and one.next_step.startswith("ask the authority: ")


def test_without_framing_the_studs_are_not_spoken_of():
    one = found(cladding(), cavity(), membrane(), board("cork", insulating=True), board("timber", "Planks"))
    assert one.given == "Membrane (layer 3) over Board (layer 4); no framing is stated"
    assert "studs" not in one.next_step


def test_a_panel_inside_the_studs_is_no_outer_sheathing():
    one = found(cladding(), cavity(), membrane(), studs(), board("strand-board", serves=["bracing"]))
    assert one.given == "Membrane (layer 3); no sheathing outside the studs (layer 4)"


def test_a_board_that_serves_water_control_is_said_to():
    one = found(cladding(), cavity(), board("wood-fibre", insulating=True, serves=["water control"]), studs())
    assert one.given.startswith("no sheathing membrane; Board (layer 3), stated to serve water control")
