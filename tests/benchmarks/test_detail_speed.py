"""Time to draw junctions and the building section, measured and never asserted (the aim: 150 ms for the section)."""

import io
from pathlib import Path

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.drawing.building.drawn import building_drawn
from layerfolio.drawing.detail.all import junction_drawn
from layerfolio.drawing.writers import pdf

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def chandlery():
    return compile_dossier(open_project(EXAMPLES / "chandlery"))


@pytest.mark.parametrize("kind", ["sill", "eave", "window sill", "outside corner"])
def test_drawing_a_junction(benchmark, chandlery, kind):
    junction = next(one for one in chandlery.junctions if one.kind == kind)
    benchmark(junction_drawn, junction, chandlery.assemblies, "metric", room=157.0)


def test_describing_the_building_section(benchmark, chandlery):
    benchmark(building_drawn, chandlery.junctions, chandlery.assemblies, (2.4,), 2.45, "metric", room=191.0)


def test_writing_the_building_section_as_pdf(benchmark, chandlery):
    drawn = building_drawn(chandlery.junctions, chandlery.assemblies, (2.4,), 2.45, "metric", room=191.0)
    benchmark(lambda: pdf.write(drawn.drawing, io.BytesIO()))
