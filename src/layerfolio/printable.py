"""Which of a person's texts hold characters that the pages cannot carry, and print as a question mark."""

from collections.abc import Iterator
from typing import Any

from layerfolio.problems import Caution


def unprintable_texts(project: Any) -> tuple[Caution, ...]:
    """A caution for each text of a project (reading.schema.Project) that the bundled fonts cannot print whole."""
    texts = [(path, text) for path, text in _texts(project, "") if not text.isascii()]
    if not texts:
        return ()
    from layerfolio.sheets.markup import FALLBACK, unprintable

    found = [(path, unprintable(text)) for path, text in texts]
    return tuple(
        Caution(path, f"the fonts of the package have no {' '.join(signs)} (printed as {FALLBACK}): {_codes(signs)}")
        for path, signs in found
        if signs
    )


def _codes(signs: str) -> str:
    return ", ".join(f"U+{ord(one):04X}" for one in signs[:8]) + (" ..." if len(signs) > 8 else "")


def _texts(value: Any, path: str) -> Iterator[tuple[str, str]]:
    """Every text that stands in the file, with its dotted path; names that the person chose count as texts."""
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, tuple):
        for number, one in enumerate(value):
            yield from _texts(one, f"{path}[{number}]")
    elif isinstance(value, dict):
        for name, one in value.items():
            yield f"{path}.{name}", name
            yield from _texts(one, f"{path}.{name}")
    elif hasattr(value, "stated"):
        for name in (one for one in value.KEYS if one in value.stated):
            yield from _texts(getattr(value, name), f"{path}.{name}".lstrip("."))
