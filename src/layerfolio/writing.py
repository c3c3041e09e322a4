"""Outputs are written whole or not at all: a temporary file beside the target, then one rename."""

import os
import tempfile
from collections.abc import Callable
from pathlib import Path


def write_whole(target: Path, write: Callable[[Path], object]) -> None:
    """Let `write` fill a temporary file in the target's folder, then put it in the target's place.

    Raises OSError when the folder cannot be written; the old file then stands as it was.
    """
    handle, name = tempfile.mkstemp(prefix=f".{target.name}.", suffix=".part", dir=target.parent)
    os.close(handle)
    part = Path(name)
    try:
        write(part)
        part.chmod(0o666 & ~_umask())
        os.replace(part, target)
    finally:
        part.unlink(missing_ok=True)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
