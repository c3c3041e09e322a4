"""The package as one PDF: pages laid out, then painted once on one canvas, then written whole or not at all."""

import io
from dataclasses import dataclass
from pathlib import Path

from layerfolio.binding.filler import Page, lay_out
from layerfolio.binding.formats import FORMATS, Format
from layerfolio.binding.frame import CONTINUED, Caption, paint_frame
from layerfolio.binding.legend import paint_legend
from layerfolio.binding.pen import MM, Pen
from layerfolio.binding.piece import Place
from layerfolio.sheets.blocks import Package
from layerfolio.sheets.markup import clean
from layerfolio.writing import CannotWrite, write_whole

__all__ = ["BoundInfo", "CannotWrite", "bind", "render"]


@dataclass(frozen=True, slots=True)
class BoundInfo:
    """What was bound: pages, and for each sheet its number, title and first page (from 1)."""

    pages: int
    sheets: tuple[tuple[str, str, int], ...]


def bind(package: Package, path: Path) -> BoundInfo:
    """Write the package to `path`. Raises CannotWrite, and then leaves nothing behind."""
    data, info = render(package)
    write_whole(Path(path), lambda part: part.write_bytes(data))
    return info


def render(package: Package) -> tuple[bytes, BoundInfo]:
    """The bytes of the PDF; the same package gives the same bytes."""
    fmt = FORMATS[package.title_block.page]
    pages = lay_out(package.sheets, fmt)
    first_pages = _first_pages(pages, len(package.sheets))
    drawn = {page.sheet for page in pages if page.has_figure}
    buffer = io.BytesIO()
    pen = _pen(package, fmt, buffer)
    for number, page in enumerate(pages, 1):
        sheet = package.sheets[page.sheet]
        scale = sheet.scale if page.has_figure or (page.part == 0 and page.sheet not in drawn) else "—"
        caption = Caption(sheet.number, sheet.title, scale, number, len(pages), page.part > 0)
        _paint_page(pen, fmt, package, page, caption, first_pages)
        pen.page()
    pen.canvas.save()
    sheets = tuple((s.number, s.title, first) for s, first in zip(package.sheets, first_pages, strict=True))
    return buffer.getvalue(), BoundInfo(len(pages), sheets)


def _first_pages(pages: list[Page], sheets: int) -> list[int]:
    found = [0] * sheets
    for number, page in enumerate(pages, 1):
        found[page.sheet] = found[page.sheet] or number
    return found


def _pen(package: Package, fmt: Format, buffer: io.BytesIO) -> Pen:
    """A canvas that is the same on every run: no clock, no font that is not embedded, nothing to click."""
    from reportlab.pdfgen.canvas import Canvas

    from layerfolio.drawing.writers.fonts_pdf import register

    register()
    block = package.title_block
    canvas = Canvas(
        buffer, pagesize=(fmt.width * MM, fmt.height * MM), invariant=1, pageCompression=1, initialFontName="LF",
        lang="en", pdfVersion=(1, 4),
    )  # fmt: skip
    canvas.setTitle(clean(package.title))
    canvas.setAuthor(clean(block.prepared_by))
    canvas.setSubject(f"{clean(block.project)}, revision {clean(block.revision)}, {clean(block.date)}")
    canvas.setCreator(f"layerfolio {block.version}".rstrip())
    if block.input_sha256:
        canvas.setKeywords(f"input sha256 {block.input_sha256}")
    return Pen(canvas, fmt.height)


def _paint_page(
    pen: Pen, fmt: Format, package: Package, page: Page, caption: Caption, first_pages: list[int]
) -> None:
    sheet = package.sheets[page.sheet]
    number, count = caption.page, caption.pages
    _mark_page(pen.canvas, page, sheet.number, sheet.title, number)
    for place, placed in enumerate(page.fields):
        where = Place(sheet.number, number, count, place == fmt.fields - 1, first_pages)
        for piece, y in placed:
            piece.paint(pen, fmt.field_left(place), fmt.top + y, where)
    paint_frame(pen, fmt, package.title_block, caption)
    if fmt.fields == 2:
        paint_legend(pen, fmt, sheet.legend)


def _mark_page(canvas, page: Page, number: str, title: str, at: int) -> None:
    """Page label and, on a sheet's first page, the outline entry."""
    label = clean(number)
    canvas.addPageLabel(at - 1, prefix=label + (CONTINUED if page.part else ""))
    if page.part == 0:
        key = f"sheet-{page.sheet}"
        canvas.bookmarkPage(key)
        canvas.addOutlineEntry(f"{label} {clean(title)}", key, 0)
