"""Rules about the repository itself; a failure says what to do instead."""

import ast
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "src", "templates", "tests", "examples", "shared"}
ROOMS = ["reading", "catalogue", "assembly", "formulas", "studies", "codes", "drawing", "sheets", "binding"]
"""In the order of the doors: a room may import those before it."""
TOOLS = {"steps", "units", "glossary", "problems", "home"}
MAY_IMPORT = {"formulas": set()}


def tracked() -> list[Path]:
    out = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True)
    if out.returncode:
        pytest.fail("the house rules read the list of files from git: run the tests in a checkout")
    return [ROOT / line for line in out.stdout.splitlines() if (ROOT / line).is_file()]


def texts() -> dict[Path, str]:
    found = {}
    for path in tracked():
        if path.suffix in (".py", ".md", ".yaml", ".txt", ".toml", ".svg", ".json", "") and path.name != "LICENCE.txt":
            found[path] = path.read_text(encoding="utf-8")
    return found


def test_top_level_is_as_agreed():
    names = {path.relative_to(ROOT).parts[0] for path in tracked()}
    assert {n for n in names if not n.startswith(".")} == TOP


def test_no_path_of_a_machine_and_no_registry_host():
    pattern = re.compile(r"/(?:wor" r"k|roo" r"t|hom" r"e/\w+)/|https?://[\w.]*(?:pypi|npmjs|debian)[\w.]*")
    found = [f"{p.relative_to(ROOT)}: {m.group()}" for p, text in texts().items() if (m := pattern.search(text))]
    assert not found, "name no folder of a machine and no package host: " + ", ".join(found)


def test_the_tool_never_says_that_something_is_approved():
    """Outside the official's own fields no text the tool prints claims an approval or compliance."""
    pattern = re.compile(
        r"\b(?:is|are|was|been) (?:approved|certified|guaranteed)\b|\bcomplies with\b|\bcode[- ]compliant\b", re.I
    )
    places = [
        p
        for p in texts()
        if p.is_relative_to(ROOT / "templates")
        or p.is_relative_to(ROOT / "shared/notices")
        or p.is_relative_to(ROOT / "src/layerfolio/sheets")
        or p.is_relative_to(ROOT / "src/layerfolio/codes")
    ]
    found = [f"{p.relative_to(ROOT)}: {m.group()}" for p in places if (m := pattern.search(texts()[p]))]
    assert places and not found, "say what was calculated, against which figure, and who decides: " + ", ".join(found)


def modules():
    return sorted((ROOT / "src" / "layerfolio").rglob("*.py"))


def imported(path: Path) -> set[str]:
    """First parts below layerfolio of everything a module imports."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = [node.module] if isinstance(node, ast.ImportFrom) and node.module else []
        names += [a.name for a in node.names] if isinstance(node, ast.Import) else []
        if isinstance(node, ast.ImportFrom) and node.module == "layerfolio":
            found |= {a.name for a in node.names}
        found |= {n.split(".")[1] for n in names if n.startswith("layerfolio.")}
    return found


@pytest.mark.parametrize("room", ROOMS)
def test_no_arrow_points_back(room):
    allowed = MAY_IMPORT.get(room, set(ROOMS[: ROOMS.index(room)]))
    for path in (p for p in modules() if p.relative_to(ROOT / "src/layerfolio").parts[0] == room):
        wrong = imported(path) & set(ROOMS) - allowed - {room}
        assert not wrong, f"{path.relative_to(ROOT)} imports {wrong}: a room takes what the doors before it give"


@pytest.mark.parametrize("tool", sorted(TOOLS - {"glossary", "problems", "home"}))
def test_tools_import_no_room(tool):
    for path in (p for p in modules() if p.relative_to(ROOT / "src/layerfolio").parts[0] == tool):
        assert not imported(path) & set(ROOMS), f"{path.relative_to(ROOT)}: a tool imports no room"


def test_modules_and_functions_stay_small():
    """About 150 lines and 20 lines are the aim; these bounds say when it is time to split."""
    long_modules, long_functions = [], []
    for path in modules():
        text = path.read_text(encoding="utf-8")
        if text.count("\n") > 250:
            long_modules.append(f"{path.relative_to(ROOT)} ({text.count(chr(10))} lines)")
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.FunctionDef) and node.end_lineno - node.lineno + 1 > 45:
                long_functions.append(f"{path.relative_to(ROOT)}:{node.lineno} {node.name}")
    assert not long_modules and not long_functions, "split: " + ", ".join(long_modules + long_functions)


def test_public_functions_have_docstrings_and_return_types():
    bare = []
    for path in modules():
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_") and node.returns is None:
                bare.append(f"{path.relative_to(ROOT)}:{node.lineno} {node.name}")
    assert not bare, "say what a public function returns: " + ", ".join(bare)
