"""What changes where the panel that braces a wall stands on its inner face, item by item."""

from layerfolio.sheets.blocks import Table
from layerfolio.sheets.desk import BRACING, FASTENING, LOADS, Desk
from layerfolio.sheets.structure_parts import field_of


def inside_table(desk: Desk) -> Table | None:
    return None


def sheets_with_bracing(desk: Desk) -> str:
    """Where the rest stands."""
    parts = [(f"lines of bracing: sheet {BRACING}", field_of(desk, "wall_lines")),
             (f"fasteners and cladding: sheet {FASTENING}", field_of(desk, "wall_lines") or field_of(desk, "attachments")),
             (f"loads: sheet {LOADS}", field_of(desk, "dead_loads"))]  # fmt: skip
    shown = [words for words, there in parts if there]
    text = "; ".join(shown)
    return text[:1].upper() + text[1:] + "." if text else ""
