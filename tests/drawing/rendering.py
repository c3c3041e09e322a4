"""Help for the drawing tests: pages as pixels, and the paths that a PDF page and an SVG document really hold."""

import io
import re
from xml.etree import ElementTree

import pypdfium2
from pypdf import PdfReader
from pypdf.generic import ContentStream

from layerfolio.drawing.writers import pdf

SVG = "{http://www.w3.org/2000/svg}"
PER_MM = 72 / 25.4


def pdf_bytes(drawing, **options):
    target = io.BytesIO()
    pdf.write(drawing, target, margin=0, **options)
    return target.getvalue()


def pixels(drawing, dots_per_mm=10):
    """The page as rows of grey values, 0 black to 255 white, top row first."""
    document = pypdfium2.PdfDocument(pdf_bytes(drawing))
    try:
        page = document[0]
        wide = round(drawing.width * dots_per_mm)  # a whole number of pixels, whatever the page's size is rounded to
        image = page.render(scale=(wide - 1e-3) / page.get_width(), grayscale=True).to_numpy()
        return image.reshape(image.shape[0], -1).copy()
    finally:
        document.close()


def pdf_paths(drawing):
    """Every stroked or filled path of the page in order: (operator, points in mm from the page's lower left)."""
    page = PdfReader(io.BytesIO(pdf_bytes(drawing))).pages[0]
    found, points = [], []
    for values, operator in ContentStream(page.get_contents(), None).operations:
        numbers = [float(one) / PER_MM for one in values] if operator in (b"m", b"l", b"c") else []
        points += list(zip(numbers[::2], numbers[1::2], strict=True))
        if operator in (b"S", b"s", b"f", b"f*", b"B", b"B*"):
            found.append((operator.decode(), points))
        if operator in (b"S", b"s", b"f", b"f*", b"B", b"B*", b"n"):
            points = []
    return found


def svg_root(text):
    return ElementTree.fromstring(text.encode())


def svg_paths(text, height):
    """Every path that is painted in the body of the document, in order: points in mm, y upward."""
    body = svg_root(text).find(f"{SVG}g")
    found = []
    for path in body.iter(f"{SVG}path"):
        numbers = [float(one) for one in re.findall(r"-?[\d.]+", path.get("d"))]
        found.append([(x, height - y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)])
    return found
