"""Sizes and loads that can be right and are seldom meant: cautions, which stop nothing. All bounds are common practice.

Read only where a project states openings, lines of bracing or loads of the site.
"""

from collections.abc import Iterator
from typing import Any

from layerfolio.reading.unusual import Caution

KPA = 1000.0
LOADS = (
    ("snow", 0.05 * KPA, 30 * KPA, "a ground snow load"), ("wind_pressure_1_50", 0.1 * KPA, 3 * KPA, "an hourly wind pressure"),
    ("wind_suction", 0.1 * KPA, 15 * KPA, "a suction of wind on the cladding"), ("wind_speed", 15.0, 110.0, "a basic wind speed"),
)  # fmt: skip
"""Key of site_loads, least and most in SI, and what it is; none of it (0) is meant as it stands."""
LEAKS = 7.5  # W/(m2.K): single glass in a metal frame
WIDE, TALL = 8.0, 4.0  # m, of a window or door
LONG, HIGH = 40.0, 6.0  # m, of a line of bracing
NARROW = 16.0  # length by width of a building


def caution_sizes(project: Any) -> Iterator[Caution]:
    """Every such caution, in the order of a project file."""
    yield from _loads(project.site_loads)
    for name, one in project.openings.items():
        yield from _opening(f"openings.{name}", one, _lines_of(project, one.in_))
    for name, one in project.wall_lines.items():
        yield from _line(f"wall_lines.{name}", one, getattr(project.building, "building_area", None))


def _loads(loads: Any) -> Iterator[Caution]:
    for key, least, most, what in LOADS:
        figure = getattr(loads, key, None)
        if figure is not None and figure.value != 0 and not least <= figure.value <= most:
            yield f"site_loads.{key}", f"{figure.text} is {_much(figure.value > most)} for {what}: is the unit right?"


def _much(over: bool) -> str:
    return "very much" if over else "very little"


def _lines_of(project: Any, wall: str) -> list[Any]:
    return [one for one in project.wall_lines.values() if one.assembly == wall and not one.interior]


def _opening(path: str, one: Any, lines: list[Any]) -> Iterator[Caution]:
    """An opening against the lines of its wall, where there are any, else against what is usual."""
    if one.transmittance is not None and one.transmittance.value > LEAKS:
        words = "lets through more heat than single glass in a metal frame: is the unit or the decimal point right?"
        yield f"{path}.transmittance", f"{one.transmittance.text} {words}"
    for key, line_key, usual in (("width", "length", WIDE), ("height", "height", TALL)):
        size = getattr(one, key)
        most = max((x for line in lines if (x := getattr(line, line_key))), key=lambda x: x.value, default=None)
        if size is None:
            continue
        if most is not None:
            words = f"is more than any line of {one.in_} is {'long' if key == 'width' else 'high'}, {most.text}: is it meant?"
            yield from [(f"{path}.{key}", f"{size.text} {words}")] if size.value > most.value * (1 + 1e-6) else []
        elif size.value > usual and one.kind != "vehicle-door":
            yield f"{path}.{key}", f"{size.text} is much for the {key} of a {one.kind}: is the unit right?"


def _line(path: str, one: Any, area: Any) -> Iterator[Caution]:
    length, height = one.length, one.height
    if length is not None and area is not None and length.value**2 > NARROW * area.value:
        yield f"{path}.length", f"a line of {length.text} is long for a building of {area.text}: is it meant?"
    elif length is not None and length.value > LONG:
        yield f"{path}.length", f"{length.text} is much for one line of a small building: is the unit right?"
    if height is not None and height.value > HIGH:
        yield f"{path}.height", f"{height.text} is much for the wall of one storey, plate to plate: is the unit right?"
