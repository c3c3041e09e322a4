"""Figures that can be right and are seldom meant: cautions, which stop nothing. All bounds are common practice."""

from collections.abc import Iterator

from layerfolio.reading.assemblies import Assembly
from layerfolio.reading.climate import Climate, Indoor
from layerfolio.reading.layers import Framing, Layer
from layerfolio.reading.materials import Material
from layerfolio.reading.report import Report
from layerfolio.units.quantity import Quantity

ROOM = (5.0, 35.0)  # degC
COLD_AT_MOST = 10.0  # degC
WALL_FROM = 60.0  # degrees from horizontal
SHARE_TIMES, SHARE_PARTS = 4.0, 3.0
"""A stated share against width over spacing. Tables of framing go to 3.2 times: 20 % for studs of 38 mm every 600 mm."""
CONDUCTS_LEAST = 0.015  # W/(m.K): below it lie vacuum panels only
THICK = 1.0  # m
MASSIVE = ("earth", "ground", "gravel", "sand", "soil")
INSULATION_MOST = 0.2  # W/(m.K)
INSULATION = ("insulation", "wool", "fibre", "batt", "mineral", "foam", "cellulose", "cork", "straw", "hemp", "eps", "xps")
NOT_INSULATION = ("cement", "concrete", "lime", "board-nail", "hardboard", "gypsum")

Caution = tuple[str, str]


def caution_unusual(
    climate: Climate | None,
    indoor: Indoor | None,
    materials: dict[str, Material],
    assemblies: dict[str, Assembly],
    report: Report,
) -> None:
    """Every caution on figures of the project, in the order of a project file."""
    for path, message in (*_climate(climate), *_indoor(indoor), *_materials(materials), *_assemblies(assemblies)):
        report.caution(path, message)


def _climate(climate: Climate | None) -> Iterator[Caution]:
    days = climate.heating_degree_days if climate else None
    if days is not None and days.value == 0:
        yield "climate.heating_degree_days", f"{days.text} is a place that needs no heating: is it meant?"
    cold = climate.heating_design_temperature if climate else None
    if cold is not None and cold.value > COLD_AT_MOST:
        yield "climate.heating_design_temperature", f"{cold.text} is warm for a design of heating: was a minus meant?"


def _indoor(indoor: Indoor | None) -> Iterator[Caution]:
    room = indoor.temperature if indoor else None
    if room is not None and not ROOM[0] <= room.value <= ROOM[1]:
        yield "indoor.temperature", f"{room.text} is unusual for a heated room: is it meant?"


def _materials(materials: dict[str, Material]) -> Iterator[Caution]:
    for name, one in materials.items():
        words = f"{name} {one.title or ''}"
        path = f"materials.{name}.conductivity"
        yield from _conductivity(one.conductivity, words, bool(one.insulating), bool(one.source), path)


def _assemblies(assemblies: dict[str, Assembly]) -> Iterator[Caution]:
    for name, one in assemblies.items():
        path = f"assemblies.{name}"
        if one.kind in ("wall", "foundation-wall") and one.slope and one.slope.value < WALL_FROM:
            yield f"{path}.slope", f"{one.slope.text} from the horizontal is a roof rather than a wall: a wall is 90 deg"
        for number, layer in enumerate(one.layers):
            yield from _layer(layer, f"{path}.layers[{number}]")


def _layer(layer: Layer, path: str) -> Iterator[Caution]:
    words = f"{layer.name or ''} {layer.material or ''} {layer.title or ''}"
    insulating = "thermal control" in (layer.serves or ())
    yield from _conductivity(layer.conductivity, words, insulating, bool(layer.source), f"{path}.conductivity")
    if layer.thickness is not None and layer.thickness.value > THICK and not any(word in words.casefold() for word in MASSIVE):
        yield f"{path}.thickness", f"{layer.thickness.text} is thick for one layer: is the unit right?"
    for key, framing in (("framing", layer.framing), ("battens", layer.battens)):
        if framing is not None:
            yield from _share(framing, f"{path}.{key}.fraction")


def _conductivity(stated: Quantity | None, words: str, insulating: bool, sourced: bool, path: str) -> Iterator[Caution]:
    if stated is None:
        return
    words = words.casefold()
    named = any(one in words for one in INSULATION) and not any(one in words for one in NOT_INSULATION)
    if stated.value < CONDUCTS_LEAST:
        yield path, f"{stated.text} is less than any ordinary material conducts: is the unit or the decimal point right?"
    elif stated.value > INSULATION_MOST and (insulating or named) and not sourced:
        yield path, f"{stated.text} is much for insulation, and no source is stated: is the decimal point right?"


def _share(framing: Framing, path: str) -> Iterator[Caution]:
    if not (framing.fraction and framing.width and framing.spacing):
        return
    times = framing.fraction.value * framing.spacing.value / framing.width.value
    if not 1 / SHARE_PARTS <= times <= SHARE_TIMES:
        drawn = framing.width.value / framing.spacing.value
        yield path, f"{framing.fraction.text} is stated, and width over spacing is {drawn * 100:.2g} %: are both meant?"
