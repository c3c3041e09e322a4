"""What is published of a layer's dry-cup permeance beside the figure in use, and which report proves its own."""

from dataclasses import dataclass
from functools import cache

from layerfolio.assembly.types import Layer
from layerfolio.catalogue.code_rows import read
from layerfolio.catalogue.code_sets import code_folder
from layerfolio.catalogue.datum import Datum, Document, Origin
from layerfolio.codes.proving import findable, proof
from layerfolio.codes.wording import figure
from layerfolio.studies.types import LayerVapour

NANO = 1e-12  # ng/(Pa.s.m2) in kg/(m2.s.Pa)


@dataclass(frozen=True, slots=True)
class Published:
    """A published dry-cup permeance, lowest and highest, kg/(m2.s.Pa). `report_decides`: values of this material differ
    so widely that only the product's own report settles it.
    """

    name: str
    lowest: float
    highest: float
    source: str
    place: str
    mark: str
    report_decides: bool

    def shown(self, customary: bool = False, both: bool = False) -> str:
        """The figure with where it is printed."""
        low, high = (figure("W", one, customary=customary, both=both) for one in (self.lowest, self.highest))
        span = low if self.lowest == self.highest else f"{low.split(' ')[0]} to {high}"
        return f"{span} by {self.source}, {self.place} ({self.name})"


@cache
def _table(set_id: str) -> dict:
    found = read(code_folder(set_id) / "method" / "permeances.yaml")
    return _table(found["as_in"]) if "as_in" in found else found


def published(layer: Layer, set_id: str) -> Published | None:
    """The set's own note on the permeance of a layer's material, for its thickness; None where the note is silent."""
    table = _table(set_id)
    thickness = layer.thickness.value * 1000 if layer.thickness else None
    for row in table.get("rows", ()):
        if layer.material not in row["for"] or not _holds(row, thickness):
            continue
        times = row["mm"] / thickness if "mm" in row and thickness else 1.0
        low, high = (ng * NANO * times for ng in row["ng"])
        scaled = f", to {round(thickness, 1):g} mm" if times != 1.0 else ""
        return Published(
            row["name"] + scaled, low, high, table["source"], table["place"], table["mark"], row.get("report", False)
        )
    return None


def _holds(row: dict, thickness: float | None) -> bool:
    if "mm_from" not in row:
        return True
    return thickness is not None and row["mm_from"] <= thickness < row["mm_to"]


def report(layer: Layer, datum: Datum, date: str) -> tuple[Document | None, str]:
    """The document that proves the layer's own permeance, or why there is none. `date`: ISO, of the project."""
    found, other = proof((*datum.origin.documents, *layer.documents), "vapour", date)
    if found:
        return found, ""
    if other is None:
        return None, "no report is listed that proves its permeance"
    if not findable(other):
        return None, "the report listed for its permeance has no number with an issuer or an edition"
    return None, f"its report {other.number} has expired ({other.expires})"


def cups(row: LayerVapour, customary: bool = False, both: bool = False, dry: str = "") -> str:
    """Both cups: "48 ng/(Pa·s·m²) dry cup, 140 ng/(Pa·s·m²) wet cup". `dry`: that figure, already printed."""
    values = [
        None if one is None else figure("W", one, customary=customary, both=both)
        for one in (row.permeance_dry, row.permeance_wet)
    ]
    first = dry or values[0] or "permeance not given"
    if row.layer.vapour is not None and row.layer.vapour.single:
        return f"{first}, one figure for both cups"
    return f"{first} dry cup, {values[1]} wet cup" if values[1] else f"{first} dry cup, wet cup not given"


def own(origin: Origin) -> bool:
    """The project file's own figure, not one of a table."""
    return origin.chosen_by in ("layer", "project")
