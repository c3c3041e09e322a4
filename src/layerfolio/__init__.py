"""layerfolio: from a project file of layered assemblies to an inspection-ready package."""

__version__ = "0.1.0"
