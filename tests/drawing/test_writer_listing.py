"""The listing: stable, readable, and it tells when a hatch changes."""

from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.hatches import hatch
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Drawing, Group, Line, Stipple, Text
from layerfolio.drawing.writers import listing

BOARD = rectangle(0, 0, 20, 3)
DRAWING = Drawing(
    "W1",
    134,
    90.25,
    (
        Group("layers", (Area(BOARD, "larch", "timber-board"), Line((*BOARD, BOARD[0]), 0.35, role="face"))),
        Line(((0, 5), (20, 5)), 0.7, dash=(5, 1.2), halo=0.45, role="control W"),
        Curve((("M", 0, 0), ("C", 1, 1, 2, 1, 3, -0.001)), 0.25),
        Circle((5, 5), 2.9, 0.35, "white", role="tag"),
        Text((5, 4), '"5a"', size=8.6, style="bold", anchor="middle", turn=90, box=0.6, role="tag"),
        Stipple(BOARD, "gypsum", (1.5, 0.0), 30.0),
        Clip(BOARD, (Line(((0, 0), (3, 3)), 0.2),)),
    ),
    5,
    families=("timber-board", "gypsum"),
    notes=("thickness of layer 3 not to scale",),
)
LISTING = """\
W1: 134.00 x 90.25, 1 : 5
families timber-board, gypsum
note thickness of layer 3 not to scale
  layers:
    area larch [timber-board]: (0.00 0.00) (20.00 0.00) (20.00 3.00) (0.00 3.00)
    line face 0.35: (0.00 0.00) (20.00 0.00) (20.00 3.00) (0.00 3.00) (0.00 0.00)
  line control W 0.70, dash 5/1.2, halo 0.45: (0.00 5.00) (20.00 5.00)
  curve 0.25: M0.00,0.00 C1.00,1.00,2.00,1.00,3.00,0.00
  circle tag 0.35, filled white: (5.00 5.00) r 2.90
  text tag bold 8.6 middle turn 90 box 0.6: (5.00 4.00) '"5a"'
  stipple gypsum from (1.50 0.00) turn 30: (0.00 0.00) (20.00 0.00) (20.00 3.00) (0.00 3.00)
  clip (0.00 0.00) (20.00 0.00) (20.00 3.00) (0.00 3.00):
    line 0.20: (0.00 0.00) (3.00 3.00)
"""


def test_the_listing_of_a_small_drawing():
    assert listing.write(DRAWING) == LISTING


def test_a_hatch_is_told_in_one_line_that_changes_with_it():
    def of(seed):
        return listing.write(Drawing("one", 20, 3, hatch("gypsum", BOARD, seed=seed)))

    lines = of("a").splitlines()
    assert len(lines) == 2
    assert lines[1].startswith("  hatch within (0.00 0.00) (20.00 0.00) (20.00 3.00) (0.00 3.00): 34 drawn, ")
    assert of("a") == of("a") != of("b")


def test_a_scale_in_words_is_printed_as_it_stands():
    assert listing.write(Drawing("R1", 9, 9, (), 8, scale_text="1 1/2\" = 1'-0\" (1 : 8)")).endswith("(1 : 8)\n")
    assert "no scale" in listing.write(Drawing("R1", 9, 9, ()))
