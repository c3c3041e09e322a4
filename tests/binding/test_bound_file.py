"""The finished file: fonts, outline, labels, nothing to click, the same bytes, written whole or not at all."""

import os
import subprocess
import sys

import pytest
from pages import data, package, reader, sample, sheet, words

from layerfolio.binding import bind
from layerfolio.binding.book import CannotWrite, render
from layerfolio.sheets import blocks as b

FORMATS = ("letter", "a4", "tabloid", "a3")


@pytest.mark.parametrize("page", FORMATS)
def test_all_fonts_are_embedded(page):
    for leaf in reader(data(page)).pages:
        fonts = leaf["/Resources"]["/Font"]
        for font in (one.get_object() for one in fonts.values()):
            assert "DejaVu" in font["/BaseFont"]
            assert "/FontFile2" in font["/FontDescriptor"]


@pytest.mark.parametrize("page", FORMATS)
def test_nothing_to_click_fill_in_or_unpack(page):
    read = reader(data(page))
    root = read.trailer["/Root"]
    assert all("/Annots" not in leaf for leaf in read.pages)
    assert "/AcroForm" not in root
    assert "/EmbeddedFiles" not in root.get("/Names", {})
    assert "/OpenAction" not in root
    assert not read.is_encrypted
    assert root["/Lang"] == "en"
    assert read.metadata.title == "Tern Point chandlery"
    assert read.metadata.author == "Fennel Row Drawing Office"
    assert "revision B" in read.metadata.subject
    assert len({(leaf.mediabox.width, leaf.mediabox.height) for leaf in read.pages}) == 1


def test_outline_and_labels_name_the_sheets():
    pdf, info = render(sample())
    read = reader(pdf)
    outline = [(one.title, read.get_destination_page_number(one) + 1) for one in read.outline]
    assert outline == [(f"{number} {title}", page) for number, title, page in info.sheets]
    assert read.page_labels == ["G0", "C1", "W1-T", "W1-T, continued", "X1"]
    assert info.pages == len(read.pages)
    assert [page for _, _, page in info.sheets] == [1, 2, 3, 5]


def test_index_gives_the_first_pages():
    lines = words(data(), 0).split("\n")
    index = [line for line in lines if "thermal steps" in line or "Explanation" in line]
    assert index[0].replace(" ", "").strip(".").endswith("3")
    assert index[1].replace(" ", "").endswith("5")


def test_the_text_can_be_searched():
    text = words(data())
    for phrase in (
        "Running total",
        "0.17 m²·K/W",
        "does not meet",
        "Space for the authority’s approval",
        "Step number 7",
    ):
        assert phrase in text


def test_same_bytes_every_time(tmp_path):
    one, two = tmp_path / "a" / "x.pdf", tmp_path / "b" / "y.pdf"
    for target, seed in ((one, "1"), (two, "2")):
        target.parent.mkdir()
        script = "import sys; from pathlib import Path; from pages import sample; from layerfolio.binding import bind;"
        script += "bind(sample(), Path(sys.argv[1]))"
        here = os.path.dirname(__file__)
        path = os.pathsep.join([here, *(one for one in sys.path if one)])
        subprocess.run(
            [sys.executable, "-c", script, str(target)],
            check=True,
            env=os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": path},
        )
    assert one.read_bytes() == two.read_bytes() == data()


def test_one_changed_letter_changes_the_file():
    assert render(package(sheet(b.Paragraph("one"))))[0] != render(package(sheet(b.Paragraph("two"))))[0]


def test_written_beside_and_renamed(tmp_path):
    target = tmp_path / "out.pdf"
    target.write_bytes(b"before")
    info = bind(sample(), target)
    assert target.read_bytes() == data()
    assert info.pages == 5
    assert list(tmp_path.iterdir()) == [target]


def test_what_cannot_be_written_says_so_and_leaves_nothing(tmp_path):
    (tmp_path / "folder").mkdir()
    (tmp_path / "file").write_text("x")
    for target in (tmp_path / "folder", tmp_path / "none" / "out.pdf", tmp_path / "file" / "out.pdf"):
        with pytest.raises(CannotWrite, match="cannot be written"):
            bind(sample(), target)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["file", "folder"]
    assert issubclass(CannotWrite, OSError)


def test_a_failed_rename_keeps_what_was_there(tmp_path, monkeypatch):
    target = tmp_path / "out.pdf"
    target.write_bytes(b"before")

    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(CannotWrite, match="Permission denied"):
        bind(sample(), target)
    assert target.read_bytes() == b"before"
    assert list(tmp_path.iterdir()) == [target]


def test_importing_the_room_does_not_load_the_writer_of_pdfs():
    script = "import sys, layerfolio.binding; sys.exit(any(m.startswith('reportlab') for m in sys.modules))"
    assert subprocess.run([sys.executable, "-c", script]).returncode == 0
