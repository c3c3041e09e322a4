"""The evidence register of a project, and the findings with the rows they wait for."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.expected_documents import Standard, region_of
from layerfolio.codes.findings import Finding
from layerfolio.codes.register_answers import enter_findings
from layerfolio.codes.register_building import Building
from layerfolio.codes.register_claims import claim_subjects
from layerfolio.codes.register_rests import resting, rests_on, said
from layerfolio.codes.register_subjects import join_subjects, material_subjects, opening_subjects
from layerfolio.codes.register_types import EvidenceRow, Register, State

__all__ = ["EvidenceRow", "Register", "State", "as_data", "register", "waits_for", "with_rows"]


def register(
    project: Any, assemblies: Mapping[str, Assembly], openings: Mapping[str, Any], findings: Iterable[Finding],
    folder: Path | None,
) -> Register:  # fmt: skip
    """The rows E1-01 ... in a stable order: materials by first use, openings, joins, claims and documents of the project,
    then what findings wait for beside. `openings`: studies by name, may be empty. `folder`: where files are looked for.
    """
    customary = project.project.units == "customary"
    building = Building(str(project.project.date or ""), folder, region_of(project.code.set), dict(assemblies), project)
    of_materials = material_subjects(project, assemblies, customary)
    for subject in (
        *of_materials.values(), *opening_subjects(project, openings, customary), *join_subjects(project, customary),
        *claim_subjects(project, assemblies, customary),
    ):  # fmt: skip
        building.enter(subject)
    building.enter_other_papers()
    enter_findings(building, findings)
    return replace(building.done(), resting=resting(building))


def with_rows(findings: Iterable[Finding], found: Register) -> tuple[Finding, ...]:
    """The findings, each that waits for evidence, names a document or rests on an open one with the numbers of its rows."""
    return tuple(_with_rows(one, found) for one in findings)


def _with_rows(finding: Finding, found: Register) -> Finding:
    waits = found.rows_for(finding)
    numbers = waits or tuple(dict.fromkeys((*_named(finding, found), *rests_on(finding, found))))
    return replace(finding, evidence=numbers, rests="" if waits else said(numbers, found)) if numbers else finding


def _named(finding: Finding, found: Register) -> tuple[str, ...]:
    """The rows whose document a finding names by its number."""
    text = f"{finding.given} {finding.next_step}"
    papers = ((row.number, row.document.number) for row in found.rows if row.document and row.document.number)
    return tuple(row for row, number in papers if re.search(rf"(?<![\w-]){re.escape(number)}(?![\w-])", text))


def waits_for(finding: Finding, found: Register) -> str:
    """What follows on the record of a finding with rows: "missing: E1-07; to be looked at: E1-02"; else empty."""
    rows = [found.row(number) for number in finding.evidence or found.rows_for(finding)]
    missing = [one.number for one in rows if one.waits]
    held = [one.number for one in rows if not one.waits]
    parts = (("missing", missing), ("to be looked at", held))
    return "; ".join(f"{word}: {', '.join(numbers)}" for word, numbers in parts if numbers)


def as_data(found: Register) -> list[dict[str, Any]]:
    """The rows as plain data for the results file."""
    return [_row(one) for one in found.rows]


def _row(one: EvidenceRow) -> dict[str, Any]:
    said = ("number", "subject", "kind", "title", "proves", "region", "shows", "note")
    return {key: getattr(one, key) for key in said} | {
        "state": str(one.state),
        "verdict": str(one.verdict) if one.verdict else None,
        "document": {key: getattr(one.document, key) for key in PAPER} if one.document else None,
        "expected": [_standard(standard) for standard in one.expected],
        "used_on": list(one.used_on),
        "sha256": one.sha256 or None,
    }


PAPER = ("file", "number", "issuer", "edition", "expires")


def _standard(one: Standard) -> dict[str, str]:
    return {"standard": one.text, "source": one.origin.source, "place": one.origin.place, "mark": one.origin.mark}
