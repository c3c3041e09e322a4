"""What one project comes to: its resolved assemblies, studies, findings and the choices that want an explanation.

This is the one thing the results file, the sheets and the terminal are printed from.
"""

from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from layerfolio.assembly.types import Assembly
from layerfolio.codes.explanations import Explanation
from layerfolio.codes.findings import Finding
from layerfolio.problems import Caution, Problem, ProblemsFound
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.studies.types import ThermalStudy, VapourStudy

if TYPE_CHECKING:
    from layerfolio.assembly.junction_types import Junction
    from layerfolio.codes.context import Context
    from layerfolio.codes.envelope import EnvelopeJudged
    from layerfolio.codes.register import Register
    from layerfolio.reading import Loaded
    from layerfolio.studies.envelope_types import BuildingStudy, GroundStudy, OpeningStudy
    from layerfolio.studies.structure_types import Attachment, DeadLoad, WallLineStudy


@dataclass(frozen=True, slots=True)
class Dossier:
    """`project` is the validated project file (reading.schema.Project), `folder` where its documents lie; dictionaries
    are in the order of the file. `envelope` holds the code's own sums, None where no set limits the parts; `register` is
    None, and loads, attachments and lines of bracing are empty, until `documented` is asked for them.
    """

    project: Any
    input_sha256: str
    assemblies: dict[str, Assembly]
    thermal: dict[str, ThermalStudy]
    vapour: dict[str, VapourStudy]
    condensation: dict[str, CondensationStudy]
    findings: tuple[Finding, ...]
    explanations: tuple[Explanation, ...]
    cautions: tuple[Caution, ...]
    folder: Path
    ground: "dict[str, GroundStudy]"
    openings: "dict[str, OpeningStudy]"
    building: "BuildingStudy | None"
    envelope: "EnvelopeJudged | None"
    register: "Register | None" = None
    dead_loads: "dict[str, DeadLoad]" = field(default_factory=dict)
    attachments: "dict[str, Attachment]" = field(default_factory=dict)
    wall_lines: "dict[str, WallLineStudy]" = field(default_factory=dict)
    junctions: "tuple[Junction, ...]" = ()  # in the order of their details
    files: tuple[Path, ...] = ()  # the project file, then what it is a variant of

    @property
    def system(self) -> str:
        """Which units print first: metric or customary."""
        return self.project.project.units

    def findings_of(self, assembly: str, topic: str = "") -> list[Finding]:
        """The findings on one assembly, of one topic where it is given."""
        return [f for f in self.findings if f.assembly == assembly and topic in ("", f.topic)]


def open_project(path: Path) -> "Loaded":
    """Read a project file and check every name in it; raises ProblemsFound with all mistakes at once."""
    from layerfolio.assembly.resolve import framing_problems, thickness_problems
    from layerfolio.catalogue import code_sets, materials
    from layerfolio.reading import load

    loaded = load(
        path, materials=materials.names, sets=code_sets.set_ids, zones=code_sets.zones, near=materials.nearest,
        amendments=_amendment_problems,
    )  # fmt: skip
    wrong = [*thickness_problems(loaded.project), *framing_problems(loaded.project)]
    if wrong:
        raise ProblemsFound([loaded.problem_at(p.path, p.message, p.example) for p in wrong], loaded.to_look_at)
    return loaded


def _amendment_problems(project: Any) -> tuple[Problem, ...]:
    from layerfolio.codes import amendment_problems

    return amendment_problems(project)


def compile_dossier(loaded: "Loaded") -> Dossier:
    """Resolve, study and judge an opened project."""
    from layerfolio.assembly.resolve import resolve
    from layerfolio.codes import judge
    from layerfolio.codes.envelope import envelope_judged
    from layerfolio.codes.explanations import find_explanations
    from layerfolio.codes.moisture import judge_moisture
    from layerfolio.codes.paths import with_paths
    from layerfolio.printable import unprintable_texts
    from layerfolio.studies.condensation.study import study_of_project
    from layerfolio.studies.thermal import thermal_study
    from layerfolio.studies.vapour import vapour_study

    project = loaded.project
    assemblies, cautions = resolve(project)
    indoor, outdoor = _design_temperatures(project)
    thermal = {n: thermal_study(a, indoor=indoor, outdoor=outdoor) for n, a in assemblies.items()}
    vapour = {n: vapour_study(a, thermal[n].layers) for n, a in assemblies.items()}
    condensation = {n: study_of_project(project, n, a, thermal[n], vapour[n]) for n, a in assemblies.items()}
    about = _context(project, assemblies, thermal)
    parts = about.envelope
    findings = judge(project, {n: (thermal[n], vapour[n]) for n in assemblies}, about=about)
    findings += judge_moisture(project, condensation)
    envelope = envelope_judged(about, findings)
    return Dossier(
        project,
        loaded.input_sha256,
        assemblies,
        thermal,
        vapour,
        condensation,
        with_paths(_by_topic(findings, [*assemblies, *parts.openings, *parts.wall_lines]), project, envelope),
        find_explanations(thermal, vapour),
        (*loaded.cautions, *cautions, *_of_project(project), *unprintable_texts(project)),
        loaded.folder,
        parts.ground,
        parts.openings,
        parts.building,
        envelope,
        wall_lines=parts.wall_lines,
        junctions=parts.junctions,
        files=loaded.files,
    )


def _of_project(project: Any) -> tuple[Caution, ...]:
    """What the project file states and a set or a standard does not know."""
    from layerfolio.codes.other_sets import set_cautions

    return (*_basis_cautions(project), *_word_cautions(project), *set_cautions(project), *_size_cautions(project))


def _size_cautions(project: Any) -> tuple[Caution, ...]:
    if not project.wall_lines:
        return ()
    from layerfolio.codes.line_sizes import size_cautions

    return tuple(size_cautions(project))


def _basis_cautions(project: Any) -> tuple[Caution, ...]:
    if not project.openings:
        return ()
    from layerfolio.codes.rating import basis_cautions

    return tuple(basis_cautions(project))


def _word_cautions(project: Any) -> tuple[Caution, ...]:
    if not project.documents:
        return ()
    from layerfolio.codes.document_words import word_cautions

    return tuple(word_cautions(project))


def documented(dossier: Dossier) -> Dossier:
    """With the evidence register, its rows named by the findings that wait for them, and with the structural studies; itself
    where it has them.
    """
    if dossier.register is not None:
        return dossier
    from layerfolio.codes.register import register, with_rows
    from layerfolio.studies.attachment import attachment
    from layerfolio.studies.dead_load import dead_load

    found = register(dossier.project, dossier.assemblies, dossier.openings, dossier.findings, dossier.folder)
    hung = {name: attachment(one, dossier.project) for name, one in dossier.assemblies.items()}
    return replace(
        dossier,
        register=found,
        findings=with_rows(dossier.findings, found),
        dead_loads={name: dead_load(one) for name, one in dossier.assemblies.items()},
        attachments={name: study for name, study in hung.items() if study is not None},
    )


def _context(project: Any, assemblies: dict[str, Assembly], thermal: dict[str, ThermalStudy]) -> "Context":
    """What a set is judged for: the project's answers, the studies of its openings, ground and whole, how its parts meet."""
    from layerfolio.assembly.junctions import junctions
    from layerfolio.codes.context import Envelope, context

    ground, openings, building = _envelope(project, assemblies, thermal)
    lines = _wall_lines(project, assemblies)
    return context(project, Envelope(thermal, ground, openings, building, lines, junctions(project, assemblies)))


def _wall_lines(project: Any, assemblies: dict[str, Assembly]) -> "dict[str, WallLineStudy]":
    if not project.wall_lines:
        return {}
    from layerfolio.studies.wall_line import wall_line_studies

    return wall_line_studies(project, assemblies)


def _envelope(project: Any, assemblies: dict[str, Assembly], thermal: dict[str, ThermalStudy]) -> tuple[dict, dict, Any]:
    """Studies of the ground, of the openings and of the whole; their modules are loaded where the project has such parts."""
    ground, openings = {}, {}
    if any(one.faces == "ground" or one.ground for one in assemblies.values()):
        from layerfolio.studies.ground import ground_studies

        ground = ground_studies(assemblies, thermal)
    if project.openings:
        from layerfolio.studies.openings import opening_study

        openings = {name: opening_study(name, one, project) for name, one in project.openings.items()}
    if not openings and not any(one.area for one in assemblies.values()):
        return ground, openings, None
    from layerfolio.studies.building import building_study

    return ground, openings, building_study(project, thermal, ground, openings)


def _by_topic(findings: tuple[Finding, ...], subjects: list[str]) -> tuple[Finding, ...]:
    """In the order of the record: by topic, in each the building first, then assemblies and openings as in the project file."""
    from layerfolio.codes.judging import TOPICS

    rank = {name: number for number, name in enumerate(subjects)}
    return tuple(sorted(findings, key=lambda f: (TOPICS.index(f.topic), rank.get(f.assembly or "", -1))))


def _design_temperatures(project: Any) -> tuple[float | None, float | None]:
    climate = project.climate
    outdoor = climate.heating_design_temperature if climate else None
    indoor = project.indoor.temperature if project.indoor else None
    return (indoor.value if indoor else None), (outdoor.value if outdoor else None)
