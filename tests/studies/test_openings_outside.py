"""Windows against figures from outside, and the default figures of glass edges against the notes of their source."""

import pytest
from envelope_builders import frame_and_glass, opening, project

from layerfolio.catalogue.openings import air, edge_transmittance
from layerfolio.formulas import openings as f
from layerfolio.studies.openings import opening_study


def test_window_of_a_published_explainer():
    """Areas 1.2 and 0.3 m2, U 1.1 and 1.5, edge 6 m at 0.04: a window maker's public explainer prints 1.34 (read there)."""
    value = f.window_transmittance(A_g=1.2, U_g=1.1, A_f=0.3, U_f=1.5, l_g=6.0, psi_g=0.04)
    assert round(value, 2) == 1.34


def test_the_explainers_window_as_a_project_states_it():
    keys = frame_and_glass(1.5, 1.1, psi=0.04, width=None, frame_area=0.3, edge_length=6.0)
    study = opening_study("A1", opening(1.5, 1.0, **keys), project())
    assert study.how == "computed" and study.transmittance == pytest.approx(1.34, abs=1e-9)


@pytest.mark.parametrize(
    ("U_g", "U_f", "psi", "expected"),
    [(1.1, 1.4, 0.08, 1.390), (0.7, 1.0, 0.05, 0.915)],
    ids=["W2", "W3"],
)
def test_reference_window_of_the_project(U_g, U_f, psi, expected):
    """1.23 x 1.48 m, the reference size that trade pages name, frame 110 mm: own reference cases, worked by hand."""
    study = opening_study("A1", opening(1.23, 1.48, **frame_and_glass(U_f, U_g, psi=psi)), project())
    assert round(study.transmittance, 3) == expected
    by_formula = {step.formula.name: step.value for step in study.trace.steps()}
    assert by_formula["glass_area"] == pytest.approx(1.2726, abs=5e-5)
    assert by_formula["frame_area"] == pytest.approx(0.5478, abs=5e-5)
    assert by_formula["glass_edge"] == pytest.approx(4.54)


@pytest.mark.parametrize(
    ("frame", "figures"),
    [
        ("wood", (0.06, 0.08, 0.05, 0.06)),
        ("pvc", (0.06, 0.08, 0.05, 0.06)),
        ("metal with thermal break", (0.08, 0.11, 0.06, 0.08)),
        ("metal", (0.02, 0.05, 0.01, 0.04)),
    ],
)
def test_default_edges(frame, figures):
    """Metal spacer, uncoated and low-e; improved spacer, uncoated and low-e. None of these was re-read."""
    cases = [(spacer, coating) for spacer in ("metal", "improved") for coating in (False, True)]
    found = [edge_transmittance(frame, *case) for case in cases]
    assert tuple(one.value for one in found) == figures
    assert {one.origin.mark for one in found} == {"memory"}


def test_no_row_for_an_unknown_frame():
    assert edge_transmittance("stone", "metal", True) is None


def test_heat_capacity_of_air_is_the_usual_figure():
    """0.34 Wh/(m3.K) is what the trade uses; ISO 10456 prints 1.23 kg/m3 and 1008 J/(kg.K)."""
    density, heat = air()
    assert round(density.value * heat.value / 3600, 2) == 0.34
