"""Packages to bind in tests, and what a reader sees of the result."""

import io
from dataclasses import dataclass
from functools import cache

from layerfolio.binding.book import render
from layerfolio.codes.findings import Verdict
from layerfolio.sheets import blocks as b

MM = 25.4 / 72
LONG = (
    "A very long name of a small shop at the far end of the point " * 3
    + "and then a little more of it to reach two hundred"
)


def title_block(page: str = "letter", **changes: str) -> b.TitleBlock:
    given = {
        "project": "Tern Point chandlery",
        "site": "Lot 7, Tern Point Road",
        "prepared_by": "Fennel Row Drawing Office",
        "date": "2027-02-03",
        "revision": "B",
        "input_sha256": "0" * 64,
        "version": "0.0",
    }
    return b.TitleBlock(page=page, **(given | changes))


def package(*sheets: b.Sheet, page: str = "letter", **changes: str) -> b.Package:
    return b.Package(title_block(page, **changes), "Tern Point chandlery", sheets)


def sheet(*blocks: b.Block, number: str = "W1", title: str = "North and east walls", scale: str = "—") -> b.Sheet:
    return b.Sheet(number, title, scale, blocks)


def figures_table(rows: tuple[tuple[str, str], ...]) -> b.Table:
    columns = (b.Column("Layer"), b.Column("{R}", "m²·K/W", 30, "decimal"))
    return b.Table(columns, tuple(b.Row(row) for row in rows))


@cache
def sample(page: str = "letter") -> b.Package:
    """A small package with most kinds of blocks."""
    cover = sheet(
        b.Head(
            "", "Tern Point chandlery", "Revision B", large=True, subtitle="Envelope assemblies", under="2027-02-03"
        ),
        b.Beside(
            (b.Heading("Project", True), b.Pairs((("Site", "Lot 7"),))), (b.Heading("In this set", True), b.Index())
        ),
        b.FreeSpace("Space for the authority’s approval and conditions"),
        number="G0",
        title="Cover and index",
    )
    record = b.Table(
        (b.Column("No.", "", 8), b.Column("Question", "clause", 60), b.Column("Asked"), b.Column("Verdict", "", 40)),
        tuple(
            b.Row((str(n), f"**Question {n}**", "asked\nprovided", b.VerdictCell(v, "why")))
            for n, v in enumerate(Verdict)
        ),
        upright_rules=(1, 2),
        long_text=True,
    )
    steps = tuple(
        b.CalcStep(
            str(n),
            f"Step number {n}",
            "a source",
            (b.Equation("{R_T}", ("{R_si} + {R_se}", "0.13 + 0.04", "**0.17 m²·K/W**"), "0.17"),),
        )
        for n in range(1, 12)
    )
    return package(
        cover,
        sheet(
            b.Head("", "Compliance record", "a set"),
            record,
            b.VerdictCount(tuple((v, 1) for v in Verdict)),
            number="C1",
            title="Compliance record",
        ),
        sheet(
            b.Head("W1", "Thermal resistance"),
            b.Calculation("Running total", "{R}, m²·K/W", steps),
            b.Band("Required 2.97", "Step 11 **0.17**", Verdict.DOES_NOT_MEET, "C1, line 2"),
            number="W1-T",
            title="Wall W1: thermal steps",
        ),
        sheet(
            b.Head("X1", "Explanation"),
            b.Numbered("1", "Question", (b.Paragraph("Why?"),)),
            b.NoteBox("Official’s note", ("accepted", "not accepted")),
            number="X1",
            title="Explanation",
        ),
        page=page,
    )


@cache
def data(page: str = "letter") -> bytes:
    return render(sample(page))[0]


@dataclass(frozen=True)
class Sign:
    """One character on paper: millimetres from the page's upper left corner."""

    text: str
    left: float
    top: float
    right: float
    bottom: float


def signs(pdf: bytes, page: int = 0) -> list[Sign]:
    """The characters of a page with their ink, spaces left out."""
    import pypdfium2

    document = pypdfium2.PdfDocument(pdf)
    try:
        leaf = document[page]
        height, text = leaf.get_height(), leaf.get_textpage()
        found = []
        for number in range(text.count_chars()):
            one = text.get_text_range(number, 1)
            if one.strip():
                left, bottom, right, top = text.get_charbox(number)
                found.append(Sign(one, left * MM, (height - top) * MM, right * MM, (height - bottom) * MM))
        return found
    finally:
        document.close()


def words(pdf: bytes, page: int | None = None) -> str:
    """The text of one page or of all, spaces and lines as the reader program finds them."""
    import pypdfium2

    document = pypdfium2.PdfDocument(pdf)
    try:
        pages = range(len(document)) if page is None else [page]
        return "\n".join(document[one].get_textpage().get_text_bounded() for one in pages).replace("\r\n", "\n")
    finally:
        document.close()


def raster(pdf: bytes, page: int, dpi: int):
    """The page as an array of grey values, 0 black."""
    import pypdfium2

    document = pypdfium2.PdfDocument(pdf)
    try:
        return document[page].render(scale=dpi / 72, grayscale=True).to_numpy().squeeze()
    finally:
        document.close()


def reader(pdf: bytes):
    import pypdf

    return pypdf.PdfReader(io.BytesIO(pdf))
