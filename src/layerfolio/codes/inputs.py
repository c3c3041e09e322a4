"""Figures from memory among the inputs: they may stand unless the verdict would turn without them."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.catalogue.datum import Datum
from layerfolio.formulas.thermal import layer_resistance, resistance_by_thickness
from layerfolio.studies.types import LayerHeat, ThermalStudy

FROM_MEMORY = "memory"


def heat_figures(layer: Layer) -> tuple[Datum, ...]:
    """The figures that make a layer's resistance: of its main material and of what frames it."""
    found = [layer.resistance or layer.resistivity or layer.conductivity]
    member = layer.member
    if member is not None and member.share.value > 0:
        found += [member.share, member.resistance or member.resistivity or member.conductivity]
    return tuple(one for one in found if one is not None)


def from_memory(study: ThermalStudy) -> tuple[tuple[str, float], ...]:
    """What rests on memory and how much resistance it brings (m2.K/W): layers by name, the two films, a roof space.

    A layer brings its resistance with framing. That is exact for isothermal planes. For the other methods the same
    amount is taken from their total, which is the nearest simple reading.
    """
    found = [(one.layer.name, brings(one)) for one in study.layers if _rests_on_memory(heat_figures(one.layer))]
    assembly: Assembly = study.assembly
    for name, film in (("the inside film", assembly.inside_film), ("the outside film", assembly.outside_film)):
        if _rests_on_memory((film,)):
            found.append((name, film.value))
    if assembly.roof_space is not None and _rests_on_memory((assembly.roof_space,)):
        found.append(("the unheated roof space", assembly.roof_space.value))
    return tuple((name, amount) for name, amount in found if amount > 0)


def brings(one: LayerHeat) -> float:
    """Resistance that a layer adds, m2.K/W; 0 where it does not count."""
    return one.with_framing or 0.0


def counted(study: ThermalStudy) -> tuple[LayerHeat, ...]:
    """The layers of a study; where another layer's missing figure left it without any, each with what is known of it."""
    if study.layers or not study.missing:
        return study.layers
    known = (layer for layer in study.assembly.layers if layer.counts)
    return tuple(LayerHeat(layer, alone(layer), None, None) for layer in known)


def alone(layer: Layer) -> float | None:
    """Resistance of a layer's main material by its own figure, m2.K/W; None without one."""
    if layer.resistance is not None:
        return layer.resistance.value
    if layer.thickness is None or not (layer.resistivity or layer.conductivity):
        return None
    d = layer.thickness.value
    if layer.resistivity is not None:
        return resistance_by_thickness(d=d, r=layer.resistivity.value)
    return layer_resistance(d=d, lam=layer.conductivity.value)


def _rests_on_memory(figures: tuple[Datum, ...]) -> bool:
    return any(one.origin.mark == FROM_MEMORY for one in figures)
