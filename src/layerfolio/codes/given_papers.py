"""A line that waits for papers which the project file gives: they are named, and what is left is that somebody reviews them.

`papers` of a requirement are the words by which `documents` say that they are for it. No document is read here, so none turns
a line into *meets*: one that can be found again leaves the question to the authority, one that cannot is still evidence to
complete.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.proving import findable, valid_on
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import listed


def with_papers(found: Finding, requirement: Requirement, about: Context) -> Finding:
    """The finding, with the project's own documents for it in the place of the wish to have them."""
    words = requirement.rule.get("papers", ())
    if found.verdict is not Verdict.NEEDS_EVIDENCE or not words or not _wishes(found, requirement):
        return found
    held = list(_held(about, found.assembly, {one.lower() for one in words}))
    given = [one for one in held if findable(one) and valid_on(getattr(one, "expires", None), about.date) is not False]
    if given:
        return _to_review(found, given)
    return _to_complete(found, held) if held else found


def title_of(document: Any) -> str:
    """How a document is called in print: title and number."""
    title, number = (getattr(document, key, None) or "" for key in ("title", "number"))
    return ", ".join(filter(None, (title, "" if number in title else number)))


def _wishes(found: Finding, requirement: Requirement) -> bool:
    """Whether the line asks for papers, and not for keys of the project file first."""
    asks = found.next_step.startswith("supply") or requirement.judge == "reminder"
    return asks and not found.next_step.startswith("state ")


def _held(about: Context, subject: str | None, words: set[str]) -> Iterator[Any]:
    """The documents for one of these words; one that names assemblies speaks for these alone."""
    assemblies = getattr(about.project, "assemblies", None) or {}
    for one in getattr(about.project, "documents", None) or ():
        said = getattr(one, "for_", None) or getattr(one, "proves", None) or ()
        named = [word for word in said if word in assemblies]
        if words & {word.lower() for word in said} and (subject is None or not named or subject in named):
            yield one


def _to_review(found: Finding, given: list[Any]) -> Finding:
    names = listed([title_of(one) for one in given])
    does, they = ("does", "it") if len(given) == 1 else ("do", "they")
    wanted = found.next_step.removeprefix("supply ")
    return replace(
        found, verdict=Verdict.NEEDS_JUDGEMENT, given="; ".join(filter(None, (found.given, f"by document: {names}"))),
        reason=f"{found.reason}; {names} {'is' if len(given) == 1 else 'are'} given, and not read by this tool",
        next_step=f"the authority reviews {names}: {does} {they} show what is asked here ({wanted})?",
    )  # fmt: skip


def _to_complete(found: Finding, held: list[Any]) -> Finding:
    """What is asked, and what the document that is named for it still lacks."""
    names, old = listed([title_of(one) for one in held]), next((one for one in held if findable(one)), None)
    if old is not None:
        words = f"{title_of(old)} expired on {old.expires}, a newer edition is asked for"
        return replace(found, next_step=f"{found.next_step}: {words}")
    return replace(found, next_step=f"{found.next_step}; state number, and issuer or edition, of {names} (documents)")
