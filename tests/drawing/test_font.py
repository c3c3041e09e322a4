"""Text widths: against two independent readers of the same font file, and the characters that drawings use."""

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont
from reportlab.pdfbase.ttfonts import TTFont

from layerfolio.drawing import font
from layerfolio.drawing.geometry import boxes_touch, text_box
from layerfolio.drawing.marks import Text
from layerfolio.home import folder

DRAWN = (
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 .,:;!?()[]{}<>+-=*/%&#@_'\"|"
    "²³¹⁰⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉·×÷−±≤≥≈≠√∑∞∂∆°′″½¼¾⅛⅜⅝⅞–—…’‘“”\u00a0\u2009\u202f"
    "αβγδεζηθικλμνξπρστυφχψωΓΔΘΛΣΦΨΩµ→←↑↓■□●○▲△◆✕ÀÂÄÅÆÇÉÈÊËÍÎÏÑÓÔÖØÚÛÜßàâäåæçéèêëíîïñóôöøúûü€£§"
)
other = cache(lambda style: TTFont(f"check {style}", str(font.path(style))))
faces = pytest.mark.parametrize("style", sorted(font.FACES))


@faces
@given(text=st.text(st.characters(min_codepoint=32, max_codepoint=0xFFFF, categories=("L", "M", "N", "P", "S", "Z"))))
def test_width_is_that_of_a_pdf_library_reading_the_same_file(style, text):
    assert font.width(text, 9.72, style) == pytest.approx(other(style).stringWidth(text, 9.72) * 25.4 / 72, abs=1e-9)


@faces
def test_each_character_is_as_wide_as_a_rasteriser_sets_it(style):
    unit = 2048  # the font's own units to the em, so that nothing is rounded
    face = ImageFont.truetype(str(font.path(style)), unit, layout_engine=ImageFont.Layout.BASIC)
    for one in DRAWN:
        assert font.width(one, 10, style) == pytest.approx(face.getlength(one) / unit * 10 * 25.4 / 72, abs=2e-3), one


@faces
def test_capitals_are_as_high_as_the_sheets_count_on(style):
    face = ImageFont.truetype(str(font.path(style)), 2000)
    top = face.getbbox("H", anchor="ls")[1]
    assert -top / 2000 == pytest.approx(font.CAP_HEIGHT, abs=0.001)
    assert font.cap_height(9.72) == pytest.approx(2.5, abs=0.005)  # the lettering series: 2.5 in drawings, 1.8 at 7 pt
    assert font.cap_height(7) == pytest.approx(1.8, abs=0.005)


@pytest.mark.parametrize("style", ["regular", "bold", "oblique", "bold oblique"])
def test_every_character_that_a_drawing_may_show_is_in_the_face(style):
    assert font.missing_glyphs(DRAWN, style) == ""


def test_missing_characters_are_told_once_each_in_order():
    assert font.missing_glyphs("b漢a漢字b") == "漢字"


def test_letter_spacing_stands_between_letters_only():
    plain = font.width("OUTSIDE", 9.72, "bold")
    assert font.width("OUTSIDE", 9.72, "bold", spaced=2) == pytest.approx(plain + 6 * 2 * 25.4 / 72)
    assert font.width("", 9, spaced=2) == 0
    assert font.width("O", 9, spaced=2) == font.width("O", 9)


def test_an_unknown_style_is_refused():
    with pytest.raises(KeyError):
        font.width("a", 9, "thin")


def test_the_fonts_travel_with_their_licence():
    here = folder("shared") / "fonts"
    licence = (here / "LICENCE.txt").read_text(encoding="utf-8")
    assert "Permission is hereby granted" in licence
    assert sorted(one.name for one in here.glob("*.ttf")) == sorted(font.FACES.values())


@given(
    anchor=st.sampled_from(["start", "middle", "end"]),
    turn=st.sampled_from([0.0, 30.0, 90.0, -45.0]),
    x=st.floats(-50, 50),
    y=st.floats(-50, 50),
)
def test_a_text_box_is_as_wide_as_the_text_and_holds_its_anchor(anchor, turn, x, y):
    text = Text((x, y), "184 mm", anchor=anchor, turn=turn)
    (ax, ay), (bx, by), *_ = box = text_box(text)
    assert ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 == pytest.approx(font.width("184 mm", 9.72))
    grown = text_box(text, 0.5)
    assert boxes_touch(grown, ((x - 0.1, y - 0.1), (x + 0.1, y - 0.1), (x + 0.1, y + 0.1), (x - 0.1, y + 0.1)))
    assert boxes_touch(box, grown)


def test_boxes_that_only_share_an_edge_do_not_touch():
    one = ((0, 0), (2, 0), (2, 1), (0, 1))
    assert not boxes_touch(one, ((2, 0), (3, 0), (3, 1), (2, 1)))
    assert boxes_touch(one, ((1.99, 0), (3, 0), (3, 1), (1.99, 1)))
    assert not boxes_touch(one, ((2, 1.5), (3.5, 0.1), (4, 2), (3, 3)))  # only a slanted axis parts these two
