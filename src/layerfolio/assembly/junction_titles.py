"""Titles of junctions as printed in the schedule and over the details."""

from collections.abc import Mapping

from layerfolio.assembly.types import Assembly

MEETS = {"sill": "on", "rim": "at", "eave": "under", "verge": "under"}


def title(kind: str, of: tuple[str, ...], assemblies: Mapping[str, Assembly]) -> str:
    """As printed: "Sill: wall W1 on slab S1"."""
    return f"{kind[0].upper()}{kind[1:]}: {_words(kind, of, assemblies)}"


def _words(kind: str, of: tuple[str, ...], assemblies: Mapping[str, Assembly]) -> str:
    first = called(assemblies[of[0]])
    if kind.startswith("window"):
        return f"{of[1]} in {first}"
    if kind == "penetration":
        return f"pipe through {first}"
    if kind.endswith("corner") and len(of) > 1:
        return f"walls {of[0]} and {of[1]}"
    return f"{first} {MEETS[kind]} {called(assemblies[of[1]])}" if len(of) > 1 else first


def called(assembly: Assembly) -> str:
    """Kind and name: "wall W1", "slab S1"."""
    return f"{assembly.kind.replace('-', ' ')} {assembly.name}"
