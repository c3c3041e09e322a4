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
CLIMATE, HUMIDITY, BRACING, LOADS = "climate", "indoor-humidity", "bracing", "site-loads"
"""Claims of the project, by their names in the data."""
HEAT, VAPOUR = "conductivity", "vapour"
Key = tuple[str, str | None]


def resting(building: Building) -> dict[Key, tuple[str, ...]]:
    """By topic and subject: numbers of the rows that its figures rest on and that wait for a document."""
    found: dict[Key, list[EvidenceRow]] = {}
    for name, assembly in building.assemblies.items():
        counted = [one for one in assembly.layers if one.counts]
        found["thermal", name] = _open(_rows(building, name, [one for one in assembly.layers if one.insulating]), HEAT)
        found["vapour", name] = _open(_rows(building, name, [one for one in counted if "vapour control" in one.serves]), VAPOUR)
        layers = _open(_rows(building, name, [one for one in counted if one.kind != "cavity"]), VAPOUR)
        found["balance", name] = [*layers, *_claims(building, CLIMATE, HUMIDITY)]
    for name in getattr(building.project, "wall_lines", None) or {}:
        found["structure", name] = _claims(building, BRACING, LOADS)
    for row in building.rows:
        if row.kind == "opening":
            found.setdefault(("openings", row.subject), []).extend([row] if row.waits else [])
    whole = {row.number: row for (topic, _), rows in found.items() if topic in ("thermal", "openings") for row in rows}
    found["thermal", None] = [*whole.values(), *(row for row in building.rows if row.kind == "join" and row.waits)]
    found["applicability", None] = _claims(building, CLIMATE)
    return {key: tuple(dict.fromkeys(row.number for row in _in_order(building, rows))) for key, rows in found.items()}


def _claims(building: Building, *names: str) -> list[EvidenceRow]:
    """The open rows of what the project claims: climate, humidity of the room, loads of the place."""
    return [row for row in building.rows if row.kind == "claim" and row.waits and {row.subject, *row.also} & set(names)]


def _open(rows: list[EvidenceRow], matter: str) -> list[EvidenceRow]:
    """Those that wait, or whose documents leave this figure of it unproved."""
    return [one for one in rows if one.waits or matter in one.unproved]


def _in_order(building: Building, rows: list[EvidenceRow]) -> list[EvidenceRow]:
    numbers = {one.number for one in rows}
    return [one for one in building.rows if one.number in numbers]


def _rows(building: Building, name: str, layers: list[Layer]) -> list[EvidenceRow]:
    assembly = building.assemblies[name]
    keys = dict.fromkeys(material_key(one, given_layer(building.project, assembly, one)) for one in layers)
    return [row for key in keys for row in building.rows_of(key) if row.kind == "material"]


def rests_on(finding: Finding, found: Register) -> tuple[str, ...]:
    """The open rows that a line on heat, vapour, bracing or an opening rests on which meets."""
    if finding.verdict is not Verdict.MEETS:
        return ()
    if finding.opening:
        return found.resting.get(("openings", finding.assembly), ())
    of_zone = finding.topic == "applicability" and finding.id.endswith("/zone")
    if finding.assembly is None and finding.step != BUILDING and not of_zone:
        return ()
    return found.resting.get((_matter(finding), finding.assembly), ())


def _matter(finding: Finding) -> str:
    """The figures that a line rests on: in a balance of moisture those of all layers."""
    return "balance" if finding.topic == "vapour" and finding.path == "performance" else finding.topic


def said(numbers: Iterable[str], found: Register) -> str:
    """ "rests on E1-07, E1-12, missing; E1-10, expired"; empty where each row has its document."""
    rows = [found.row(number) for number in numbers]
    parts = []
    for state, word in WORDS.items():
        held = [row.number for row in rows if row.waits and row.state is state]
        parts += [f"{', '.join(held)}, {word}"] if held else []
    unproved = [row.number for row in rows if not row.waits and row.unproved]
    parts += [f"{', '.join(unproved)}, whose figure in use is not proved"] if unproved else []
    return f"rests on {'; '.join(parts)}" if parts else ""
