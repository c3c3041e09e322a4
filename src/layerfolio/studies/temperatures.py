"""Temperatures of every interface in steady state, through the insulation and through the framing."""

from itertools import accumulate, pairwise

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import thermal as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.types import Interface, LayerHeat


def interfaces(
    assembly: Assembly, layers: tuple[LayerHeat, ...], indoor: float, outdoor: float, record: Recorder
) -> tuple[Interface, ...]:
    """Faces of the counted layers from the outside in; temperatures in degC.

    Every face is recorded through the insulation; through the framing the inner face of each framed layer and the room
    surface, which are the ones a reader looks for.
    """
    record.section("Temperatures in design winter", key="temperatures")
    record.given("theta_i", indoor, "room air", "project file")
    record.given("theta_e", outdoor, "outside air, heating design", "project file")
    names = ["outside air", *(h.layer.name for h in layers), "room air"]
    numbers = ["outside", *(str(h.layer.number) for h in layers), "room"]
    faces = [f"face {a} / {b}" for a, b in pairwise(numbers)]
    films = assembly.inside_film.value, assembly.outside_film.value

    def profile(resistances: list[float], about: str, shown: set[int]) -> list[float]:
        given = zip(range(len(faces)), _from_room(resistances, films[0]), strict=True)
        total = sum(films) + sum(resistances)
        values = {"theta_i": indoor, "theta_e": outdoor, "R_T": total}
        return [
            record.step(f.interface_temperature, about=faces[i] + about, R_x=r, **values)
            if i in shown
            else f.interface_temperature(R_x=r, **values)
            for i, r in given
        ]

    main = profile([h.resistance for h in layers], "", set(range(len(faces))))
    inner = {i for i, h in enumerate(layers, 1) if h.member_resistance} | {len(layers)}
    framed = len(inner) > 1 or any(h.member_resistance for h in layers)
    coldest = [min(h.resistance, h.member_resistance or h.resistance) for h in layers]
    if framed:
        record.choice(
            "The resistance here is that of one path",
            "first through the insulation, then along the path that lets most heat through, the coldest one",
        )
    framing = profile(coldest, ", coldest path", inner) if framed else [None] * len(main)
    between = pairwise(names)
    return tuple(Interface(pair, *temperatures) for pair, *temperatures in zip(between, main, framing, strict=True))


def _from_room(resistances: list[float], inside_film: float) -> list[float]:
    """Resistance between the room air and each face, from the outside in."""
    return list(accumulate(reversed(resistances), initial=inside_film))[::-1]
