"""The figures that a document has to prove, in words: what is in use of a layer, a member or an opening, and who chose it."""

from typing import Any

from layerfolio.assembly.types import Layer, Member, VapourFigures
from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.sources import all_sources
from layerfolio.codes.proving import about_words
from layerfolio.codes.site_figures import length
from layerfolio.codes.wording import figure
from layerfolio.units.show import fixed

MU_FIGURES = "vapour factor"
NANO = 1e12


def of_layer(layer: Layer, customary: bool) -> dict[str, str]:
    """By matter (conductivity, vapour, density): the figure in use as it prints; matters without a figure are left out."""
    found = {"conductivity": _heat(layer, customary)}
    if layer.vapour:
        found["vapour"] = _vapour(layer.vapour, layer, customary)
    if layer.density:
        found["density"] = f"density {figure('rho', layer.density.value, customary=customary, digits=0)}"
    return {matter: words for matter, words in found.items() if words}


def of_member(member: Member, customary: bool) -> dict[str, str]:
    """The heat figure of framing."""
    words = _heat(member, customary)
    return {"conductivity": words} if words else {}


def of_opening(stated: Any, study: Any, customary: bool) -> dict[str, str]:
    """Transmittance, solar factor and energy rating of an opening; `study` is its OpeningStudy, or None."""
    found: dict[str, str] = {}
    value = stated.transmittance.value if stated.transmittance else getattr(study, "transmittance", None)
    if value is not None:
        found["transmittance"] = f"transmittance {figure('U', value, customary=customary, digits=2)}"
    if stated.solar_factor is not None:
        found["solar factor"] = f"solar factor {stated.solar_factor:g}"
    if stated.energy_rating is not None:
        found["energy rating"] = f"energy rating {stated.energy_rating:g}"
    return found | _parts(stated, customary)


def _parts(stated: Any, customary: bool) -> dict[str, str]:
    """Frame, glass and edge of an opening that is calculated from them."""
    found: dict[str, str] = {}
    for word in ("frame", "glass"):
        value = getattr(getattr(stated, word, None), "transmittance", None)
        if value is not None:
            found[word] = f"{word} {figure('U', value.value, customary=customary, digits=2)}"
    psi = getattr(getattr(stated, "edge", None), "psi", None)
    if psi is not None:
        found["edge"] = f"edge {figure('psi_j', psi.value, customary=customary, digits=3)}"
    return found


def _heat(part: Layer | Member, customary: bool) -> str:
    if part.resistance:
        return f"resistance {figure('R', part.resistance.value, customary=customary)}"
    if part.resistivity:
        return f"conductivity {figure('lam', 1 / part.resistivity.value, customary=customary, digits=3)}"
    return f"conductivity {figure('lam', part.conductivity.value, customary=customary, digits=3)}" if part.conductivity else ""


def _vapour(vapour: VapourFigures, layer: Layer, customary: bool) -> str:
    """ "permeance 48 ng/(Pa·s·m²) dry cup, 140 ng/(Pa·s·m²) wet cup, at 15 mm"."""
    cups = [("dry", vapour.dry), ("wet", vapour.wet)]
    if vapour.single:
        cups = [("", vapour.dry)]
    shown = ", ".join(f"{_cup(vapour.basis, datum, customary)} {cup}".strip() for cup, datum in cups if datum)
    at = f", at {length(layer.thickness, customary)}" if layer.thickness and vapour.basis in ("permeance", "s_d") else ""
    return f"{_NAMES[vapour.basis]} {shown}{at}" if shown else ""


_NAMES = {"mu": MU_FIGURES, "permeability": "permeability", "permeance": "permeance", "s_d": "equivalent air layer"}


def _cup(basis: str, datum: Datum, customary: bool) -> str:
    if basis == "mu":
        return fixed(datum.value, 0) if datum.value >= 1000 else f"{datum.value:g}"
    if basis == "permeability":
        return f"{datum.value * NANO:.3g} ng/(Pa·s·m)"
    if basis == "permeance":
        return figure("W", datum.value, customary=customary)
    return f"{datum.value:g} m"


def words_of(claims: tuple[str, ...], figures: dict[str, str]) -> str:
    """What a document proves: its claims, each with the figure in use where there is one."""
    found = [figures.get(matter_of(claim), claim) for claim in claims]
    return "; ".join(dict.fromkeys(found))


def matter_of(claim: str) -> str:
    """Which figure a claim of a document is about: conductivity, vapour, else the claim itself in small letters."""
    lower = claim.lower()
    if "conductivity" in lower or lower in ("resistance", "thermal resistance", "r-value"):
        return "conductivity"
    return "vapour" if about_words(lower, "vapour") else lower


def where_from(layer: Layer | Member) -> str:
    """Why a document is wanted of a layer or member without one: who chose its figure, and from where."""
    if isinstance(layer, Layer) and not layer.counts:
        return "no figure of it counts in the calculation; its mark is looked at on site"
    vapour = getattr(layer, "vapour", None)
    datum = layer.resistance or layer.resistivity or layer.conductivity or (vapour.dry or vapour.wet if vapour else None)
    if datum is None:
        return "no figure of it is given"
    origin = datum.origin
    if origin.chosen_by in ("layer", "project"):
        if "no source stated" in origin.source:
            return "its figures have neither source nor document"
        return f"no document is listed for its figures ({origin.source})"
    known = all_sources().get(origin.source)
    name = known.short if known else origin.source
    kind = "the code set's own" if origin.chosen_by == "code" else "a default"
    return f"its figure is {kind}, from {name}" + (", which was not re-read" if origin.mark == "memory" else "")
