"""Where the data folders live: inside an installed package first, else beside the checkout's pyproject.toml."""

from functools import cache
from pathlib import Path


@cache
def folder(name: str) -> Path:
    """The folder `shared` or `templates`; raises FileNotFoundError when the installation is broken."""
    packaged = Path(__file__).parent / "_data" / name
    if packaged.is_dir():
        return packaged
    checkout = Path(__file__).parents[2]
    beside = checkout / name
    if (checkout / "pyproject.toml").is_file() and beside.is_dir():
        return beside
    raise FileNotFoundError(f"the data folder {name!r} of layerfolio is missing: install the package again")
