"""A drawing as text, for golden tests and for readers without a viewer."""

from layerfolio.drawing.marks import Drawing


def write(drawing: Drawing) -> str:
    """One line per mark, groups and clips indented."""
    raise NotImplementedError
