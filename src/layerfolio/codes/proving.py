"""Which of the documents that a project names proves something, and for how long: one rule for findings, register and sheets."""

import re
from collections.abc import Iterable
from typing import Literal, Protocol

from layerfolio.catalogue.datum import Document

Matter = Literal["heat", "vapour", "bracing", "air"]
WORDS: dict[Matter, tuple[str, ...]] = {
    "heat": ("conductivity", "thermal", "lambda", "resistance", "r-value"),
    "vapour": ("permeance", "permeability", "vapour", "equivalent_air_layer", "equivalent air layer"),
    "bracing": ("bracing", "lateral", "racking"),
    "air": ("air",),
}


class Paper(Protocol):
    """What is asked of a document, be it the project file's record or the resolved one."""

    number: str | None
    issuer: str | None
    edition: str | None
    proves: tuple[str, ...]


def findable(document: Paper) -> bool:
    """Whether somebody else can find the document again: it states a number, and an issuer or an edition."""
    return bool(document.number and (document.issuer or document.edition))


def about(document: Paper, matter: Matter) -> bool:
    """Whether what the document proves is of that matter."""
    return any(about_words(claim.lower(), matter) for claim in document.proves)


def about_words(claim: str, matter: Matter) -> bool:
    """Whether words in small letters are of that matter: an air permeance is one of air, the equivalent air layer of vapour."""
    if matter == "heat" and re.search(r"\b(vapour|fire|air|water|lateral)\b", claim):
        return False
    if matter == "vapour" and "air perm" in claim:
        return False
    if matter == "air" and "equivalent" in claim:
        return False
    return any(re.search(rf"\b{word}", claim) for word in WORDS[matter])


def valid_on(expires: object, date: object) -> bool | None:
    """Whether a document that expires so is valid on the project's date, that day included; None where no date is stated."""
    if not expires:
        return True
    return str(expires) >= str(date) if date else None


def proof(documents: Iterable[Document], matter: Matter, date: object) -> tuple[Document | None, Document | None]:
    """The document that proves it on that date; else, second, one that would if it could be found, or were valid."""
    held = [one for one in dict.fromkeys(documents) if about(one, matter)]
    found = [one for one in held if findable(one)]
    valid = next((one for one in found if valid_on(one.expires, date) is not False), None)
    return valid, None if valid else next(iter(found or held), None)
