"""One opening: its area, and its thermal transmittance as stated or computed from frame, glass and edge (ISO 10077-1)."""

from typing import Any

from layerfolio.assembly.figures import documents
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.openings import edge_transmittance
from layerfolio.formulas import openings as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.envelope_types import OpeningStudy

METHOD = "iso-10077-1-2017"
FILE = "project file"
APART = 0.02
"""Frame and glass that are both stated may differ from the whole area by this share before a line says so."""

FRAME_U, GLASS_U = "frame.transmittance", "glass.transmittance"
SIZES = "frame.width (or frame.area with edge.length)"
PSI = "edge.psi (or frame.material, edge.spacer and glass.coating)"


def opening_study(name: str, opening: Any, project: Any) -> OpeningStudy:
    """Area and transmittance of one opening of the project file; `opening` is `project.openings[name]`."""
    record = Recorder()
    width, height = opening.width.value, opening.height.value
    area = f.opening_area(b_w=width, h_w=height)
    missing: tuple[str, ...] = ()
    figure: Datum | None = None
    basis = opening.basis or ""
    if opening.transmittance is not None:
        figure, how = _stated(name, opening, record), "stated"
    elif opening.frame or opening.glass or opening.edge:
        figure, missing = _computed(name, opening, record)
        how = "computed" if figure else "missing"
    else:
        how, missing = "missing", ("transmittance with its basis (or frame, glass and edge)",)
    return OpeningStudy(
        name, opening.kind, opening.title or "", opening.in_, opening.orientation or "", opening.count,
        width, height, area, figure.value if figure else None, how, basis, opening.solar_factor, figure, missing,
        record.done(), opening,
    )  # fmt: skip


def _origin(name: str, opening: Any) -> Origin:
    given = documents(opening)
    paper = next((", ".join(filter(None, (one.number, one.issuer))) for one in given if one.number), "")
    source = opening.source or paper or opening.basis or f"project file, openings.{name} (no source stated)"
    return Origin("project", str(source), "", "given", given)


def _stated(name: str, opening: Any, record: Recorder) -> Datum:
    figure = Datum(opening.transmittance.value, _origin(name, opening), opening.basis or "")
    record.section("Stated transmittance", key="stated")
    record.given("U_w", figure.value, name, figure.origin.source, figure)
    return figure


def _computed(name: str, opening: Any, record: Recorder) -> tuple[Datum | None, tuple[str, ...]]:
    """The computed figure, or what it lacks. A figure of the tables that was not re-read marks the result."""
    missing = _missing(opening)
    if missing:
        record.choice("No computed transmittance", "the project file lacks " + ", ".join(missing))
        return None, missing
    origin = _origin(name, opening)
    glass, frame = opening.glass.transmittance.value, opening.frame.transmittance.value
    psi = _edge(opening, origin)
    record.section("Transmittance from frame, glass and edge", key="computed")
    record.given("U_g", glass, "glass", origin.source, Datum(glass, origin))
    record.given("U_f", frame, "frame", origin.source, Datum(frame, origin))
    glass_area, frame_area = _areas(name, opening, record)
    if psi is None:
        record.choice("No term for the edge", "single glass has no spacer", METHOD)
        value = record.step(f.window_without_edge, about=name, A_g=glass_area, U_g=glass, A_f=frame_area, U_f=frame)
        return Datum(value, origin, "computed by ISO 10077-1"), ()
    record.given("psi_g", psi.value, f"edge ({psi.note})" if psi.note else "edge", psi.origin.source, psi)
    value = record.step(
        f.window_transmittance, about=name, A_g=glass_area, U_g=glass, A_f=frame_area, U_f=frame,
        l_g=_edge_length(name, opening, record), psi_g=psi.value,
    )  # fmt: skip
    mark = psi.origin.mark if psi.origin.mark != "found" else "given"
    marked = Origin("project", origin.source, origin.place, mark, origin.documents)
    return Datum(value, marked, "computed by ISO 10077-1"), ()


def _missing(opening: Any) -> tuple[str, ...]:
    """Keys of the project file that a computed transmittance wants, in their order there."""
    frame, glass, edge = opening.frame, opening.glass, opening.edge
    width = _get(frame, "width")
    wanted = [
        (FRAME_U, _get(frame, "transmittance")),
        (GLASS_U, _get(glass, "transmittance")),
        (SIZES, width or _get(frame, "area") or _get(glass, "area")),
    ]
    if not _single(opening):
        wanted.append(("edge.length", width or _get(edge, "length")))
        wanted.append((PSI, _get(edge, "psi") or _edge(opening, None)))
    lacking = [words for words, value in wanted if value is None]
    if width is not None and 2 * width.value >= min(opening.width.value, opening.height.value):
        lacking.append("a frame.width that leaves glass between its sides")
    return tuple(lacking)


def _get(part: Any, name: str) -> Any:
    return getattr(part, name, None)


def _single(opening: Any) -> bool:
    """Whether the glass is single and its edge has nothing stated."""
    return _get(opening.glass, "panes") == 1 and _get(opening.edge, "psi") is None


def _edge(opening: Any, origin: Origin | None) -> Datum | None:
    """Linear transmittance of the glass edge: stated, else of the default table; None for single glass or when unknown."""
    if _single(opening):
        return None
    stated = _get(opening.edge, "psi")
    if stated is not None:
        return Datum(stated.value, origin or Origin("project", ""))
    keys = _get(opening.frame, "material"), _get(opening.edge, "spacer"), _get(opening.glass, "coating")
    return None if any(one is None for one in keys) else edge_transmittance(*keys)


def _areas(name: str, opening: Any, record: Recorder) -> tuple[float, float]:
    """Areas of glass and frame. The frame's own area decides, then its width, then the area of the glass."""
    width = record.given("b_w", opening.width.value, f"width of {name}", FILE)
    height = record.given("h_w", opening.height.value, f"height of {name}", FILE)
    frame, glass, thick = (_get(opening.frame, "area"), _get(opening.glass, "area"), _get(opening.frame, "width"))
    if frame is None and thick is not None:
        border = record.given("b_f", thick.value, f"frame of {name}", FILE)
        seen = record.step(f.glass_area, about=name, b_w=width, h_w=height, b_f=border)
    whole = record.step(f.opening_area, about=name, b_w=width, h_w=height)
    if frame is not None:
        if glass is not None and abs(frame.value + glass.value - whole) > APART * whole:
            record.choice("The area of the frame decides", "frame and glass as stated do not add up to width by height")
        taken = record.given("A_f", frame.value, f"frame of {name}", FILE)
        return record.step(f.glass_beside_frame, about=name, A_w=whole, A_f=taken), taken
    if thick is None:
        seen = record.given("A_g", glass.value, f"glass of {name}", FILE)
    return seen, record.step(f.frame_area, about=name, A_w=whole, A_g=seen)


def _edge_length(name: str, opening: Any, record: Recorder) -> float:
    stated, thick = _get(opening.edge, "length"), _get(opening.frame, "width")
    if stated is not None:
        return record.given("l_g", stated.value, f"edge of the glass of {name}", FILE, None)
    if _get(opening.frame, "area") is not None:  # else it stands with the areas
        record.given("b_f", thick.value, f"frame of {name}", FILE)
    return record.step(f.glass_edge, about=name, b_w=opening.width.value, h_w=opening.height.value, b_f=thick.value)
