"""Constructions that DIN 4108-3 accepts without a moisture calculation, and whether this assembly is one of them."""

from collections.abc import Callable

from layerfolio.assembly.types import Assembly
from layerfolio.studies.condensation.types import Condition, Construction, LayerValue

SOURCE = "din-4108-3-2018, constructions without calculation"
WALL_INSIDE, WALL_OUTSIDE = 2.0, 0.3
"""Timber wall with ventilated cladding: least s_d inside, greatest outside, m."""
ROOF_ROWS = ((0.1, 1.0), (0.3, 2.0))
"""Roof without a ventilated layer: up to this s_d outside, at least that inside, m."""
ROOF_RATIO, ROOF_OUTSIDE = 6.0, 2.0
"""Beyond those rows and up to 2.0 m outside: six times as much inside."""
INBOARD_SHARE = 0.20
"""Greatest share of the whole resistance that may lie on the room side of the control layer of a roof."""


def construction(assembly: Assembly, values: tuple[LayerValue, ...]) -> Construction | None:
    """The row of the table for a timber wall or a roof; None for other assemblies.

    `values` should be the less favourable ones: low inside, high outside. s_d as the table counts it: all layers inside
    of the main insulation, and all outside of it up to the ventilated cavity.
    """
    makers: dict[str, Callable] = {"wall": _wall, "roof": _roof}
    make = makers.get(assembly.kind)
    main = _main(values)
    return make(assembly, values, main) if make and main is not None and assembly.faces != "ground" else None


def _main(values: tuple[LayerValue, ...]) -> int | None:
    """Position of the layer of greatest resistance, the outermost of equals."""
    return max(range(len(values)), key=lambda i: values[i].resistance) if values else None


def _wall(assembly: Assembly, values: tuple[LayerValue, ...], main: int) -> Construction:
    inside, outside = _sides(values, main)
    return Construction(
        "timber wall with ventilated cladding",
        SOURCE,
        (
            Condition("a ventilated cavity lies outside", _ventilated(assembly)),
            Condition("the main insulation lies between timber members", _framed(values[main])),
            Condition(f"inside s_d {inside:.3g} m, at least {WALL_INSIDE:g} m", inside >= WALL_INSIDE),
            Condition(
                f"outside s_d {outside:.3g} m, at most {WALL_OUTSIDE:g} m, or a wood-fibre board",
                outside <= WALL_OUTSIDE or _only_wood_fibre(values[:main]),
            ),
        ),
    )


def _roof(assembly: Assembly, values: tuple[LayerValue, ...], main: int) -> Construction:
    inside, outside = _sides(values, main)
    least = roof_inside(outside)
    share = _inboard_share(values)
    asked = f"at least {least:.3g} m" if least is not None else f"no row for more than {ROOF_OUTSIDE:g} m outside"
    return Construction(
        "roof without a ventilated layer under its underlay, insulated between the rafters",
        SOURCE,
        (
            Condition("a ventilated cavity lies outside, under the covering", _ventilated(assembly)),
            Condition(
                f"outside s_d {outside:.3g} m, inside {inside:.3g} m: {asked}", least is not None and inside >= least
            ),
            Condition(
                f"{share * 100:.0f} % of the resistance inside the control layer, at most {INBOARD_SHARE * 100:g} %",
                share <= INBOARD_SHARE,
            ),
        ),
    )


def roof_inside(outside: float) -> float | None:
    """Least s_d on the room side of a roof, m, by that outside its insulation; None beyond the table."""
    for up_to, least in ROOF_ROWS:
        if outside <= up_to:
            return least
    return ROOF_RATIO * outside if outside <= ROOF_OUTSIDE else None


def _sides(values: tuple[LayerValue, ...], main: int) -> tuple[float, float]:
    return sum(value.s_d for value in values[main + 1 :]), sum(value.s_d for value in values[:main])


def _ventilated(assembly: Assembly) -> bool:
    return any(layer.kind == "cavity" and not layer.counts for layer in assembly.layers)


def _framed(value: LayerValue) -> bool:
    member = value.layer.member
    return member is not None and member.share.value > 0 and not member.is_metal


def _only_wood_fibre(outside: tuple[LayerValue, ...]) -> bool:
    """Whether the layers outside the insulation are a wood-fibre board, with at most a membrane over it."""
    solid = [value.layer for value in outside if value.layer.kind != "membrane"]
    return bool(solid) and all(layer.family == "wood-fibre" for layer in solid)


def _inboard_share(values: tuple[LayerValue, ...]) -> float:
    """Share of the resistance of all layers that lies on the room side of the layer with the greatest s_d."""
    control = max(range(len(values)), key=lambda i: values[i].s_d)
    total = sum(value.resistance for value in values)
    return sum(value.resistance for value in values[control + 1 :]) / total if total else 0.0
