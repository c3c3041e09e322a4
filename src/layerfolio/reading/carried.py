"""What a variant takes over from its base beside a figure that it changes. Read only where a project is a variant."""

from collections.abc import Iterator, Sequence

from layerfolio.reading.record import null
from layerfolio.reading.report import Report
from layerfolio.reading.tree import Mapping, Node

FIGURES = {
    "openings": ("transmittance", "basis", "solar_factor", "energy_rating"),
    "materials": (
        "conductivity", "resistance", "density", "specific_heat", "permeance", "permeability", "vapour_resistance_factor",
        "equivalent_air_layer", "air_permeance", "flame_spread", "smoke_developed",
    ),
}  # fmt: skip
"""Keys whose figure a document proves."""
BESIDE = {"openings": {"transmittance": "solar_factor", "basis": "solar_factor"}, "materials": {}}


def caution_carried(tree: Mapping, files: Sequence[str], report: Report) -> None:
    """Caution where a figure comes from a file that varies another, and its evidence still from that other.

    `files` are named as in places, from the one opened to the last base.
    """
    rank = {name: number for number, name in enumerate(files)}
    for group, figures in FIGURES.items():
        for name, one in _mappings(tree.items.get(group)):
            changed = next((key for key in figures if _is_later(one, key, "evidence", rank)), "")
            if changed:
                beside = BESIDE[group].get(changed, "")
                kept = "evidence and solar factor" if beside and _is_later(one, changed, beside, rank) else "evidence"
                question = "do they still prove" if "and" in kept else "does it still prove"
                path = f"{group}.{name}"
                what = changed.replace("_", " ")
                words = f"{path} keeps the {kept} of the base file: {question} the new {what}?"
                report.caution(f"{path}.{changed}", words)


def _is_later(one: Mapping, figure: str, beside: str, rank: dict[str, int]) -> bool:
    """Whether the figure is stated in a file nearer to the one opened than what stands beside it."""
    if figure not in one.items or beside not in one.items or null(one.items[beside]):
        return False
    return min(_ranks(one.items[figure], rank)) < min(_ranks(one.items[beside], rank))


def _ranks(node: Node, rank: dict[str, int]) -> Iterator[int]:
    """The files that any part of a value comes from: a map may be merged of two."""
    yield rank[node.place.file]
    if isinstance(node, Mapping):
        for inner in node.items.values():
            yield from _ranks(inner, rank)


def _mappings(group: Node | None) -> Iterator[tuple[str, Mapping]]:
    for name, one in group.items.items() if isinstance(group, Mapping) else ():
        if isinstance(one, Mapping):
            yield name, one
