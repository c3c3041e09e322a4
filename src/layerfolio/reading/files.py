"""Files of a project: read whole and bounded, and never outside the project's folder."""

import os
import stat
from pathlib import Path, PurePosixPath, PureWindowsPath

from layerfolio.problems import Problem, ProblemsFound
from layerfolio.reading.report import quoted

MOST_BYTES = 1_000_000
PROJECT_NAME = "project.yaml"


def project_file(path: str | Path) -> Path:
    """The project file that a person means: the file itself, or the project.yaml of a folder."""
    path = Path(path)
    try:
        if path.is_dir():
            inner = path / PROJECT_NAME
            if not inner.exists():
                held = _project_files(path)
                words = f"; it holds {', '.join(quoted(one.name, 100) for one in held)}" if held else ""
                example = f"layerfolio check {held[0]}" if held else f"{PROJECT_NAME} in this folder"
                raise _refused(path, f"the folder holds no {PROJECT_NAME}{words}", shown(example))
            return inner
    except (OSError, ValueError):
        pass  # read_bytes says what is wrong with it
    return path


def read_bytes(path: Path) -> bytes:
    """The whole file; raises ProblemsFound when it is missing, no plain file, unreadable or over 1 MB."""
    try:
        if not stat.S_ISREG(os.stat(path).st_mode):
            raise _refused(path, "this is not a file", PROJECT_NAME)
        with open(path, "rb") as stream:
            data = stream.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise _refused(path, "there is no such file", f"a folder with {PROJECT_NAME}, or the file itself") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _refused(path, f"the file cannot be read: {reason}") from None
    if len(data) > MOST_BYTES:
        raise _refused(path, "the file is larger than 1 MB: a project file holds text only")
    return data


def decode(data: bytes, path: Path) -> str:
    """UTF-8 text, a byte order mark dropped; raises ProblemsFound with the place of the first wrong byte."""
    data = data.removeprefix(b"\xef\xbb\xbf")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8")
        line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
        message = "the file is not UTF-8 text: save it as UTF-8"
        raise ProblemsFound([Problem(shown_name(path), line, column, "", message)]) from None


def inside(stated: str, beside: Path, root: Path) -> Path | None:
    """The path that a project file states, resolved beside that file; None when it leaves the folder `root`.

    Absolute paths, drive letters, backslashes, `..` and symbolic links that lead out are all refused.
    """
    if not stated or "\x00" in stated or "\\" in stated or "://" in stated:
        return None
    if PurePosixPath(stated).is_absolute() or PureWindowsPath(stated).drive:
        return None
    try:
        real_root = root.resolve()
        real = (beside / stated).resolve()
    except (OSError, ValueError, RuntimeError):  # names too long, loops of links
        return None
    return real if real.is_relative_to(real_root) and real != real_root else None


def shown_name(path: Path) -> str:
    """The path as problems name it."""
    return shown(str(path))


def shown(text: str) -> str:
    """The text as a message may carry it, without the marks around it."""
    return quoted(text, 400)[1:-1]


def _project_files(folder: Path) -> list[Path]:
    """The first files of a folder that may be projects."""
    return sorted(one for one in folder.iterdir() if one.suffix.lower() in (".yaml", ".yml") and one.is_file())[:5]


def _refused(path: Path, message: str, example: str = "") -> ProblemsFound:
    return ProblemsFound([Problem(shown_name(path), 0, 0, "", message, example)])
