"""Hatch families: the name each prints under in a legend."""

from functools import cache

from layerfolio.catalogue.files import load
from layerfolio.home import folder


@cache
def families() -> dict[str, str]:
    """Family to printed name, in the order of a legend. The drawing room implements exactly these."""
    return load(folder("shared") / "hatches.yaml")


def printed_name(family: str) -> str:
    """The legend's words for a family; KeyError for an unknown one."""
    return families()[family]
