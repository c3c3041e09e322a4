"""One small detail as text: whoever changes a line of it sees which.

To renew it run this file as a script (with src and tests on the path) and read the difference before committing."""

import sys
from pathlib import Path

import detail_pictures

from layerfolio.drawing.detail.paper import drawing_of
from layerfolio.drawing.writers import listing

GOLDEN = Path(__file__).parents[1] / "golden" / "detail-small.txt"


def test_small_detail_as_text():
    assert listing.write(drawing_of(detail_pictures.small(), scale=5)) == GOLDEN.read_text(encoding="utf-8")


if __name__ == "__main__":
    text = listing.write(drawing_of(detail_pictures.small(), scale=5))
    sys.stdout.write(f"{GOLDEN.write_text(text, encoding='utf-8')} characters\n")
