"""The room of dated requirements. Its names are fetched on first use: `findings` alone costs nothing."""

from importlib import import_module
from typing import Any

_DOORS = {
    "judge": "judging", "sets": "judging", "zones": "judging", "requirement_ids": "judging",
    "amendable": "amendments", "amendment_problems": "amendments",
}  # fmt: skip


def __getattr__(name: str) -> Any:
    if name in _DOORS:
        return getattr(import_module(f"layerfolio.codes.{_DOORS[name]}"), name)
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
