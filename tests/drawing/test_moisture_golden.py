"""One wet wall's moisture picture as text: whoever changes a line of it sees which.

To renew it run this file as a script (with src and tests on the path) and read the difference before committing."""

import sys
from pathlib import Path

from moisture_pictures import panel_outside

from layerfolio.drawing.moisture import moisture_picture
from layerfolio.drawing.moisture_bars import Limit
from layerfolio.drawing.writers import listing

GOLDEN = Path(__file__).parents[1] / "golden" / "moisture-panel-outside.txt"


def written() -> str:
    return listing.write(moisture_picture(panel_outside(), limit=Limit(0.5, "limit 0.50", "DIN 4108-3")))


def test_panel_outside_as_text():
    assert written() == GOLDEN.read_text(encoding="utf-8")


if __name__ == "__main__":
    sys.stdout.write(f"{GOLDEN.write_text(written(), encoding='utf-8')} characters\n")
