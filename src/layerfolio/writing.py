"""Outputs are written whole or not at all, and never over anything but an older output."""

import os
from collections.abc import Callable, Iterable
from contextlib import suppress
from pathlib import Path

from layerfolio.problems import Problem, ProblemsFound


class CannotWrite(OSError):
    """The file could not be written; whatever stood at the path before is untouched."""


def write_whole(target: Path, write: Callable[[Path], object]) -> None:
    """Let `write` fill a file beside the target, then put it in the target's place; CannotWrite says what is in the way."""
    beside = target.parent / f".layerfolio-{os.getpid()}.part"
    try:
        if target.is_dir():
            raise IsADirectoryError("it is a folder")
        if not target.parent.is_dir():
            raise FileNotFoundError(f"create the folder {target.parent} first")
        write(beside)
        os.replace(beside, target)
    except OSError as error:
        raise CannotWrite(f"{target} cannot be written: {error.strerror or error}") from error
    finally:
        with suppress(OSError):
            beside.unlink(missing_ok=True)


def check_target(target: Path, endings: tuple[str, ...], inputs: Iterable[Path]) -> None:
    """Refuse, as ProblemsFound, an output that would take the place of anything but an older output."""
    wrong = _wrong(target, endings, inputs)
    if wrong:
        raise ProblemsFound([Problem(str(target), 0, 0, "", f"{wrong}; nothing was written", f"package{endings[0]}")])


def _wrong(target: Path, endings: tuple[str, ...], inputs: Iterable[Path]) -> str:
    if target.suffix.lower() not in endings:
        return f"the output must end in {' or '.join(endings)}"
    if target.is_symlink() or (target.exists() and not target.is_file() and not target.is_dir()):
        return "this is a link or a device, no ordinary file"
    if any(_same(target, one) for one in inputs):
        return "this is a file of the project itself"
    return ""


def _same(one: Path, other: Path) -> bool:
    """Whether two paths mean one file, by whatever names; also where neither exists yet."""
    return one.resolve() == other.resolve() or (one.exists() and other.exists() and one.samefile(other))
