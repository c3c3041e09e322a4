"""Time to describe a drawing and to write it, measured and never asserted (the aims: 5 ms for a wall, 30 ms for its PDF)."""

import io
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "drawing"))
import clothed
import pictured

from layerfolio.drawing.section import section
from layerfolio.drawing.writers import dxf, pdf, svg

NAMES = ["wall", "roof", "slab", "fourteen"]


@pytest.mark.parametrize("name", NAMES)
def test_describing_a_section(benchmark, name):
    benchmark(section, pictured.SHOWN[name]())


@pytest.mark.parametrize("name", ["screwed", "i_studs", "double"])
def test_describing_an_upright_section(benchmark, name):
    benchmark(section, clothed.CLOTHED[name](), view="vertical")


@pytest.mark.parametrize("name", NAMES)
def test_writing_a_section_as_pdf(benchmark, name):
    drawing = section(pictured.SHOWN[name]())
    benchmark(lambda: pdf.write(drawing, io.BytesIO()))


@pytest.mark.parametrize("name", ["wall", "fourteen"])
def test_writing_a_section_as_svg(benchmark, name):
    benchmark(svg.write, section(pictured.SHOWN[name]()))


def test_writing_a_section_as_dxf(benchmark, tmp_path):
    benchmark(dxf.write, section(pictured.wall()), tmp_path / "wall.dxf")
