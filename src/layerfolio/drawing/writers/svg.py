"""A drawing as SVG."""

from layerfolio.drawing.marks import Drawing


def write(drawing: Drawing) -> str:
    """The whole SVG document, in mm."""
    raise NotImplementedError
