"""What is known of a line of bracing before any code is asked: panel, face, studs, fasteners, place. SI figures."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.catalogue.code_sets import CodeSet, code_set
from layerfolio.catalogue.files import load, origin
from layerfolio.codes.context import Context, value
from layerfolio.codes.line_layers import framed_layer, is_gypsum_board, on_the_studs, plainly_other
from layerfolio.codes.site_figures import length
from layerfolio.studies.structure_types import WallLineStudy
from layerfolio.studies.wall_shear import bracing_layer, studs_of, thickness_of
from layerfolio.units.lengths import customary_length
from layerfolio.units.quantity import Quantity

INCH, FOOT, MPH = 0.0254, 0.3048, 0.44704
NOMINAL_INCH = 0.025
"""The metric codes print 150, 400 and 600 mm for what is built at 6, 16 and 24 in."""
NOISE = 1e-6


@dataclass(frozen=True, slots=True)
class Facts:
    """`inside`: whether the panels lie on the room side of the studs, None while that is not known; `on_studs`: whether
    nothing but membranes lies between. `studs` is their spacing as a metric code names it, `edge` and `field` likewise.
    """

    study: WallLineStudy
    line: Any
    assembly: Assembly | None
    panel: Layer | None
    inside: bool | None
    on_studs: bool
    grade: str
    thickness: float | None
    studs: float | None
    edge: float | None
    field: float | None
    about: Context
    stud_spacing: float | None = None  # as it is

    @property
    def floors(self) -> int | None:
        return self.line.floors_above

    @property
    def storeys(self) -> int | None:
        """Storeys of the building: as stated, never fewer than the line and what it carries."""
        stated = self.about.storeys
        return None if stated is None else max(stated, (self.floors or 0) + 1)

    @property
    def another(self) -> str:
        """What the layer is where it is plainly not what the line grades its panels as; empty otherwise."""
        other = self.panel is not None and self.grade and plainly_other(self.panel, self.grade)
        return f"the layer that braces is {self.panel.title}, the line grades it as {self.grade}" if other else ""

    @property
    def pins(self) -> Any:
        return self.line.panel_fastening

    @property
    def customary(self) -> bool:
        return self.about.customary

    def long(self, metres: float, text: str = "") -> str:
        """A length as findings print it."""
        if not self.customary and metres >= 1:
            return f"{metres:.3f}".rstrip("0").rstrip(".") + " m"
        return length(Quantity(metres, "length", text or f"{metres * 1000:g} mm"), self.customary)

    def size(self, millimetres: float) -> str:
        """A thickness, diameter or spacing of a table to the hundredth of a millimetre, customary first where that is asked."""
        metric = f"{millimetres:.2f}".rstrip("0").rstrip(".") + " mm"
        return f"{customary_length(millimetres / 1000)} ({metric})" if self.customary else metric

    def as_stated(self, one: Quantity) -> str:
        """A length in the person's own words; in the project's system where the words are of the other."""
        return self.size(one.value * 1000) if self.customary and one.text.rstrip().endswith("m") else one.text


def facts(study: WallLineStudy, about: Context) -> Facts:
    """Everything about one line."""
    line = study.stated
    thermal = about.envelope.thermal.get(study.assembly)
    assembly = thermal.assembly if thermal else None
    panel = bracing_layer(line, assembly)
    studs, pins, board = studs_of(assembly), line.panel_fastening, line.panel
    inside, on_studs = _face(panel, assembly)
    return Facts(
        study, line, assembly, panel, inside, on_studs, (board.grade if board else None) or "",
        thickness_of(line, assembly), named(studs.spacing) if studs else None, named(pins.edge) if pins else None,
        named(pins.field) if pins else None, about, studs.spacing.value if studs and studs.spacing else None,
    )  # fmt: skip


def named(spacing: Quantity | None) -> float | None:
    """A spacing in the metric code's name for it: what is written in inches counts 25 mm each."""
    if spacing is None:
        return None
    text = spacing.text.rstrip()
    written_in_inches = text.endswith(("in", '"', "″", "inch", "inches"))
    return spacing.value / INCH * NOMINAL_INCH if written_in_inches and "ft" not in text else spacing.value


def _face(panel: Layer | None, assembly: Assembly | None) -> tuple[bool | None, bool]:
    best = framed_layer(assembly)
    if panel is None or best is None or panel is best:
        return None, False
    low, high = sorted((panel.number, best.number))
    between = [one for one in assembly.layers if low < one.number < high and one.kind != "membrane"]
    return panel.number > best.number, not between


def gypsum_opposite(known: Facts, least: float = 0.0) -> bool:
    """Whether gypsum board lies on the studs on the other face than the panel; a cavity or insulation between parts them."""
    if known.inside is None:
        return False
    outer, inner = on_the_studs(known.assembly)
    across = outer if known.inside else inner
    return across is not None and is_gypsum_board(across, least)


@cache
def tables(set_id: str) -> dict[str, Any]:
    """The bracing tables of a set, with the mark of its edition under `mark`; CatalogueError without source or mark."""
    found: CodeSet = code_set(set_id)
    path = (found.overlay or found.folder) / "method" / "bracing.yaml"
    content = load(path)
    edition = content["editions"][set_id]
    origin(edition, path)
    return {**content, **edition}


def seismic(about: Context, key: str) -> Any:
    """A seismic value of the project: Sa02, Smax or category; None where it is not stated."""
    found = about.answer(f"site_loads.seismic.{key}")
    return found if isinstance(found, str) else value(found)


def up_to(rows: list[list[float]], figure: float, noise: float = 1e-6) -> float | None:
    """The second figure of the first row that reaches `figure`; None beyond the last."""
    return next((row[1] for row in rows if figure <= row[0] * (1 + noise)), None)
