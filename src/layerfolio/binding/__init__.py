"""Binding: sheets to one PDF. reportlab is imported only when something is bound."""

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from layerfolio.binding.book import BoundInfo
    from layerfolio.sheets.blocks import Package


def bind(package: "Package", path: Path) -> "BoundInfo":
    """Write the package as one PDF, whole or not at all; binding.book.CannotWrite (an OSError) says why not."""
    from layerfolio.binding.book import bind as bind_book

    return bind_book(package, path)
