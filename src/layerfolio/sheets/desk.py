"""What every sheet maker needs at hand: the dossier, the source book, the templates, the units that come first."""

from dataclasses import dataclass, field
from math import isclose

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.dossier import Dossier
from layerfolio.sheets.source_book import SourceBook
from layerfolio.sheets.templates import Templates

COVER, GUIDE, RECORD, CRITERIA, BUILDING, OPENINGS, SOURCES, SYMBOLS, CERTIFICATE, EVIDENCE = (
    "G0", "G1", "C1", "C2", "C3", "C4", "C5", "C6", "C7", "E1",
)  # fmt: skip
BUILDING_SECTION = "D0"
STRUCTURE, BRACING, FASTENING, LOADS = "ST1", "ST2", "ST3", "ST4"

KIND_WORDS = {
    "wall": "Wall",
    "roof": "Roof",
    "ceiling": "Ceiling",
    "floor": "Floor",
    "slab": "Slab",
    "foundation-wall": "Foundation wall",
}


@dataclass(slots=True)
class Desk:
    dossier: Dossier
    book: SourceBook = field(default_factory=SourceBook)
    templates: Templates = field(default_factory=Templates)
    moved_notes: dict[str, tuple[str, ...]] = field(default_factory=dict)  # of drawings whose sheet is full, for C5

    @property
    def system(self) -> str:
        return self.dossier.system

    @property
    def structural(self) -> tuple[str, ...]:
        """Numbers of the structural sheets that the package has."""
        from layerfolio.sheets.structure import structural_answers

        return tuple(number for number, _, there in structural_answers(self) if there)

    @property
    def is_light(self) -> bool:
        """Whether drawings have half their hatching."""
        return self.dossier.project.project.hatch == "light"

    def line(self, finding: Finding) -> int:
        """The number of a finding's line in the compliance record, from 1."""
        return self.dossier.findings.index(finding) + 1

    def thermal_finding(self, assembly: str) -> Finding | None:
        """The finding that judges the assembly as a whole; else the first of topic thermal with a limit, else the first."""
        found = self.dossier.findings_of(assembly, "thermal")
        of_whole = (f for f in found if self.judges_whole(f))
        unsettled = (f for f in found if f.limit is None and f.verdict is Verdict.NEEDS_JUDGEMENT and self._of_whole(f))
        return next(of_whole, None) or next(unsettled, None) or next((f for f in found if f.limit), found[0] if found else None)

    def judges_whole(self, finding: Finding) -> bool:
        """Whether a finding compares the resistance or transmittance of the whole assembly, and not that of a part of it."""
        return finding.limit is not None and self._of_whole(finding)

    def _of_whole(self, finding: Finding) -> bool:
        result = self.dossier.thermal[finding.assembly].final
        if result is None or finding.provided is None:
            return False
        value = result.transmittance if finding.provided.quantity == "U" else result.resistance
        return isclose(finding.provided.value, value, rel_tol=1e-9)


def verdict_counts(findings: tuple[Finding, ...]) -> tuple[tuple[Verdict, int], ...]:
    """How often each verdict stands, in the order of the verdicts."""
    return tuple((verdict, sum(f.verdict is verdict for f in findings)) for verdict in Verdict)


def code_words(desk: Desk) -> str:
    """The code set in words: "NBC 2020"."""
    from layerfolio.catalogue.code_sets import code_set

    found = code_set(desk.dossier.project.code.set)
    year = found.set_id.partition("-")[2]
    return f"{found.short} {year}".strip()
