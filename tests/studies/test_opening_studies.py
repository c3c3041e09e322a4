"""Openings: what is stated, what is computed, what is missing; laws over families of windows."""

import pytest
from envelope_builders import frame_and_glass, opening, project, q
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.reading.documents import Evidence
from layerfolio.studies.openings import opening_study
from traceable import each_number_is_given_or_found

U = st.floats(0.3, 6.0)
SIDE = st.floats(0.4, 3.0)
FRAME = st.floats(0.03, 0.15)


def study(**keys):
    return opening_study("A1", opening(**keys), project())


def test_a_stated_value_stays_as_stated_with_its_documents():
    found = study(
        transmittance=0.92, basis="declared to EN 14351-1", source="declaration DW-3", solar_factor=0.5, count=2,
        evidence=(Evidence(number="DW-3", issuer="maker"),), orientation="south", title="Shop windows",
    )  # fmt: skip
    assert (found.transmittance, found.how, found.basis) == (0.92, "stated", "declared to EN 14351-1")
    assert found.figure.origin.source == "declaration DW-3" and found.figure.origin.documents[0].number == "DW-3"
    assert found.total_area == pytest.approx(2 * 1.23 * 1.48)
    assert (found.wall, found.orientation, found.solar_factor, found.title) == ("W1", "south", 0.5, "Shop windows")


def test_nothing_given_is_missing_not_zero():
    found = study()
    assert (found.transmittance, found.how, found.figure) == (None, "missing", None)
    assert "transmittance" in found.missing[0]


@pytest.mark.parametrize(
    ("change", "wanted"),
    [
        ({"U_f": None}, ("frame.transmittance",)),
        ({"U_g": None}, ("glass.transmittance",)),
        ({"width": None}, ("frame.width (or frame.area with edge.length)", "edge.length")),
        ({"width": None, "frame_area": 0.4}, ("edge.length",)),
        ({"psi": None}, ("edge.psi (or frame.material, edge.spacer and glass.coating)",)),
        ({"psi": None, "material": "wood", "spacer": "metal"}, ("edge.psi (or frame.material, edge.spacer and glass.coating)",)),
        ({"width": 0.615}, ("a frame.width that leaves glass between its sides",)),
    ],
)
def test_what_a_computed_value_lacks_is_named(change, wanted):
    keys = {"U_f": 1.4, "U_g": 1.1, "psi": 0.08} | change
    found = study(**frame_and_glass(keys.pop("U_f"), keys.pop("U_g"), **keys))
    assert found.how == "missing" and found.transmittance is None
    assert found.missing == wanted


def test_a_figure_of_the_tables_marks_the_result():
    """The edge's default was not re-read: the window stands, its figure says so; a stated edge leaves no mark."""
    by_table = study(**frame_and_glass(1.4, 1.1, material="wood", spacer="metal", coating=True))
    stated = study(**frame_and_glass(1.4, 1.1, psi=0.08))
    assert by_table.transmittance == stated.transmittance
    assert (by_table.figure.origin.mark, stated.figure.origin.mark) == ("memory", "given")


def test_single_glass_has_no_edge():
    found = study(**frame_and_glass(1.8, 5.8, panes=1))
    assert found.transmittance == pytest.approx((1.2726 * 5.8 + 0.5478 * 1.8) / 1.8204)
    assert "window_without_edge" in {step.formula.name for step in found.trace.steps()}


def test_areas_that_do_not_add_up_are_told():
    found = study(**frame_and_glass(1.4, 1.1, psi=0.05, frame_area=0.5, glass_area=1.0))
    assert any("do not add up" in getattr(entry, "because", "") for entry in found.trace.entries)
    assert found.transmittance == pytest.approx(((1.8204 - 0.5) * 1.1 + 0.5 * 1.4 + 4.54 * 0.05) / 1.8204)


def test_glass_area_gives_the_frame():
    keys = frame_and_glass(1.4, 1.1, psi=0.05, width=None, glass_area=1.2, edge_length=4.4)
    assert study(**keys).transmittance == pytest.approx((1.2 * 1.1 + 0.6204 * 1.4 + 4.4 * 0.05) / 1.8204)


@given(U, U, SIDE, SIDE, FRAME)
def test_without_an_edge_the_window_lies_between_its_parts(U_f, U_g, b, h, width):
    found = study(width=b, height=h, **frame_and_glass(U_f, U_g, psi=0.0, width=width))
    assert min(U_f, U_g) - 1e-9 <= found.transmittance <= max(U_f, U_g) + 1e-9


@given(U, U, SIDE, SIDE, FRAME, st.floats(0.0, 0.2), st.floats(0.001, 0.1))
def test_a_worse_edge_lets_more_through(U_f, U_g, b, h, width, psi, more):
    less = study(width=b, height=h, **frame_and_glass(U_f, U_g, psi=psi, width=width)).transmittance
    assert study(width=b, height=h, **frame_and_glass(U_f, U_g, psi=psi + more, width=width)).transmittance > less


@given(U, U, SIDE, SIDE, FRAME, st.floats(0.0, 0.2))
def test_turned_on_its_side_a_window_is_the_same(U_f, U_g, b, h, width, psi):
    keys = frame_and_glass(U_f, U_g, psi=psi, width=width)
    assert study(width=b, height=h, **keys).transmittance == pytest.approx(study(width=h, height=b, **keys).transmittance)


def test_quantities_keep_what_was_written():
    written = opening().but(width=q(1.2, "length", "1200 mm"))
    assert opening_study("A1", written, project()).stated.width.text == "1200 mm"


BY_AREAS = {"width": None, "glass_area": 1.3, "edge_length": 4.4}


@pytest.mark.parametrize("change", [{}, {"frame_area": 0.4}, {"frame_area": 0.4, "edge_length": 4.4}, BY_AREAS])
def test_every_number_of_a_step_is_given_with_its_source_or_found_above(change):
    found = study(**frame_and_glass(**({"U_f": 1.4, "U_g": 1.1, "width": 0.11, "psi": 0.08} | change)))
    assert found.how == "computed"
    each_number_is_given_or_found(found.trace)
