"""What a finding rests on though it waits for nothing: rows of its insulation, control layers and opening that are open."""

from collections.abc import Iterable

from layerfolio.assembly.types import Layer
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.register_building import Building
from layerfolio.codes.register_subjects import given_layer, material_key
from layerfolio.codes.register_types import BUILDING, EvidenceRow, Register, State

WORDS = {
    State.MISSING: "missing", State.EXPIRED: "expired", State.NAMED: "not beside this set", State.ATTACHED: "to be looked at",
}  # fmt: skip
Key = tuple[str, str | None]


def resting(building: Building) -> dict[Key, tuple[str, ...]]:
    """By topic and subject: numbers of the rows that its figures rest on and that wait for a document."""
    found: dict[Key, list[EvidenceRow]] = {}
    for name, assembly in building.assemblies.items():
        found["thermal", name] = _rows(building, name, [one for one in assembly.layers if one.insulating])
        found["vapour", name] = _rows(building, name, [one for one in assembly.layers if "vapour control" in one.serves])
    for row in building.rows:
        if row.kind == "opening":
            found.setdefault(("openings", row.subject), []).append(row)
    whole = {row.number: row for (topic, _), rows in found.items() if topic != "vapour" for row in rows}
    found["thermal", None] = [*whole.values(), *(row for row in building.rows if row.kind == "join")]
    return {key: tuple(row.number for row in rows if row.waits) for key, rows in found.items()}


def _rows(building: Building, name: str, layers: list[Layer]) -> list[EvidenceRow]:
    assembly = building.assemblies[name]
    keys = dict.fromkeys(material_key(one, given_layer(building.project, assembly, one)) for one in layers)
    return [row for key in keys for row in building.rows_of(key) if row.kind == "material"]


def rests_on(finding: Finding, found: Register) -> tuple[str, ...]:
    """The open rows that a line on heat, vapour or an opening rests on which meets."""
    if finding.verdict is not Verdict.MEETS:
        return ()
    if finding.opening:
        return found.resting.get(("openings", finding.assembly), ())
    if finding.assembly is None and finding.step != BUILDING:
        return ()
    return found.resting.get((finding.topic, finding.assembly), ())


def said(numbers: Iterable[str], found: Register) -> str:
    """ "rests on E1-07, E1-12, missing; E1-10, expired"; empty where each row has its document."""
    rows = [found.row(number) for number in numbers]
    parts = []
    for state, word in WORDS.items():
        held = [row.number for row in rows if row.waits and row.state is state]
        parts += [f"{', '.join(held)}, {word}"] if held else []
    return f"rests on {'; '.join(parts)}" if parts else ""
