"""The evidence of a layer on its explanation sheet: documents named and missing, with their rows of the register."""

from layerfolio.assembly.types import Layer
from layerfolio.catalogue.datum import Document
from layerfolio.codes.proving import Matter, proof
from layerfolio.sheets.desk import EVIDENCE, Desk
from layerfolio.sheets.markup import plain

WANTED: dict[Matter, tuple[str, tuple[str, ...]]] = {
    "vapour": ("permeance test report, both cups", ()),
    "bracing": ("structural mark or listing", ("bracing",)),
    "air": ("tape and airtightness test report", ("seams", "airtightness")),
}
"""What a matter wants, and the claims of the register it belongs to; without any, the row of the material."""


def evidence_of(desk: Desk, layer: Layer) -> str:
    listed = [_named(desk, layer, one) for one in dict.fromkeys(layer.documents)]
    missing = [
        words + _in_brackets(_rows(desk, *(claims or (layer.material or layer.title,))))
        for matter, (words, claims) in WANTED.items()
        if not proved(desk, layer, matter)
    ]
    named = f"Named in the project file: {'; '.join(listed)}. " if listed else "Named in the project file: none. "
    return named + (f"**Outside document needed:** {'; '.join(missing)}; see {EVIDENCE}." if missing else "")


def proved(desk: Desk, layer: Layer, matter: Matter) -> bool:
    """Whether a document of the layer proves it on the project's date, by the rule of the record."""
    own = layer.vapour.dry.origin.documents if matter == "vapour" and layer.vapour and layer.vapour.dry else ()
    return proof((*own, *layer.documents), matter, desk.dossier.project.project.date)[0] is not None


def _named(desk: Desk, layer: Layer, one: Document) -> str:
    """A document in short, behind the number of its row."""
    register = desk.dossier.register
    rows = register.of(layer.material or layer.title) if register else ()
    row = next((x.number for x in rows if x.document and x.document.number == one.number), "")
    valid = f"valid to {one.expires}" if one.expires else ""
    words = plain(", ".join(filter(None, (one.number, one.issuer, one.edition, valid, one.file))))
    proves = f" (proves {plain(', '.join(one.proves))})" if one.proves else ""
    return (f"{row}: " if row else "") + words + proves


def _rows(desk: Desk, *subjects: str) -> list[str]:
    register = desk.dossier.register
    return [row.number for subject in subjects for row in register.of(subject)] if register else []


def _in_brackets(rows: list[str]) -> str:
    return f" ({', '.join(rows)})" if rows else ""
