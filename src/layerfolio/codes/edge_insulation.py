"""Insulation at the edge of a slab stands in no layer: its one figure counts with a document of its own."""

from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.proving import about as proves
from layerfolio.codes.stated import documents_for, expired_for, of_assembly


def edge_key(assembly: str) -> str:
    """The name by which a document of the project, or a row of the register, speaks of it."""
    return f"edge insulation of {assembly}"


def edge_proved(assembly: str, about: Context) -> Outcome:
    """Meets where a document of heat proves the resistance that reaches the share; else what is to be supplied."""
    own: Any = of_assembly(about, assembly, "ground.edge_insulation")
    subject = edge_key(assembly)
    if any(proves(one, "heat") for one in documents_for(about, subject, own)):
        return Outcome(Verdict.MEETS, "the insulation at the edge reaches its share")
    old = next((one for one in expired_for(about, subject, own) if proves(one, "heat")), None)
    why = f"whose document {old.number} has expired ({old.expires})" if old else "which no document proves"
    return Outcome(
        Verdict.NEEDS_EVIDENCE, f"the share at the edge turns on the resistance of the {subject}, {why}",
        f"supply the document that proves the resistance of the {subject}",
    )  # fmt: skip
