"""Temperatures of every interface in steady state, through the insulation and through the framing."""

from itertools import accumulate

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import thermal as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.types import Interface, LayerHeat


def interfaces(
    assembly: Assembly, layers: tuple[LayerHeat, ...], indoor: float, outdoor: float, record: Recorder
) -> tuple[Interface, ...]:
    """Faces of the counted layers from the outside in; temperatures in degC."""
    record.section("Temperatures in design winter", key="temperatures")
    record.given("theta_i", indoor, "room air", "project file")
    record.given("theta_e", outdoor, "outside air, heating design", "project file")
    main = [h.resistance for h in layers]
    framing = [h.member_resistance or h.resistance for h in layers]
    names = ["outside air", *(h.layer.name for h in layers), "room air"]
    numbers = ["outside", *(str(h.layer.number) for h in layers), "room"]
    pairs = list(zip(numbers, numbers[1:], strict=False))
    through_main = _profile(assembly, main, indoor, outdoor, record, [f"face {a} | {b}" for a, b in pairs])
    framed = any(h.member_resistance for h in layers)
    through_framing = (
        _profile(assembly, framing, indoor, outdoor, record, [f"face {a} | {b}, through framing" for a, b in pairs])
        if framed else [None] * len(through_main)
    )  # fmt: skip
    between = zip(names, names[1:], strict=False)
    return tuple(
        Interface(pair, main_t, framing_t)
        for pair, main_t, framing_t in zip(between, through_main, through_framing, strict=True)
    )


def _profile(
    assembly: Assembly, resistances: list, indoor: float, outdoor: float, record: Recorder, abouts: list[str]
) -> list[float]:
    """Temperatures at all faces from the outside in, along one path."""
    inside_film, outside_film = assembly.inside_film.value, assembly.outside_film.value
    total = inside_film + sum(resistances) + outside_film
    from_room = list(accumulate(reversed(resistances), initial=inside_film))[::-1]
    return [
        record.step(
            f.interface_temperature, about=about, theta_i=indoor, theta_e=outdoor, R_x=r, R_T=total
        )
        for about, r in zip(abouts, from_room, strict=True)
    ]
