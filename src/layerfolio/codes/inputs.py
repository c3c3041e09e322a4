"""Inputs that rest on memory or on an expired document: they may stand unless the verdict would turn without them."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from layerfolio.assembly.types import Assembly, Layer, Member
from layerfolio.catalogue.datum import Datum
from layerfolio.codes.proving import about as proves
from layerfolio.codes.proving import findable, valid_on
from layerfolio.codes.wording import listed
from layerfolio.formulas.thermal import layer_resistance, resistance_by_thickness
from layerfolio.studies.types import LayerHeat, ThermalStudy

FROM_MEMORY = "memory"


FIGURE = "figure"


class Weak(NamedTuple):
    """An input on which no verdict may turn: its name and the resistance it brings (m2.K/W). `of`: which of its figures rest
    on memory: its own, the share of what frames it, the figure of that member.
    """

    name: str
    amount: float
    expired: bool
    of: tuple[str, ...] = (FIGURE,)


def weak(study: ThermalStudy, about: Any) -> tuple[Weak, ...]:
    """What rests on memory, then the layers whose documents of heat have all expired. `about`: the Context."""
    memory = [Weak(name, amount, False, _which(study, name)) for name, amount in from_memory(study)]
    old = [Weak(one.layer.name, brings(one), True) for one in study.layers if _expired(one.layer, about)]
    return tuple([*memory, *(one for one in old if one.amount > 0)])


def turned(found: Iterable[Weak], names: Any) -> tuple[str, str]:
    """Reason and next step of a verdict that would turn without these. `names`: from names as found to one printed list."""
    some = tuple(found)
    groups = dict.fromkeys((one.expired, one.of) for one in some)
    reasons, steps = [], []
    for old, of in sorted(groups, key=lambda one: one[0]):
        shown = names([one.name for one in some if (one.expired, one.of) == (old, of)])
        which = listed(of)
        rests = f"whose {which} {'rests' if len(of) == 1 else 'rest'} on memory"
        reasons.append(f"{shown}, {'whose document has expired' if old else rests}")
        steps.append(f"supply a newer edition of the document of {shown}" if old else _to_supply(of, shown))
    return f"the verdict would be another without {'; or without '.join(reasons)}", "; ".join(steps)


def _to_supply(of: tuple[str, ...], shown: str) -> str:
    share = next((one for one in of if one.startswith(SHARE)), "")
    rest = listed([one for one in of if one != share])
    return "; ".join(filter(None, (
        f"supply the {rest} of {shown} with its source" if rest else "",
        f"state framing.fraction, the {share}, of {shown} with its source" if share else "",
    )))  # fmt: skip


SHARE = "share of "


def _which(study: ThermalStudy, name: str) -> tuple[str, ...]:
    """Which figures of a layer rest on memory; a film or a roof space has one."""
    layer = next((one.layer for one in study.layers if one.layer.name == name), None)
    if layer is None:
        return (FIGURE,)
    own, member = layer.resistance or layer.resistivity or layer.conductivity, layer.member
    found = [FIGURE] if own is not None and _rests_on_memory((own,)) else []
    if member is not None and member.share.value > 0:
        heat = member.resistance or member.resistivity or member.conductivity
        found += [f"{SHARE}{_members(member)}"] if _rests_on_memory((member.share,)) else []
        found += [f"figure of its {_members(member)}"] if heat is not None and _rests_on_memory((heat,)) else []
    return tuple(found) or (FIGURE,)


def _members(member: Member) -> str:
    """ "studs", "rafters"; a name that is a plural already, or none, stands as it is."""
    name = member.name or "framing"
    return name if name.endswith("s") or name == "framing" else f"{name}s"


def _expired(layer: Layer, about: Any) -> bool:
    """Whether the project file's own heat figure of a layer has documents, and none of them is valid any more."""
    figure = layer.resistance or layer.resistivity or layer.conductivity
    if figure is None or figure.origin.chosen_by not in ("layer", "project"):
        return False
    held = [one for one in dict.fromkeys((*figure.origin.documents, *layer.documents)) if findable(one)]
    held = [one for one in held if proves(one, "heat")] or held
    named = [one for one in getattr(about.project, "documents", None) or () if {layer.material, layer.name} & set(one.for_)]
    held += [one for one in named if proves(one, "heat")]
    return bool(held) and all(valid_on(one.expires, about.date) is False for one in held)


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
