"""DIN 4108-3:2018, constructions without calculation, as textbook notes give them: each limit, both sides."""

from dataclasses import replace

import pytest

from builders import assembly, layer, member
from layerfolio.studies.condensation.no_calculation import roof_inside
from moisture_cases import CLASS_2, study


def timber_wall(inside=2.0, outside=0.3, *, ventilated=True, framed=True, family="plain", **changes):
    cavity = layer(1, name="cavity", kind="cavity", cavity="ventilated", d=0.03, counts=False)
    frame = member(0.15, lam=0.13) if framed else None
    rows = [
        layer(2, name="sheathing", d=0.02, lam=0.05, s_d=outside, family=family),
        layer(3, name="batts", d=0.2, lam=0.04, mu=1, frame=frame),
        layer(4, name="panel", d=0.015, lam=0.13, s_d=inside),
    ]
    return assembly([cavity, *rows] if ventilated else rows, **changes)


def row(one):
    return study(one, CLASS_2).construction


@pytest.mark.parametrize(
    ("inside", "outside", "fits"),
    [(2.0, 0.3, True), (1.999, 0.3, False), (2.0, 0.301, False), (10.0, 0.02, True)],
)
def test_timber_walls(inside, outside, fits):
    assert row(timber_wall(inside, outside)).fits is fits


def test_a_wood_fibre_board_outside_stands_for_the_limit():
    assert row(timber_wall(2.0, 0.9, family="wood-fibre")).fits
    assert not row(timber_wall(1.9, 0.9, family="wood-fibre")).fits


def test_a_wall_needs_its_ventilated_cladding_and_its_frame():
    assert not row(timber_wall(ventilated=False)).fits
    assert not row(timber_wall(framed=False)).fits


@pytest.mark.parametrize(
    ("outside", "least"),
    [(0.05, 1.0), (0.1, 1.0), (0.11, 2.0), (0.3, 2.0), (0.31, 1.86), (2.0, 12.0), (2.01, None)],
)
def test_roof_rows(outside, least):
    assert roof_inside(outside) == (None if least is None else pytest.approx(least))


@pytest.mark.parametrize(("inside", "outside", "fits"), [(1.0, 0.1, True), (0.99, 0.1, False), (100.0, 2.1, False)])
def test_roofs(inside, outside, fits):
    assert row(timber_wall(inside, outside, kind="roof", heat_direction="up", slope=30.0)).fits is fits


@pytest.mark.parametrize(("lining", "fits"), [(1.28, True), (1.30, False)])
def test_at_most_a_fifth_of_the_resistance_inside_the_control_layer(lining, fits):
    """Outside it 0.4 + 5 + 0.115: a fifth of the whole is 1.379 less the lining's own vapour part."""
    one = timber_wall(5.0, 0.1, kind="roof", heat_direction="up", slope=30.0)
    rows = (*one.layers, layer(5, name="lining", R=lining + 0.0885, s_d=0.1))
    assert row(replace(one, layers=rows)).fits is fits


def test_no_row_for_floors():
    assert row(timber_wall(kind="floor", heat_direction="down")) is None
