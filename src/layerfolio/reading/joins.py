"""Joins between assemblies, the foundation, and documents that speak for the project as a whole. Read only where a project has
them.
"""

from __future__ import annotations

from layerfolio.reading.documents import Evidence, evidence
from layerfolio.reading.groups import ListOf
from layerfolio.reading.join_words import WORDS, is_of_window, place_of_join
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report, join, nearest, quoted
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
        self._drawn(node, path, report)
        if "psi" in self.stated and "length" not in self.stated:
            report.caution(path, "psi without a length counts for nothing: state the length of the join")
        elif "length" in self.stated and "psi" not in self.stated:
            report.caution(path, "length without psi: what the join loses beyond its areas is not counted")
        elif "psi" in self.stated and not {"source", "evidence"} & self.stated:
            report.caution(path, "the source of psi is not stated")

    def _drawn(self, node: Mapping, path: str, report: Report) -> None:
        """What is stated for the drawing of the join belongs to its place."""
        if not self.at:
            return
        place = place_of_join(self.at)
        if not place:
            near = nearest(self.at, (word for words in WORDS.values() for word in words))
            hint = f"did you mean {quoted(near)}? " if near else ""
            words = f"no detail is drawn for {quoted(self.at)}: {hint}drawn are {', '.join(WORDS)}"
            report.caution(join(path, "at"), words)
            return
        if "overhang" in self.stated and place not in ("eave", "verge"):
            message = f"overhang has no meaning at {_article(place)}: it belongs to an eave or verge"
            report.problem(node.keys["overhang"], join(path, "overhang"), message, "{at: eave, of: [W1, R1], overhang: 400 mm}")
        if "frame_set" in self.stated and not is_of_window(place):
            message = f"frame_set has no meaning at {_article(place)}: it belongs to a window"
            report.problem(
                node.keys["frame_set"], join(path, "frame_set"), message, "{at: window, of: [W1, A1], frame_set: in the framing}"
            )


def _article(place: str) -> str:
    return f"{'an' if place[0] in 'aeiou' else 'a'} {place}"


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
