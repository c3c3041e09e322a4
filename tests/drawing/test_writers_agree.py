"""SVG and PDF show the same drawing: both are rendered and their ink compared."""

import io

import clothed
import numpy
import pictured
import pytest
import resvg_py
from PIL import Image, ImageFilter
from rendering import pixels

from layerfolio.drawing import font
from layerfolio.drawing.section import section
from layerfolio.drawing.writers import svg

DOTS = 8  # pixels to the millimetre
REACH = 5  # pixels, 0.3 mm to either side: two renderers round edges of lines and letters differently
SHOWN = {
    "wall": lambda: section(clothed.screwed_wall()),
    "upright": lambda: section(clothed.screwed_wall(), view="vertical"),
    "roof": lambda: section(pictured.roof()),
    "customary": lambda: section(pictured.customary_roof(), units="customary"),
    "fourteen": lambda: section(pictured.fourteen()),
    "built up": lambda: section(clothed.i_studs(), light=True),
    "slab": lambda: section(pictured.slab()),
}


def of_svg(drawing):
    """The document by a renderer of its own, as rows of grey values."""
    faces = [str(font.path(style)) for style in font.FACES]
    made = resvg_py.svg_to_bytes(svg_string=svg.write(drawing), font_files=faces, skip_system_fonts=True, dpi=25.4 * DOTS)
    return numpy.asarray(Image.open(io.BytesIO(bytes(made))).convert("L"))


def ink(image):
    return Image.fromarray(numpy.where(image < 128, 255, 0).astype("uint8"))


def share_alone(one, other):
    """Share of the ink of one picture that has none near it in the other."""
    grown = numpy.asarray(other.filter(ImageFilter.MaxFilter(REACH))) > 0
    first = numpy.asarray(one) > 0
    return (first & ~grown).sum() / max(first.sum(), 1)


def both(drawing):
    first, second = ink(pixels(drawing, DOTS)), ink(of_svg(drawing))
    size = min(first.width, second.width), min(first.height, second.height)
    assert abs(first.width - second.width) <= 1 and abs(first.height - second.height) <= 1
    return first.crop((0, 0, *size)), second.crop((0, 0, *size))


@pytest.mark.parametrize("name", SHOWN)
def test_svg_and_pdf_show_the_same_ink(name):
    first, second = both(SHOWN[name]())
    assert share_alone(first, second) < 0.01 and share_alone(second, first) < 0.01


def test_another_drawing_would_be_noticed():
    first, _ = both(section(pictured.wall()))
    _, second = both(section(clothed.with_layer(pictured.wall(), 4, family="foam")))
    assert share_alone(first, second) > 0.02
