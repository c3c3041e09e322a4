"""Time to describe a drawing, measured and never asserted (about 5 ms for a wall is the aim)."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "drawing"))
import pictured

from layerfolio.drawing.section import section


@pytest.mark.parametrize("name", ["wall", "roof", "slab", "fourteen"])
def test_describing_a_section(benchmark, name):
    benchmark(section, pictured.SHOWN[name]())
