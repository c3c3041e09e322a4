"""Inputs that rest on memory, on an expired document or on none: they may stand unless the verdict would turn without them."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from layerfolio.assembly.types import Assembly, Layer, Member
from layerfolio.catalogue.datum import Datum
from layerfolio.codes.proving import about as proves
from layerfolio.codes.proving import findable, valid_on
from layerfolio.codes.wording import listed
from layerfolio.formulas.thermal import layer_resistance, resistance_by_thickness
from layerfolio.studies.types import LayerHeat, ThermalStudy

FROM_MEMORY, UNPROVED, EXPIRED = "memory", "unproved", "expired"
"""Why an input is weak, in the order in which they are said."""
FIGURE = "figure"


class Weak(NamedTuple):
    """An input on which no verdict may turn: its name and the resistance it brings (m2.K/W). `why`: it rests on memory, its
    documents have expired, or no document proves it. `of`: which of its figures rest on memory: its own, the share of what
    frames it, the figure of that member.
    """

    name: str
    amount: float
    why: str
    of: tuple[str, ...] = (FIGURE,)


def weak(study: ThermalStudy, about: Any) -> tuple[Weak, ...]:
    """What rests on memory, then the layers whose documents of heat have all expired, or that have none. `about`: Context."""
    memory = [Weak(name, amount, FROM_MEMORY, _which(study, name)) for name, amount in from_memory(study)]
    lacking = [Weak(one.layer.name, brings(one), why) for one in study.layers if (why := _lacks(one.layer, about))]
    return tuple([*memory, *(one for one in lacking if one.amount > 0)])


def turned(found: Iterable[Weak], names: Any) -> tuple[str, str]:
    """Reason and next step of a verdict that would turn without these. `names`: from names as found to one printed list."""
    some = tuple(found)
    groups = dict.fromkeys((one.why, one.of) for one in some)
    reasons, steps = [], []
    for why, of in sorted(groups, key=lambda one: (FROM_MEMORY, UNPROVED, EXPIRED).index(one[0])):
        shown = names([one.name for one in some if (one.why, one.of) == (why, of)])
        rests = f"whose {listed(of)} {'rests' if len(of) == 1 else 'rest'} on memory"
        reasons.append(f"{shown}, {LACKS[why][0] if why in LACKS else rests}")
        steps.append(LACKS[why][1].format(shown) if why in LACKS else _to_supply(of, shown))
    return f"the verdict would be another without {'; or without '.join(reasons)}", "; ".join(steps)


LACKS = {
    UNPROVED: ("whose figure has no document", "supply the document that proves the conductivity or resistance of {}"),
    EXPIRED: ("whose document has expired", "supply a newer edition of the document of {}"),
}  # fmt: skip


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


def _lacks(layer: Layer, about: Any) -> str:
    """Why the project file's own heat figure of a layer is not proved: no document is of heat, or each that is has expired."""
    figure = layer.resistance or layer.resistivity or layer.conductivity
    if figure is None or figure.origin.chosen_by not in ("layer", "project"):
        return ""
    own = [one for one in dict.fromkeys((*figure.origin.documents, *layer.documents)) if findable(one)]
    named = [one for one in getattr(about.project, "documents", None) or () if {layer.material, layer.name} & set(one.for_)]
    held = [one for one in (*own, *named) if proves(one, "heat")]
    if not held:
        return UNPROVED
    return EXPIRED if all(valid_on(one.expires, about.date) is False for one in held) else ""


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
