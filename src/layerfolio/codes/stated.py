"""What the project file states about a subject beyond its layers, and how sizes print in findings."""

from typing import Any

from layerfolio.codes.context import Context, value
from layerfolio.codes.proving import findable, valid_on
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import length
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import fixed, in_units


def of_assembly(about: Context, name: str, path: str) -> Any:
    """What the project file says of an assembly at a dotted path ("vents.low"); None where it says nothing."""
    found = (getattr(about.project, "assemblies", None) or {}).get(name)
    for key in path.split("."):
        found = getattr(found, key, None)
    return found


def figure_of(about: Context, name: str, path: str) -> float | None:
    """The same as an SI figure."""
    return value(of_assembly(about, name, path))


def limit_figure(requirement: Requirement, about: Context, key: str = "at_least") -> tuple[float, str]:
    """The figure of the requirement in SI, or the local authority's with its source."""
    amended = about.amended.get(requirement.id)
    if amended is not None and isinstance(amended.value, float):
        return amended.value, amended.source
    return requirement.figures[key], ""


def documents_for(about: Context, name: str, own: Any, *claims: str) -> tuple[Any, ...]:
    """Documents of a subject that can be found again, whose file is there where one is named, and that are valid on the
    project's date: its own evidence, and those of the project that name it or one of the claims.
    """
    held = _held(about, name, own, claims)
    return tuple(one for one in held if valid_on(getattr(one, "expires", None), about.date) is not False)


def expired_for(about: Context, name: str, own: Any, *claims: str) -> tuple[Any, ...]:
    """Those that would be among them, had they not expired before the project's date."""
    return tuple(one for one in _held(about, name, own, claims) if valid_on(getattr(one, "expires", None), about.date) is False)


def _held(about: Context, name: str, own: Any, claims: tuple[str, ...]) -> list[Any]:
    general = getattr(about.project, "documents", None) or ()
    wanted = {name.lower(), *claims}
    named = tuple(one for one in general if wanted & {word.lower() for word in getattr(one, "for_", None) or ()})
    return [one for one in (*(getattr(own, "evidence", None) or ()), *named) if findable(one)]


TRANSMITTANCE = ("transmittance", "u-factor", "u factor", "u-value", "u value", "rating")
SOLAR = ("solar", "shgc", "rating")
"""Words by which a document names what it proves of an opening."""


def proved(about: Context, name: str, own: Any, words: tuple[str, ...]) -> bool:
    """Whether a document of the subject, findable and valid, names one of these things as what it proves."""
    return any(_says(one, words) for one in documents_for(about, name, own))


def _says(document: Any, words: tuple[str, ...]) -> bool:
    return any(word in claim.lower() for claim in getattr(document, "proves", None) or () for word in words)


def unproved(about: Context, name: str, own: Any, what: str) -> str:
    """Why no document proves a figure of a subject: none is given, or what the nearest one lacks. `what`: "the rating"."""
    held, old = _held(about, name, own, ()), expired_for(about, name, own)
    if old:
        return f"the document {old[0].number} has expired ({old[0].expires})"
    for one in held:
        return f"{one.number} does not say that it proves it"
    return f"no document of {what} is given"


def metres(size: float, customary: bool = False) -> str:
    """A length: "63 mm", "1.2 m"; with `customary` first in feet and inches."""
    if customary or size < 1:
        return length(Quantity(size, "length", f"{size * 1000:g} mm"), customary)
    return f"{size:.3f}".rstrip("0").rstrip(".") + " m"


def square_metres(size: float, customary: bool = False) -> str:
    """An area with two decimals: "0.35 m²", "3.77 ft² (0.35 m²)"."""
    metric = f"{fixed(size, 2)} m²"
    return f"{fixed(in_units(size, 'ft2'), 2)} ft² ({metric})" if customary else metric
