"""Starter projects: commented, complete, and building as they stand."""

import shutil
from pathlib import Path

from layerfolio.home import folder
from layerfolio.problems import Problem, ProblemsFound


def starters() -> tuple[str, ...]:
    """Names of the starters, in alphabetical order."""
    return tuple(sorted(path.parent.name for path in (folder("shared") / "starters").glob("*/project.yaml")))


def starter_file(name: str) -> Path:
    """The project file of a starter."""
    return folder("shared") / "starters" / name / "project.yaml"


def write_starter(target: Path, name: str) -> Path:
    """Copy a starter into a new or empty folder; returns its project file. ProblemsFound when that would overwrite."""
    if name not in starters():
        raise ProblemsFound(
            [Problem(name, 0, 0, "", f"there is no such starter; there are {', '.join(starters())}", "--starter wall")]
        )
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise ProblemsFound(
            [Problem(str(target), 0, 0, "", "exists and is not an empty folder; nothing was written", "a new name")]
        )
    target.mkdir(parents=True, exist_ok=True)
    shutil.copyfile(starter_file(name), target / "project.yaml")
    return target / "project.yaml"
