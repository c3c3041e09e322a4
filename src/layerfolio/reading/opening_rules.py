"""Rules between the keys of one opening."""

from layerfolio.reading.openings import Opening
from layerfolio.reading.record import Record
from layerfolio.reading.report import Report, join
from layerfolio.reading.tree import Mapping

STATED_WAY = "transmittance: 0.92 W/(m2.K), basis: rated to CSA A440.2"
COMPUTED_WAY = "frame: {width: 110 mm, transmittance: 1.1 W/(m2.K)}, glass: {transmittance: 0.6 W/(m2.K)}"
LITTLE = 0.4  # W/(m2.K): below it lies no window on sale


def check_opening(opening: Opening, node: Mapping, path: str, report: Report) -> None:
    """Report what does not fit together in one opening."""
    _one_way(opening, node, path, report)
    if "transmittance" not in opening.stated:
        _complete(opening, node, path, report)
    _sizes(opening, node, path, report)
    _clear(opening, node, path, report)
    _cautions(opening, path, report)


def _states(part: Record | None, *words: str) -> bool:
    return part is not None and bool(set(words) & part.stated)


def _one_way(opening: Opening, node: Mapping, path: str, report: Report) -> None:
    """The transmittance is stated with its basis, or frame and glass tell it, never both."""
    if "transmittance" not in opening.stated:
        return
    both = [word for word in ("frame", "glass") if _states(getattr(opening, word), "transmittance")]
    if both:
        message = f"the transmittance is stated, and the figures of {' and '.join(both)} compute it too: keep one way"
        report.problem(node.keys["transmittance"], join(path, "transmittance"), message, f"{STATED_WAY}; or {COMPUTED_WAY}")
    elif "basis" not in opening.stated:
        message = "basis is missing: how the stated transmittance was found"
        report.problem(node.holder, join(path, "basis"), message, "basis: rated to CSA A440.2")


def _complete(opening: Opening, node: Mapping, path: str, report: Report) -> None:
    """What a computed transmittance needs: both figures, one size, and the edge of the glass."""
    frame, glass, edge = opening.frame, opening.glass, opening.edge
    has = {word: _states(part, "transmittance") for word, part in (("frame", frame), ("glass", glass))}
    if not any(has.values()):
        return
    why = "to compute the transmittance of the opening"
    lacking = next((word for word in has if not has[word]), "")
    if lacking:
        _missing(node, path, f"{lacking}.transmittance", why, f"{lacking}: {{transmittance: 1.1 W/(m2.K)}}", report)
    elif not _states(frame, "width", "area") and not _states(glass, "area"):
        _missing(node, path, "frame.width", f"{why}: width of the frame, or its area", "frame: {width: 110 mm, ...}", report)
    elif glass and glass.panes == 1 and not _states(edge, "psi"):
        return  # single glass has no spacer
    elif not _states(frame, "width") and not _states(edge, "length"):
        _missing(node, path, "edge.length", f"{why}: the area of the frame does not tell it", "edge: {length: 4.2 m}", report)
    elif not _states(edge, "psi") and not (_states(edge, "spacer") and _states(frame, "material") and _states(glass, "coating")):
        words = f"{why}; else spacer of the edge, material of the frame and coating of the glass tell a table value"
        _missing(node, path, "edge.psi", words, "edge: {psi: 0.04 W/(m.K)}", report)


def _missing(node: Mapping, path: str, key: str, why: str, example: str, report: Report) -> None:
    inner = node.items.get(key.split(".")[0])
    place = inner.holder if isinstance(inner, Mapping) else node.holder
    report.problem(place, join(path, key), f"{key.replace('.', ' ')} is missing {why}", example)


def _sizes(opening: Opening, node: Mapping, path: str, report: Report) -> None:
    """A frame leaves glass between its sides."""
    frame, glass, width, height = opening.frame, opening.glass, opening.width, opening.height
    if width is None or height is None:
        return
    whole = width.value * height.value
    if frame and frame.width and 2 * frame.width.value >= min(width.value, height.value):
        message = f"a frame of {frame.width.text} on both sides leaves no glass in {width.text} by {height.text}"
        report.problem(node.items["frame"].items["width"].place, join(path, "frame.width"), message, "width: 110 mm")
    for word, part, rest in (("frame", frame, "glass"), ("glass", glass, "frame")):
        if part and part.area and part.area.value >= whole:
            message = f"{part.area.text} leaves no area for the {rest}: width by height is {whole:.4g} m2"
            place = node.items[word].items["area"].place
            report.problem(place, join(path, f"{word}.area"), message, f"area: {whole * 0.3:.2g} m2")


def _clear(opening: Opening, node: Mapping, path: str, report: Report) -> None:
    """What is free when the opening stands open is less than the opening."""
    clear = opening.clear_opening
    if clear is None:
        return
    items = node.items["clear_opening"].items
    for word in ("width", "height"):
        free, whole = getattr(clear, word), getattr(opening, word)
        if free and whole and free.value > whole.value:
            message = f"the clear {word} {free.text} is more than the {word} of the opening, {whole.text}"
            report.problem(items[word].place, join(path, f"clear_opening.{word}"), message, "width: 560 mm")
    sides = [getattr(clear, word) or getattr(opening, word) for word in ("width", "height")]
    if clear.area and all(sides) and clear.area.value > sides[0].value * sides[1].value * (1 + 1e-6):
        message = f"the clear area {clear.area.text} is more than {sides[0].text} by {sides[1].text}"
        report.problem(items["area"].place, join(path, "clear_opening.area"), message, "area: 0.5 m2")


def _cautions(opening: Opening, path: str, report: Report) -> None:
    """What can be right and is seldom meant."""
    if "basis" in opening.stated and "transmittance" not in opening.stated:
        report.caution(join(path, "basis"), "a basis goes with a stated transmittance, and none is stated")
    stated = opening.transmittance
    if stated and stated.value < LITTLE and opening.kind in ("window", "skylight", "glass-block"):
        words = f"{stated.text} is less than any window on sale: were other units meant, Btu/(h.ft2.F)?"
        report.caution(join(path, "transmittance"), words)
    if opening.glazed is False and opening.kind in ("window", "glass-block"):
        report.caution(join(path, "glazed"), f"a {opening.kind} without glass: is the kind meant?")
    elif opening.glazed is False and (opening.safety_glazing or opening.glass):
        what = "safety_glazing" if opening.safety_glazing else "glass"
        report.caution(join(path, what), "glazed: false says that it has no glass: are both meant?")
    if opening.operation == "fixed" and (opening.egress or opening.clear_opening):
        what = "egress" if opening.egress else "clear_opening"
        report.caution(join(path, what), "a fixed opening does not open: is the operation meant?")
