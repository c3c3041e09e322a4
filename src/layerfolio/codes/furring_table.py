"""The published tables for foam plastics: what they are for, and the cell that a joint falls in. Never between rows."""

from dataclasses import dataclass
from functools import cached_property

from layerfolio.assembly.types import Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import documents_for
from layerfolio.studies.attachment_inputs import Inputs, inputs
from layerfolio.studies.dead_load import dead_load
from layerfolio.studies.joint import Joint
from layerfolio.studies.structure_types import Attachment
from layerfolio.units.table import unit_factor

INCH, PSF = unit_factor("in", "length"), unit_factor("psf", "pressure")
STRENGTH = "15 psi (103 kPa)"
NEAR = 5e-4
"""By so much a spacing in whole millimetres may be over one in inches, m."""
THIN = 0.994
"""A diameter in tenths of a millimetre may be so much thinner than the one in inches that it stands for (4.8 mm: 0.190 in)."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What the table has: depth of foam and penetration in m (None: a design; not read), and the row in words."""

    depth: float | None
    penetration: float | None
    words: str


class Conditions:
    """What the table supposes of a joint, condition by condition."""

    def __init__(self, requirement: Requirement, joint: Joint, study: Attachment, about: Context) -> None:
        self.requirement, self.rule, self.joint, self.study, self.about = requirement, requirement.rule, joint, study, about

    @cached_property
    def inputs(self) -> Inputs:
        return inputs(self.joint, dead_load(self.joint.assembly))

    @property
    def foam(self) -> bool:
        barred = self.rule["no_foam_board"]
        return self.joint.foam and not any(one.material in barred for one in self.joint.insulation)

    @property
    def penetration(self) -> float:
        """Into the framing; with the wood panels on it where the edition counts them."""
        more = self.joint.panel_depth if self.requirement.figures.get("panels_count") else 0.0
        own = self.joint.penetration
        return own + more if own else 0.0

    def missing(self) -> Outcome | None:
        """What the table asks and the project file does not say."""
        found = [one for one in self.study.missing if one not in ("fasteners.root_diameter", "fasteners.spacing")]
        if self.joint.direct:
            found = [one for one in found if not one.startswith("specific_gravity")]
        pins = self.joint.fasteners
        if pins is not None and pins.spacing is None:
            found.append("fasteners.spacing")
        if self.joint.battens and not self.joint.battens.direction:
            found.append("battens.direction (vertical or horizontal)")
        if not found:
            return None
        return Outcome(Verdict.NEEDS_EVIDENCE, f"not stated: {'; '.join(found)}", f"state {'; '.join(found)}")

    def outside(self) -> list[str]:
        """Why the table does not speak of the joint."""
        found = [*self.inputs.refused, *self._boards()]
        if self.joint.battens:
            found += self._furring()
        return found

    def _boards(self) -> list[str]:
        """Boards that are too weak for it, and wood panels where it has none."""
        found = [f"{called(one)} lies outside the foam, and the table has no panel there" for one in self.joint.outer_panels]
        for one in self.joint.insulation:
            figure = one.compressive_strength
            if figure is not None and not judges.at_least(figure.value, self.rule["strength"]):
                own = f"a compressive strength of {figure.value / 1000:.4g} kPa"
                found.append(f"{called(one)} has {own}, less than {STRENGTH}")
        return found

    def _furring(self) -> list[str]:
        battens, found = self.joint.battens, []
        if battens.direction != "vertical":
            found.append("horizontal furring, with its treated or durable wood and two fasteners at a stud, is not judged here")
        if self.joint.side_thickness < self.rule["furring"]["thickness"] * INCH - NEAR:
            found.append(f"furring thinner than {self.rule['furring']['thickness']:g} in is not in the table")
        if self.inputs.rows > self.rule["furring"]["spacing"] * INCH + NEAR:
            found.append(f"furring wider apart than {self.rule['furring']['spacing']:g} in is not in the table")
        least = self.rule["gravity"]
        for words, figure in (("furring", self.inputs.side_gravity), ("framing", self.inputs.main_gravity)):
            if figure.value < least - 1e-9:
                found.append(f"the {words} has a specific gravity of {figure.value:g}, less than {least:g}")
        return found

    def proofs(self) -> list[Outcome]:
        """What a paper has to show before the table holds: the boards' strength, the stamp of the lumber."""
        found = []
        if unsaid := [called(one) for one in self.joint.insulation if one.compressive_strength is None]:
            reason = f"the compressive strength of {', '.join(unsaid)} is not stated"
            found.append(Outcome(Verdict.NEEDS_EVIDENCE, reason, f"state compressive_strength, with {self._sheet(unsaid)}"))
        elif weak := [called(one) for one in self.joint.insulation if not self._shown(one)]:
            reason = "no valid document proves the compressive strength of the boards"
            found.append(Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {self._sheet(weak)}"))
        if self.inputs.taken:
            step = "state the specific_gravity, or the species group of the stamp, of furring and framing"
            found.append(Outcome(Verdict.NEEDS_EVIDENCE, "; ".join(self.inputs.taken), step))
        return found

    def _sheet(self, boards: list[str]) -> str:
        return f"the data sheet of {', '.join(boards)} that shows {STRENGTH} to ASTM C578 or C1289"

    def _shown(self, layer: Layer) -> bool:
        """Whether a document says that it proves the strength; the figure is the file's."""
        entry = (getattr(self.about.project, "materials", None) or {}).get(layer.material)
        held = documents_for(self.about, layer.material or layer.name, entry)
        own = documents_for(self.about, layer.name, _Held(layer.documents))
        return any(word.lower().startswith("compress") for one in (*held, *own) for word in getattr(one, "proves", None) or ())


class _Held:
    def __init__(self, evidence: tuple) -> None:
        self.evidence = evidence


def cell(conditions: Conditions) -> Cell | str:
    """The cell by the next heavier weight, wider spacing, thinner fastener; a text where the joint is beyond the table."""
    rule, study = conditions.rule, conditions.study
    weight = next((x for x in _columns(conditions) if study.weight <= x * PSF * (1 + 1e-9)), None)
    rows = [x for x in rule["table"] if x["kind"] == study.kind and study.diameter >= x["diameter"] * INCH * THIN]
    thickest = max((x["diameter"] for x in rows), default=None)
    rows = [x for x in rows if x["diameter"] == thickest and study.spacing <= x["spacing"] * INCH + NEAR]
    apart = next((i for i, x in enumerate(rule["furring_at"]) if study.rows <= x * INCH + NEAR), None)
    if weight is None:
        return f"the table ends at {rule['columns'][-1]} psf"
    if thickest is None:
        return f"the table has no such fastener ({study.fastener})"
    if not rows:
        return "the table has no such wide spacing of the fasteners"
    if apart is None:
        return f"the table ends at {rule['furring_at'][-1]} in"
    row = min(rows, key=lambda x: x["spacing"])
    depth = row["depth"][apart][rule["columns"].index(weight)]
    least = row.get("penetration")
    named = {"nail": "nail", "screw": "wood screw", "lag": "lag screw"}[row["kind"]]
    words = f"{named} {row['diameter']:g} in at {row['spacing']} in, rows at {rule['furring_at'][apart]} in, {weight} psf"
    return Cell(None if depth is None else depth * INCH, None if least is None else least * INCH, words)


def _columns(conditions: Conditions) -> list[float]:
    left_out = conditions.requirement.figures.get("leaves_out")
    return [one for one in conditions.rule["columns"] if one != left_out]
