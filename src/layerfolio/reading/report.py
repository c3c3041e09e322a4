"""Collects what is wrong with a project file while it is read, so that one run tells everything."""

from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from layerfolio.problems import Caution, Problem


class Place(NamedTuple):
    """Where something stands: file as the person named it, line and column from 1 (0: the file as a whole)."""

    file: str
    line: int = 0
    column: int = 0


class Report:
    """The problems and cautions of one run.

    `root` is the folder that no path may leave, `folders` gives for each file as named in places the folder it is in.
    """

    def __init__(self, root: Path, folders: dict[str, Path] | None = None):
        self.root = root
        self.folders = folders or {}
        self.problems: list[Problem] = []
        self.cautions: list[Caution] = []

    def folder(self, place: Place) -> Path:
        """Where the paths start that stand at this place."""
        return self.folders.get(place.file, self.root)

    def problem(self, place: Place, path: str, message: str, example: str = "") -> None:
        self.problems.append(Problem(*place, path, message, example))

    def caution(self, path: str, message: str) -> None:
        self.cautions.append(Caution(path, message))


def quoted(text: str, most: int = 60) -> str:
    """The text as a message may carry it: one line, short, no control characters."""
    clean = "".join(c if c.isprintable() else "?" for c in text)
    return f'"{clean[:most]}…"' if len(clean) > most else f'"{clean}"'


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word that was probably meant; empty when none is near."""
    from difflib import get_close_matches

    plain = word[:100].lower().replace("_", " ").strip()
    by_lower = {one.lower().replace("_", " "): one for one in known}
    near = get_close_matches(plain, by_lower, 1, 0.6)
    if not near and len(plain) > 2:
        near = [one for one in by_lower if plain in one.split()]
    return by_lower[near[0]] if near else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """`: did you mean "x"?`, else the known words when they are few, else nothing."""
    words = list(known)
    near = _beginning(word, words) or [one for one in [nearest(word, words)] if one]
    if near:
        return meant(near)
    if words and len(words) <= 12:
        return f": known are {', '.join(words)}"
    return ""


def meant(near: Iterable[str]) -> str:
    """`: did you mean "x" or "y"?`"""
    return f": did you mean {' or '.join(quoted(one) for one in near)}?"


def _beginning(word: str, known: list[str]) -> list[str]:
    """The known words of which this is the beginning, when they are few: 7 for 7A and 7B."""
    plain = word[:100].casefold().strip()
    found = [one for one in known if one.casefold().startswith(plain) and (len(plain) > 2 or len(one) < len(plain) + 2)]
    return found if plain and len(found) <= 3 else []


def join(path: str, key: str) -> str:
    """The dotted path of a key below `path`; a key that is no plain name is shortened and cleaned."""
    key = quoted(key, 40)[1:-1]
    return f"{path}.{key}" if path else key
