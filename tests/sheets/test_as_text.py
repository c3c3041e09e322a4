"""A sheet as plain text: every word of it, in order."""

import dataclasses
import typing

from layerfolio.codes.findings import Verdict
from layerfolio.drawing.marks import Drawing
from layerfolio.sheets import blocks as b
from layerfolio.sheets.as_text import as_text

EVERY_BLOCK = (
    b.Head("W1", "North walls", "58 m²"),
    b.Heading("Project"),
    b.Paragraph("Some **bold** words about {R_si}."),
    b.Bullets(("first", "second"), marker="box"),
    b.Pairs((("Site", "Lot 7"),)),
    b.Table(
        (b.Column("{d}", "mm", align="decimal"), b.Column("Verdict")),
        (
            b.Row(("12.7", b.VerdictCell(Verdict.MEETS))),
            b.Row(("sum", "one\ntwo"), total=True, after=b.VerdictCell(Verdict.NEEDS_EVIDENCE, "missing")),
        ),
    ),
    b.Figure(Drawing("section W1", 180, 100, (), 5, "1 : 5")),
    b.Calculation(
        "Running total",
        "{R}, m²·K/W",
        (b.CalcStep("1", "Films", "a source", (b.Equation("{R_s}", ("{R_si} + {R_se}", "0.260 m²·K/W"), "0.260"),)),),
    ),
    b.Band("Required 2.97", "Step 1", Verdict.DOES_NOT_MEET, "C1, line 2"),
    b.ResultBox((("{U}", "0.186", ""),), "a clause", Verdict.MEETS, "by 70 %"),
    b.ResultBox((("{U}", "0.186", "(0.03)"),), "", None, verdicts=(("resistance", Verdict.MEETS),)),
    b.VerdictCount(((Verdict.MEETS, 4),)),
    b.Index(),
    b.NoteBox("Official's note", ("accepted", "not accepted")),
    b.FreeSpace("Space for conditions"),
    b.Numbered("1", "Question", (b.Paragraph("Why?"),)),
    b.Beside((b.Paragraph("l"),), (b.Paragraph("r"),)),
    b.Framed("Caution", (b.Paragraph("No design."),)),
    b.Space(3),
    b.FieldBreak(),
)

GOLDEN = """\
=== W1  Wall W1: assembly  (scale 1 : 5) ===

[W1] North walls  |  58 m²

## Project

Some bold words about R_si.

[ ] first
[ ] second

Site: Lot 7

d (mm) | Verdict
12.7 | <meets>
= sum | one / two
    <needs evidence> missing

(figure: section W1, 1 : 5)

Step | Running total (R, m²·K/W) | Source
1  Films  [a source]
    R_s = R_si + R_se
        = 0.260 m²·K/W  ... 0.260

Required 2.97 | Step 1 | <does not meet> | C1, line 2

U: 0.186
a clause <meets> by 70 %

U: 0.186 (0.03)
resistance <meets>

<meets> 4

(index of the sheets)

Official's note: [ ] accepted  [ ] not accepted

(space: Space for conditions)

1 Question
    Why?

left:
    l
right:
    r

[[ Caution ]]
    No design.



legend: timber
"""


def test_every_block_reads_as_text():
    assert as_text(b.Sheet("W1", "Wall W1: assembly", "1 : 5", EVERY_BLOCK, ("timber",))) == GOLDEN


def test_the_list_above_holds_every_block():
    assert {type(block) for block in EVERY_BLOCK} == set(typing.get_args(b.Block))
    assert all(dataclasses.is_dataclass(block) for block in EVERY_BLOCK)
