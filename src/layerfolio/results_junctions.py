"""The junctions in the results file: what meets, what passes by which layers, and where a control stops."""

from typing import Any

from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.results import quantity


def junctions_part(junctions: tuple[Junction, ...]) -> list[dict[str, Any]]:
    """In the order of their details; lengths in m, null where a kind of junction has none."""
    return [_junction(one) for one in junctions]


def _junction(one: Junction) -> dict[str, Any]:
    return {
        "number": one.number,
        "kind": one.kind,
        "of": list(one.of),
        "title": one.title,
        "stated": one.stated,
        "overhang": quantity(one.overhang, "m"),
        "ground_level": quantity(one.ground_level, "m"),
        "frame_set": one.frame_set or None,
        "foundation": one.foundation or None,
        "links": [_link(link) for link in one.links],
        "broken": [{"control": link.letter, "because": link.broken} for link in one.broken],
        "choices": [{"choice": choice.text, "because": choice.because} for choice in one.choices],
        "cannot": one.cannot or None,
    }


def _link(link: Link) -> dict[str, Any]:
    return {
        "control": link.letter,
        "from": list(link.start) if link.start else None,
        "to": list(link.end) if link.end else None,
        "by": link.by or None,
        "words": link.words or None,
        "passes": not link.broken,
    }
