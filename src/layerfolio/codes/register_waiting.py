"""Which rows of the register a finding waits for: by its claim, its layers, its opening; else a row of its own."""

import re
from collections.abc import Iterable, Mapping

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.expected_documents import ExpectedDocument, claims
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.naming import called
from layerfolio.codes.wording import sentence


def wanted_claims(finding: Finding, texts: Iterable[str]) -> list[ExpectedDocument]:
    """The claims that these texts of a finding ask for, in the order of the data."""
    text = " ".join(texts).lower()
    return [one for one in claims() if any(re.search(rf"\b{re.escape(word.lower())}", text) for word in one.asked_by)]


def wanted_of(finding: Finding, claim: ExpectedDocument) -> str:
    """What a finding asks of one claim: the parts of its next step that name it, else all of it."""
    parts = [part for part in finding.next_step.split("; ") if claim in wanted_claims(finding, (part,))]
    return missing("; ".join(parts) or finding.next_step or finding.reason)


def missing(words: str) -> str:
    """A note of what is missing, as a sentence; that it is missing stands in its state."""
    return sentence(words) + ("" if words.endswith(("?", ".", "!")) else ".")


def named_layers(finding: Finding, assembly: Assembly | None, texts: Iterable[str]) -> list[int]:
    """Numbers of the assembly's layers that these texts name, from the outside in."""
    if assembly is None:
        return []
    text = " ".join(texts)
    found = [one.number for one in assembly.layers if called(one) in text]
    if not found:
        found = [one.number for one in assembly.layers if _whole(one.title, text) or _whole(one.name, text)]
    return found


def _whole(words: str, text: str) -> bool:
    return bool(words) and re.search(rf"(?<!\w){re.escape(words)}(?!\w)", text, re.I) is not None


def waiting(findings: Iterable[Finding]) -> list[Finding]:
    """The findings whose verdict waits for evidence."""
    return [one for one in findings if one.verdict is Verdict.NEEDS_EVIDENCE]


def asks(finding: Finding, assemblies: Mapping[str, Assembly]) -> tuple[list[ExpectedDocument], list[int]]:
    """Claims and layers that a finding waits for. What is to be supplied rules; then what is provided, then the question."""
    assembly = None if finding.opening else assemblies.get(finding.assembly or "")
    asked = wanted_claims(finding, (finding.next_step,))
    layers = named_layers(finding, assembly, (finding.reason, finding.next_step))
    if not asked and not layers and not finding.opening:
        layers = named_layers(finding, assembly, (finding.given,)) if _of_a_layer(finding) else []
    if not asked and not layers:
        asked = wanted_claims(finding, (finding.question, finding.id.rpartition("/")[2], finding.reason))
    return asked, layers


def _of_a_layer(finding: Finding) -> bool:
    """Whether what is to be supplied is of a product: a report, a figure, a test."""
    return re.search(r"\b(report|figure|test|permeance|product|resistance)\b", finding.next_step) is not None
