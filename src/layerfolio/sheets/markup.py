"""The small mark-up of sheet texts: **bold**, _oblique_, `mono`, {R_si} a glossary symbol, {R|5;q} with another index.

A person's own text goes through `plain` first: cleaned of what a page cannot carry and escaped, so it is no mark-up.
"""

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

from layerfolio.drawing import font
from layerfolio.glossary import symbol

NO_BREAK = "\u00a0"
FALLBACK = "?"  # stands for a stretch of characters that the bundled face or a left-to-right line cannot carry
_SPECIAL = re.compile(r"([\\`*_{}\[\]|#<>~])")
_TOKEN = re.compile(r"\\([!-/:-@\[-`{-~])|(\*\*)|(`)|(_)|\{([A-Za-z]\w*)(?:\|([^{}|]*))?\}")
_RIGHT_TO_LEFT = frozenset({"R", "AL", "AN", "RLE", "RLO", "RLI"})
_UNITS = (
    r"(?:mm²?|m[²³]?|cm|km|in|ft[²³]?|kg|ng|g|k?W|K|[kM]?Pa|[kM]?N|k?J|Btu|perms?|US perm|lb|psf|h|d|%|°[CF]?|class)"
)
_FIGURE_AND_UNIT = re.compile(rf"(?<=\d) (?={_UNITS}(?![A-Za-z]))")
_REFERENCE = re.compile(
    r"\b((?i:zone|layer|step|sheet|page|class|line|table|part|section|chapter|row|item|clause|plane)"
    r"|ISO|EN|ASTM|CSA|NBC|IRC|IBC) (?=\d)"
)
_FRACTION = re.compile(r"(?<=\d) (?=\d+/\d+)")
_RATIO = re.compile(r"(?<=[\d\"]) ([:×]) (?=[\d\"])")


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text of one look; `index` is the lowered, smaller part of a symbol."""

    text: str
    bold: bool = False
    oblique: bool = False
    mono: bool = False
    index: bool = False


def plain(text: str) -> str:
    """A person's own text, cleaned and escaped: what it shows is what was written, never mark-up."""
    return _SPECIAL.sub(r"\\\1", clean(text))


def clean(text: str) -> str:
    """One line of characters that a page can carry; each stretch of others becomes one FALLBACK, controls vanish."""
    if not (text.isascii() and text.isprintable()):
        text = "".join(map(_carried, unicodedata.normalize("NFC", text)))
        text = re.sub("\0+", FALLBACK, text)
    return re.sub(" +", " ", text).strip(" ")


def unprintable(text: str) -> str:
    """The characters of a person's text that `clean` replaces, once each in order: for the note that says so."""
    if text.isascii():
        return ""
    return "".join(dict.fromkeys(one for one in unicodedata.normalize("NFC", text) if _carried(one) == "\0"))


@lru_cache(maxsize=4096)
def _carried(character: str) -> str:
    """The character itself, a space, nothing, or a zero character where the page cannot carry it."""
    category = unicodedata.category(character)
    if character == NO_BREAK:
        return character
    if character in "\t\n\r" or category[0] == "Z":
        return " "
    if category in ("Cc", "Cf", "Cs", "Mn", "Me"):
        return ""
    if unicodedata.bidirectional(character) in _RIGHT_TO_LEFT or font.missing_glyphs(character):
        return "\0"
    return character


def as_plain(text: str) -> str:
    """The text without its marks, for readers without a page: R_si for a symbol, ordinary spaces."""
    return "".join(("_" if run.index else "") + run.text for run in parse(text)).replace(NO_BREAK, " ")


@lru_cache(maxsize=4096)
def parse(text: str) -> tuple[Run, ...]:
    """The runs of a text; a figure stays with its unit, and no run is empty."""
    reader = _Reader()
    at = 0
    for token in _TOKEN.finditer(text):
        reader.write(text[at : token.start()])
        reader.token(token, text)
        at = token.end()
    reader.write(text[at:])
    return reader.done()


class _Reader:
    """Collects runs while the look changes."""

    def __init__(self) -> None:
        self.runs: list[Run] = []
        self.buffer: list[str] = []
        self.bold = self.oblique = self.mono = False

    def write(self, text: str) -> None:
        if text:
            self.buffer.append(text)

    def token(self, token: re.Match, text: str) -> None:
        escaped, bold, mono, oblique, name, index = token.groups()
        if escaped:
            self.write(escaped)
        elif mono:
            self._flush()
            self.mono = not self.mono
        elif self.mono or (oblique and not self._turns(token, text)):
            self.write(token.group())
        elif name:
            self._symbol(name, index)
        else:
            self._flush()
            self.bold, self.oblique = self.bold ^ bool(bold), self.oblique ^ bool(oblique)

    def _turns(self, token: re.Match, text: str) -> bool:
        """A low line is mark-up only at the edge of a word, so that `hemp_batt` stays as it is."""
        before, after = text[: token.start()][-1:], text[token.end() :][:1]
        if self.oblique:
            return not after.isalnum()
        return not before.isalnum() and not (after.isspace() or not after)

    def _symbol(self, name: str, index: str | None) -> None:
        self._flush()
        base, own = _symbol(name)
        self.runs.append(Run(base, self.bold, True))
        if index or (index is None and own):
            self.runs.append(Run(own if index is None else index, self.bold, index=True))

    def _flush(self) -> None:
        text = "".join(self.buffer)
        self.buffer.clear()
        if text:
            self.runs.append(Run(_glued(text), self.bold, self.oblique and not self.mono, self.mono))

    def done(self) -> tuple[Run, ...]:
        self._flush()
        return tuple(self.runs)


def _symbol(name: str) -> tuple[str, str]:
    """Base and index from the glossary; a name that is not in it reads as written, split at its first low line."""
    try:
        return symbol(name)
    except KeyError:
        base, _, index = name.partition("_")
        return base, index


def _glued(text: str) -> str:
    """Figures keep their units, fractions and ratios on one line, references their numbers."""
    if " " not in text or not any(map(str.isdigit, text)):
        return text
    text = _FIGURE_AND_UNIT.sub(NO_BREAK, text)
    text = _REFERENCE.sub(rf"\1{NO_BREAK}", text)
    text = _FRACTION.sub(NO_BREAK, text)
    return _RATIO.sub(rf"{NO_BREAK}\1{NO_BREAK}", text)
