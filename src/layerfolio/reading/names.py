"""Names of layers: unique in an assembly, because results, findings and drawings point at layers by name."""

from layerfolio.reading.layers import Layer
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.tree import Mapping, Sequence


def name_layers(layers: tuple[Layer, ...], node: Sequence, path: str, report: Report) -> tuple[Layer, ...]:
    """The layers with their names filled in: `name`, else material, membrane or kind of cavity; repeats get ` 2`."""
    _duplicates(node, path, report)
    taken = {layer.name for layer in layers if layer.name}
    last: dict[str, int] = {}
    named = []
    for layer in layers:
        name = layer.name or _free(layer.material or layer.membrane or layer.cavity or "layer", taken, last)
        taken.add(name)
        named.append(layer.but(name=name))
    return tuple(named)


def _free(wanted: str, taken: set[str], last: dict[str, int]) -> str:
    """The wanted name, with the next number that is free; `last` remembers the number given to each."""
    while True:
        last[wanted] = last.get(wanted, 0) + 1
        name = wanted if last[wanted] == 1 else f"{wanted} {last[wanted]}"
        if name not in taken:
            return name


def _duplicates(node: Sequence, path: str, report: Report) -> None:
    """Two layers that state the same name are a mistake; only unstated names are numbered."""
    seen: dict[str, int] = {}
    for n, item in enumerate(node.items):
        stated = item.items.get("name") if isinstance(item, Mapping) else None
        text = " ".join(getattr(stated, "text", "").split())
        if text and text in seen:
            message = f"two layers are called {quoted(text)} (the first is layer {seen[text] + 1})"
            report.problem(stated.place, f"{path}[{n}].name", message)
        elif text:
            seen[text] = n
