"""One small wall as text: whoever changes a line of it sees which.

To renew it run this file as a script (with src and tests on the path) and read the difference before committing."""

import sys
from pathlib import Path

import pictured

import builders
from layerfolio.drawing.section import section
from layerfolio.drawing.writers import listing

GOLDEN = Path(__file__).parents[1] / "golden" / "section-small-wall.txt"


def small_wall():
    return builders.assembly([
        pictured.layer(1, "Larch boards", 19, "timber-board", serves=["weather face"]),
        pictured.layer(2, "Ventilated cavity", 38, "air", kind="cavity", cavity="ventilated"),
        pictured.layer(3, "Sheathing membrane", None, "membrane", kind="membrane", serves=["water control"]),
        pictured.layer(4, "Hemp batts", 140, "batt", insulating=True,
                       frame=pictured.member("stud", 38, 600, "vertical")),
        pictured.layer(5, "Panel-15", 15, "strand-board", serves=["vapour control", "air control"]),
    ])  # fmt: skip


def test_small_wall_as_text():
    assert listing.write(section(small_wall())) == GOLDEN.read_text(encoding="utf-8")


if __name__ == "__main__":
    sys.stdout.write(f"{GOLDEN.write_text(listing.write(section(small_wall())), encoding='utf-8')} characters\n")
