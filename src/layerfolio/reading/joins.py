"""Joins between assemblies, the foundation, and documents that speak for the project as a whole. Read only where a project has
them.
"""

from __future__ import annotations

from layerfolio.reading.documents import Evidence, evidence
from layerfolio.reading.groups import ListOf
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report
from layerfolio.reading.scalars import Line, Pick
from layerfolio.reading.tree import Mapping
from layerfolio.units.quantity import Quantity

FRAME_SETS = ("in the insulation", "at the outside", "in the framing")
FOUNDATIONS = ("slab edge", "wall", "piers", "piles", "none")


class Join(Record):
    """Where assemblies or openings meet: its length and what it loses beyond their areas."""

    at: str = key(Line("sill", 60), "where it is: sill, corner, eave, rim, window head", required=True)
    of: tuple[str, ...] = key(
        ListOf(Line("W1", 60), "[W1, S1]", least=1, single=True), "what meets: names of assemblies and openings", required=True,
        default=(),
    )  # fmt: skip
    length: Quantity | None = key(Measure("length", example="28 m"), "length of the join, all its runs together")
    psi: Quantity | None = key(
        Measure("linear_transmittance", least=-2.0, most=5.0, example="0.06 W/(m.K)"),
        "linear thermal transmittance; may be below zero at a corner measured outside",
    )
    source: str | None = key(Line("catalogue of details, no. 12"), "where psi comes from")
    evidence: tuple[Evidence, ...] = key(evidence(), "documents", default=())
    overhang: Quantity | None = key(
        Measure("length", least=0.0, most=5.0, example="400 mm"), "of an eave or verge, from the face of the cladding"
    )
    frame_set: str | None = key(Pick(*FRAME_SETS), "where the frame of a window stands in its wall")

    def check(self, node: Mapping, path: str, report: Report) -> None:
        if "psi" in self.stated and "length" not in self.stated:
            report.caution(path, "psi without a length counts for nothing: state the length of the join")
        elif "length" in self.stated and "psi" not in self.stated:
            report.caution(path, "length without psi: what the join loses beyond its areas is not counted")
        elif "psi" in self.stated and not {"source", "evidence"} & self.stated:
            report.caution(path, "the source of psi is not stated")


class Foundation(Record):
    """What the building stands on, as far as its drawings show it."""

    kind: str | None = key(Pick(*FOUNDATIONS), "what carries the lowest floor and the walls")
    ground_level: Quantity | None = key(
        Measure("length", least=-20.0, most=20.0, example="-200 mm"),
        "of the ground outside against the finished floor; below zero where it is lower",
    )


class ProjectDocument(Evidence):
    """A document that speaks for more than one layer: for assemblies, openings, materials or a claim."""

    for_: tuple[str, ...] = key(
        ListOf(Line("W1", 120), "[W1, bracing]", single=True),
        "what it speaks for: names of assemblies, openings and materials, or a claim in a word (airtightness, heat recovery, "
        "bracing, structure, flame spread, soil gas, ventilation, fire)",
        default=(),
        name="for",
    )

    def check(self, node: Mapping, path: str, report: Report) -> None:
        super().check(node, path, report)
        if not {"title", "number"} & self.stated:
            message = "the document has neither title nor number: nobody could find it again"
            report.problem(node.holder, path, message, "number: HB-1")
