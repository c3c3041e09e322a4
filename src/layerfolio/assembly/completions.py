"""What is stated beside the plain layers: fasteners, air voids, rain on an inverted roof, unheated spaces."""

from typing import Any

from layerfolio.assembly.beside import Fasteners, InvertedRoof, Stated, UnheatedSpace
from layerfolio.assembly.figures import stated_origin
from layerfolio.assembly.types import Choice
from layerfolio.catalogue.completions import Completions, completions
from layerfolio.catalogue.datum import Datum, Origin

SPACES = "iso-6946-2017, unheated spaces"


def stated(given: Any, set_id: str) -> Stated:
    """What an assembly of the project file states; the set's data are read only when it states something."""
    corrected, space = _corrected(given), _space(given)
    if not (corrected or space):
        return Stated()
    data = completions(set_id)
    choices = []
    if corrected and not data.corrections.counted:
        words = f"{corrected[:1].upper()}{corrected[1:]} add nothing to the transmittance"
        choices.append(Choice(words, data.corrections.because, data.corrections.source))
    if space and not data.spaces.counted:
        choices.append(Choice(f"The {space} adds no resistance", data.spaces.because, data.spaces.source))
    roof, beside, more = _spaces(given, data) if data.spaces.counted else (None, None, ())
    rain = _rain(given, data) if data.corrections.counted else None
    return Stated(data if corrected and data.corrections.counted else None, roof, beside, rain, (*choices, *more))


def _corrected(given: Any) -> str:
    """What of it would correct the transmittance, in words; empty for nothing."""
    found = ["fasteners"] if any(getattr(one, "fasteners", None) for one in given.layers) else []
    found += ["air voids"] if any(getattr(one, "air_voids", None) is not None for one in given.layers) else []
    found += ["rain on the inverted roof"] if getattr(given, "inverted_roof", None) else []
    return " and ".join(found)


def _space(given: Any) -> str:
    if getattr(given, "roof_space", None):
        return "unheated roof space"
    return "unheated space" if getattr(given, "unheated_space", None) else ""


def _spaces(given: Any, data: Completions) -> tuple[Datum | None, UnheatedSpace | None, tuple[Choice, ...]]:
    """Roof space and unheated space of a set that counts them; a roof space stands before a space beside."""
    if word := getattr(given, "roof_space", None):
        because = "the figure of the space holds its air and its covering, not the film on the roof"
        return data.roof_spaces[word], None, (Choice("The outside film is that of the roof over the space", because, SPACES),)
    beside = getattr(given, "unheated_space", None)
    if beside is None:
        return None, None, ()
    lacking = [key for key in ("envelope", "volume", "air_changes") if getattr(beside, key) in (None, ())]
    if given.area is None:
        lacking.append("the area of the assembly")
    if lacking:
        words = f"not stated: {', '.join(lacking)}".replace("_", " ")
        return None, None, (Choice("The unheated space adds no resistance", words, SPACES),)
    parts = tuple((one.area.value, one.transmittance.value) for one in beside.envelope)
    return None, UnheatedSpace(parts, beside.volume.value, beside.air_changes), ()


def _rain(given: Any, data: Completions) -> InvertedRoof | None:
    """Rain on an inverted roof; a drainage factor that is not stated is the set's own."""
    roof = getattr(given, "inverted_roof", None)
    if roof is None or roof.precipitation is None:
        return None
    factor = data.drainage
    if roof.drainage_factor is not None:
        factor = Datum(roof.drainage_factor, Origin("layer", "project file, inverted roof"))
    return InvertedRoof(roof.precipitation, factor)


def fasteners(given: Any, where: str, data: Completions | None) -> Fasteners | None:
    """The fasteners of a layer of the project file; `data` where the set counts them."""
    found = getattr(given, "fasteners", None)
    if found is None:
        return None
    conductivity, conducts_poorly = _conductivity(found, where, data)
    diameter = found.root_diameter or found.diameter
    spacing, rows = (None if one is None else one.value for one in (found.spacing, found.rows_at))
    per_area = found.per_area
    lacking = []
    if conductivity is None and not conducts_poorly:
        lacking.append("material or conductivity")
    if diameter is None:
        lacking.append("root_diameter or diameter")
    if per_area is None and not (spacing and rows):
        lacking.append("per_area, or spacing and rows_at")
    if getattr(given, "thickness", None) is None:
        lacking.append("the thickness of the layer")
    return Fasteners(
        title=found.kind or f"{found.material or ''} fasteners".strip(),
        conductivity=conductivity,
        diameter=diameter.value if diameter else None,
        per_area=per_area,
        spacing=spacing,
        rows=rows,
        depth=found.depth.value if found.depth else None,
        lacking=() if conducts_poorly else tuple(lacking),
        conducts_poorly=conducts_poorly,
        kind=found.kind or "",
        outer=found.diameter.value if found.diameter else None,
        root=found.root_diameter.value if found.root_diameter else None,
        length=length.value if (length := getattr(found, "length", None)) else None,
        bending_yield=_bending(found, where),
    )


def _bending(found: Any, where: str) -> Datum | None:
    strength = getattr(found, "bending_yield_strength", None)
    return None if strength is None else Datum(strength.value, stated_origin(found, "layer", f"fasteners of {where}"))


def _conductivity(found: Any, where: str, data: Completions | None) -> tuple[Datum | None, bool]:
    """Of the fastener, as stated or by its material; whether it conducts so poorly that it needs no correction."""
    if found.conductivity is not None:
        stated_one = Datum(found.conductivity.value, stated_origin(found, "layer", f"fasteners of {where}"))
        return stated_one, bool(data and data.poor_below and stated_one.value < data.poor_below.value)
    if data is None or found.material is None:
        return None, False
    return data.conductivities.get(found.material), found.material not in data.conductivities
