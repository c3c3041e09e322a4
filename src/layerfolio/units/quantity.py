"""A number with its unit, as read from a person's text: the SI value inside, the text kept for printing."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Quantity:
    """`value` is in the SI unit of its `kind` (units.table.KINDS[kind]); `text` is what the person wrote."""

    value: float
    kind: str
    text: str
