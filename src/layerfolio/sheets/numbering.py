"""Numbers of sheets: the plain ones, and those of the open sheet-identification convention, through one table.

Discipline letter, hyphen, digit of the kind of sheet, two digits of sequence: A-501 is the first sheet of details among the
architectural ones. Digits as commonly told: 0 general, 2 elevations, 3 sections, 4 large-scale views, 5 details, 6 schedules.
"""

import re
from collections.abc import Sequence

TABLE: tuple[tuple[str, str, str], ...] = (  # plain number, what the sheet is, discipline and kind
    (r"G[0-9]+", "cover and guide", "G-0"),
    (r"C4", "opening schedule", "A-6"),
    (r"C[0-9]+", "record, criteria, sums, sources, symbols, certificate", "G-0"),
    (r"E[0-9]+", "evidence", "G-0"),
    (r"X[0-9]+", "explanations", "G-0"),
    (r"D0", "section through the building", "A-3"),
    (r"D[0-9]+", "junctions", "A-5"),
    (r"ST1|ST4", "structural basis, loads", "S-0"),
    (r"ST2", "lines of bracing, with elevations", "S-2"),
    (r"ST3", "fastening schedule", "S-6"),
    (r".+-[TV]", "calculations of an assembly", "A-6"),
    (r".+", "an assembly: section and layers", "A-4"),
)


def kind_of(number: str) -> str:
    """Discipline and kind of a plain number: `A-5`."""
    return next(kind for pattern, _, kind in TABLE if re.fullmatch(pattern, number))


def by_discipline(numbers: Sequence[str]) -> dict[str, str]:
    """Plain number to the convention's, in the order of the package."""
    count: dict[str, int] = {}
    found = {}
    for number in numbers:
        kind = kind_of(number)
        count[kind] = count.get(kind, 0) + 1
        found[number] = f"{kind}{count[kind]:02d}"
    return found
