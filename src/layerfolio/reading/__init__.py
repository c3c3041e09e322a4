"""Reading a project file: text in, a frozen Project out, or every problem with its place."""

from layerfolio.reading.loading import Loaded, load

__all__ = ["Loaded", "load"]
