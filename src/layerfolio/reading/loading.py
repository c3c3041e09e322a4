"""Opening a project: from a path to the frozen Project, or to every problem found in one run."""

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass, field
from pathlib import Path

from layerfolio.problems import Caution, Problem, ProblemsFound
from layerfolio.reading.files import project_file
from layerfolio.reading.known import Known, check_names
from layerfolio.reading.places import place_of
from layerfolio.reading.report import Report, did_you_mean, meant, quoted
from layerfolio.reading.schema import Project
from layerfolio.reading.tree import Mapping
from layerfolio.reading.variants import read_chain


@dataclass(frozen=True)
class Loaded:
    """A project as read. `folder` is where its paths start; `files` go from the one opened to the last base.

    `input_sha256` is over the bytes of all files in that order. `cautions` is what reading saw that stops nothing.
    """

    project: Project
    folder: Path
    files: tuple[Path, ...]
    input_sha256: str
    cautions: tuple[Caution, ...]
    tree: Mapping = field(repr=False)

    @property
    def inputs(self) -> tuple[Path, ...]:
        """Every file the project names: its own and its documents. No output may take their place."""
        project = self.project
        layers = (layer for one in project.assemblies.values() for layer in one.layers)
        grounds = (one.ground for one in project.assemblies.values() if one.ground)
        edges = (one.edge_insulation for one in grounds if one.edge_insulation)
        holders = [*project.materials.values(), *layers, *edges, *project.openings.values(), *project.joins]
        documents = [*(one for holder in holders for one in holder.evidence), *project.documents]
        named = (one.file for one in documents if one.file)
        return (*self.files, *(self.folder / name for name in named))

    def problem_at(self, path: str, message: str, example: str = "") -> Problem:
        """A problem at a dotted path of the project (`assemblies.W1.layers[3].material`), with file, line, column."""
        return Problem(*place_of(self.tree, path), path, message, example)

    @property
    def to_look_at(self) -> tuple[Problem, ...]:
        """The cautions of reading with file, line and column, in file order."""
        return placed(self.tree, self.cautions)

    def unknown_assembly(self, asked: str) -> Problem:
        """The problem that no assembly has the name that was asked for."""
        known = list(self.project.assemblies)
        same = [one for one in known if one.casefold() == asked.casefold()]
        words = meant(same) if same else did_you_mean(asked, known) or f": there are {', '.join(known)}"
        return self.problem_at("assemblies", f"there is no assembly {quoted(asked)}{words}", (same or known)[0])


def placed(tree: Mapping, cautions: Iterable[Caution]) -> tuple[Problem, ...]:
    """Cautions with their places, in file order, told apart from mistakes by their first words."""
    return tuple(sorted(Problem(*place_of(tree, one.path), one.path, f"look again: {one.message}") for one in cautions))


def load(
    path: str | Path,
    *,
    materials: Callable[[], Collection[str]] | None = None,
    sets: Callable[[], Collection[str]] | None = None,
    zones: Callable[[str], Collection[str]] | None = None,
    near: Callable[[str], Collection[str]] | None = None,
    amendments: Callable[[Project], Iterable[Problem]] | None = None,
) -> Loaded:
    """Read a project file, or the project.yaml of a folder; raises ProblemsFound with every mistake, in file order.

    `materials` and `sets` give the names known elsewhere, `zones` those of one set (empty: the set has none), `near` the
    materials that a misspelt name may mean, `amendments` what is wrong with those of a project; what is not given is not
    checked. They are called only when they are needed.
    """
    opened = project_file(path)
    chain = read_chain(opened)
    report = Report(opened.parent, chain.folders)
    project = Project.read(chain.tree, "", report)
    if len(chain.files) > 1:
        from layerfolio.reading.carried import caution_carried

        caution_carried(chain.tree, tuple(chain.folders), report)
    check_names(chain.tree, project, Known(materials, sets, zones, near, amendments), report)
    if report.problems:
        raise ProblemsFound(list(dict.fromkeys(report.problems)), placed(chain.tree, report.cautions))
    return Loaded(project, opened.parent, chain.files, chain.input_sha256, tuple(report.cautions), chain.tree)
