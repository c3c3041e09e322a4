"""Layers as findings name them: the printed title with the layer's number, never the key of the project file."""

from collections.abc import Iterable

from layerfolio.assembly.types import Assembly, Layer


def called(layer: Layer) -> str:
    """A layer by title and number: "Mineral-wool board (layer 4)"."""
    return f"{layer.title} (layer {layer.number})"


def by_name(assembly: Assembly, names: Iterable[str]) -> list[str]:
    """Layers that are known by name, in the order of the names; a name of no layer (a film) stands as it is."""
    layers = {one.name: called(one) for one in assembly.layers}
    return [layers.get(name, name) for name in names]
