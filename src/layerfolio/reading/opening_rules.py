"""Rules between the keys of one opening."""

from layerfolio.reading.openings import Opening
from layerfolio.reading.report import Report
from layerfolio.reading.tree import Mapping


def check_opening(opening: Opening, node: Mapping, path: str, report: Report) -> None:
    """Report what does not fit together in one opening."""
