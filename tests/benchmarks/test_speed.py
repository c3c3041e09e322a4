"""Speed, measured and never asserted: pytest tests/benchmarks. Compare each command with the bare import of its libraries."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CHECK_LIBRARIES = "import click, yaml, pydantic"
BUILD_LIBRARIES = "import click, yaml, pydantic, jinja2, pypdf, reportlab.platypus, svgwrite"


@pytest.fixture
def project(tmp_path):
    return Path(shutil.copytree(ROOT / "examples" / "chandlery", tmp_path / "chandlery"))


def python(*arguments):
    subprocess.run([sys.executable, *map(str, arguments)], check=True, capture_output=True)


def touched(project, counter=[0]):  # noqa: B006  (a new byte for every round, so that nothing could be remembered)
    counter[0] += 1
    file = project / "project.yaml"
    text = file.read_text(encoding="utf-8").split("\n# round")[0]
    file.write_text(f"{text}\n# round {counter[0]}\n", encoding="utf-8")


@pytest.mark.parametrize("libraries", [CHECK_LIBRARIES, BUILD_LIBRARIES], ids=["check", "build"])
def test_bare_import(benchmark, libraries):
    benchmark.pedantic(python, args=("-c", libraries), rounds=10, warmup_rounds=1)


@pytest.mark.parametrize("command", ["check", "build"])
def test_command(benchmark, project, command):
    benchmark.pedantic(
        python, args=("-m", "layerfolio", command, project), setup=lambda: touched(project), rounds=10, warmup_rounds=1
    )


@pytest.mark.parametrize("count", [1, 50, 200])
def test_assemblies(benchmark, project, count):
    """Linear in the number of assemblies: resolve, study and judge in one process."""
    from layerfolio.dossier import compile_dossier, open_project

    text = (project / "project.yaml").read_text(encoding="utf-8")
    head, _, rest = text.partition("assemblies:\n")
    wall = rest[rest.index("  W1:\n") : rest.index("  R1:\n")]
    walls = "".join(wall.replace("  W1:\n", f"  W{i}:\n", 1) for i in range(1, count + 1))
    (project / "project.yaml").write_text(head + "assemblies:\n" + walls, encoding="utf-8")
    loaded = open_project(project)
    benchmark(compile_dossier, loaded)


def test_describe_a_section(benchmark, project):
    from layerfolio.dossier import compile_dossier, open_project
    from layerfolio.drawing.section import section

    wall = compile_dossier(open_project(project)).assemblies["W1"]
    benchmark(section, wall)
