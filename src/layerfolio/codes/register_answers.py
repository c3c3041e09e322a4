"""The rows that findings wait for; where none fits, a row is made from the finding itself."""

import re
from collections.abc import Iterable
from dataclasses import replace

from layerfolio.catalogue.expected_documents import ExpectedDocument
from layerfolio.codes.edge_insulation import edge_key
from layerfolio.codes.findings import Finding
from layerfolio.codes.register_building import Building
from layerfolio.codes.register_subjects import Subject, given_layer, material_key
from layerfolio.codes.register_types import FASTENING, LINES, OPENINGS, RECORD, EvidenceRow
from layerfolio.codes.register_waiting import asks, missing, waiting, wanted_of
from layerfolio.codes.wall_lines import is_on_a_line


def enter_findings(building: Building, findings: Iterable[Finding]) -> None:
    """The rows that each finding waits for; where none fits, a row is made from the finding itself."""
    for one in waiting(findings):
        numbers = _rows_for(building, one) or (_own_row(building, one),)
        numbers = tuple(dict.fromkeys((*numbers, *_by_title(building, one))))
        building.waiting[(one.id, one.assembly)] = numbers
        for number in numbers:
            _mark(building, number, one)


def _rows_for(building: Building, finding: Finding) -> tuple[str, ...]:
    asked, layers = asks(finding, building.assemblies)
    found = [number for claim in asked for number in _of_claim(building, claim, finding)]
    found += [number for layer in layers for number in _of_layer(building, finding, layer)]
    if finding.assembly and edge_key(finding.assembly) in finding.next_step:
        found += [x.number for x in building.rows_of(edge_key(finding.assembly)) if x.waits]
    if finding.opening and not asked:
        found += [x.number for x in building.rows_of(finding.assembly or "") if x.kind == "opening" and x.waits]
    return tuple(dict.fromkeys(found))


def _by_title(building: Building, finding: Finding) -> list[str]:
    """Rows of documents of structure whose title names what the finding asks for: "Foundations, posts and roof"."""
    if finding.topic != "structure":
        return []
    asked = set(re.findall(r"[a-z]{8,}", f"{finding.question} {finding.next_step}".lower())) - {"drawings"}
    papers = [row for row in building.rows if row.kind == "claim" and row.document]
    return [row.number for row in papers if asked & set(re.findall(r"[a-z]+", row.title.lower()))]


def _of_claim(building: Building, claim: ExpectedDocument, finding: Finding) -> list[str]:
    """Rows of a claim: those that wait, else all; of one that gathers, all; a claim that nobody made so far gets its row here."""
    rows = _gathered(building, claim) if claim.gathers else [x for x in building.rows_of(claim.name) if x.kind == "claim"]
    if not rows:
        subject = Subject(claim.name, "claim", claim.title, claim)
        number = building.add_missing(subject, "", wanted_of(finding, claim))
        building.asked.add(number)
        return [number]
    if claim.gathers:
        return [x.number for x in rows]
    for row in rows:
        building.ask_too(row.number, wanted_of(finding, claim))
    return [x.number for x in rows if x.waits] or [x.number for x in rows]


def _gathered(building: Building, claim: ExpectedDocument) -> list[EvidenceRow]:
    """The rows of all openings but hatches, which have no label, or of all insulation."""
    if claim.gathers == "openings":
        openings = getattr(building.project, "openings", None) or {}
        hatches = [name for name, one in openings.items() if one.kind == "hatch"]
        return [x for x in building.rows if x.kind == "opening" and x.subject not in hatches]
    keys = {
        material_key(layer, given_layer(building.project, assembly, layer))
        for assembly in building.assemblies.values()
        for layer in assembly.layers
        if layer.insulating
    }
    return [x for x in building.rows if x.kind == "material" and x.subject in keys]


def _of_layer(building: Building, finding: Finding, number: int) -> list[str]:
    assembly = building.assemblies[finding.assembly or ""]
    layer = assembly.layers[number - 1]
    key = material_key(layer, given_layer(building.project, assembly, layer))
    return [x.number for x in building.rows_of(key) if x.kind == "material" and x.waits]


def _own_row(building: Building, finding: Finding) -> str:
    """One row for all findings that ask the same: "Second plane of protection, W1, W2": missing: supply ..."."""
    note = missing(finding.next_step or finding.reason)
    subject = f", {finding.assembly}" if finding.assembly else ""
    for place, row in enumerate(building.rows):
        if row.subject == finding.id and row.note == note:
            building.rows[place] = replace(row, title=row.title + subject)
            return row.number
    expected = ExpectedDocument(finding.id, "claim", finding.question, "", {})
    made = Subject(finding.id, "claim", finding.question + subject, expected)
    return building.add_missing(made, f"for {finding.clause}", note)


def _sheets(building: Building, finding: Finding) -> list[str]:
    """The sheets of what a finding is about, the record aside."""
    if finding.opening:
        return [OPENINGS]
    if finding.assembly not in building.assemblies:
        return [LINES] if is_on_a_line(finding) else []
    hung = any(word in finding.id.rpartition("/")[2] for word in ("furring", "cladding-through", "cladding-attachment"))
    return [finding.assembly, *([FASTENING] if hung else [])]


def _mark(building: Building, number: str, finding: Finding) -> None:
    """The row is used on the record, and on the sheet of what the finding is about."""
    place = next(at for at, x in enumerate(building.rows) if x.number == number)
    sheets = [*building.rows[place].used_on, *_sheets(building, finding), RECORD]
    kept = [x for x in dict.fromkeys(sheets) if x != RECORD]
    building.rows[place] = replace(building.rows[place], used_on=(*kept, RECORD))
