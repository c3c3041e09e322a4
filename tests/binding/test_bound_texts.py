"""Text on the page: broken into lines that fit, drawn as written, whatever a person wrote."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pages import package, sheet, signs, words

from layerfolio.binding.book import render
from layerfolio.binding.rich import INDEX_SIZE, line, wrap
from layerfolio.sheets import blocks as b
from layerfolio.sheets.markup import clean, plain

HOSTILE = [
    "<img src=file.png>",
    "<b>not bold</b> & &amp; <",
    "{{ 7 * 7 }} {R_si}",
    "**not bold** _nor oblique_",
    "`code` \\n",
    "a]]>b <!-- c -->",
    "%(x)s %d",
    "Żółć ñ Ærø ½ ⅜ ″ ′ “ ” … — Ω",
]


def squeezed(text: str) -> str:
    return "".join(text.split())


@pytest.mark.parametrize("text", HOSTILE)
def test_a_persons_text_prints_as_written(text):
    blocks = (
        b.Head("W1", plain(text)),
        b.Heading(plain(text)),
        b.Paragraph(plain(text)),
        b.Bullets((plain(text),)),
        b.Pairs(((plain(text), plain(text)),)),
        b.Table((b.Column(plain(text)),), (b.Row((plain(text),)),)),
        b.Numbered("1", "Label", (b.Paragraph(plain(text)),)),
        b.FreeSpace(plain(text)),
    )
    pdf, _ = render(package(sheet(*blocks, title=text), project=text, site=text))
    assert squeezed(words(pdf)).count(squeezed(text)) == 10 + 3


def test_what_cannot_be_drawn_leaves_a_mark_and_no_empty_box():
    pdf, _ = render(
        package(sheet(b.Paragraph("unescaped \u6f22\u5b57 here"), title="\u6f22 \u05d0\u05d1"), project="a\x00b")
    )
    text = words(pdf)
    assert "unescaped ?? here" in text
    assert "? ?" in text.split("Sheet title")[1]
    assert "ab" in text.split("Project")[1]


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=300), st.floats(8, 180), st.sampled_from([9, 9.72, 13.6]))
def test_lines_fit_and_nothing_is_lost(text, room, size):
    lines = wrap(plain(text), room, size)
    assert all(one.width <= room + 1e-6 for one in lines)
    shown = squeezed("".join(one.text for one in lines)).replace("\u00a0", "")
    assert shown == squeezed(clean(text)).replace("\u00a0", "")


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.sampled_from(["word", "**bold**", "{R_si}", "_slant_", "`mono`", "5 mm", "{lam},"]), min_size=1, max_size=60
    )
)
def test_bits_stand_in_order_and_do_not_overlap(parts):
    from layerfolio.binding.measure import width

    for one in wrap(" ".join(parts), 70):
        at = 0.0
        for bit in one.bits:
            assert bit.x >= at - 1e-6
            at = bit.x + width(bit.text.rstrip(" "), bit.size, bit.style)
        assert at == pytest.approx(one.width)


def test_symbols_have_a_smaller_lowered_index():
    bits = line("{R_si}").bits
    assert [(bit.text, bit.style) for bit in bits] == [("R", "oblique"), ("si", "regular")]
    assert bits[1].size == pytest.approx(9 * INDEX_SIZE)
    assert bits[1].drop == pytest.approx(9 * 0.18)
    assert [bit.style for bit in line("{R_si}", bold=True).bits] == ["bold oblique", "bold"]


def test_figures_stay_with_their_units():
    for room in range(15, 60):
        for one in wrap("a panel of 15 mm and 48 ng/(Pa·s·m²) at 10 : 1 in zone 6", room):
            assert not one.text.endswith(("15", "48", "10", "zone", ":"))


def test_nothing_leaves_the_frame():
    text = plain("w" * 400 + " " + "<img src=x> " * 40)
    columns = (b.Column("a" * 60, "unit" * 20, 20), b.Column("b", "", 30, "decimal"), b.Column(text, "", 0))
    blocks = (
        b.Head(text, text, text),
        b.Heading(text, True),
        b.Paragraph(text),
        b.Bullets((text, text), columns=2),
        b.Pairs(((text, text),)),
        b.Table(columns, (b.Row((text, text, text)),)),
        b.ResultBox(((text[:80], "12345.678", text[:40]), ("{U}", "0.1", "")), text, None, text),
        b.NoteBox(text[:200], ("accepted", "not accepted")),
        b.Beside((b.Paragraph(text),), (b.Paragraph(text),)),
        b.Numbered("1", text, (b.Paragraph(text),)),
    )
    pdf, info = render(package(sheet(*blocks)))
    for page in range(info.pages):
        for one in signs(pdf, page):
            assert one.left > 18.3
            assert one.right < 205.7
            assert 8.3 < one.top < one.bottom < 271.1
