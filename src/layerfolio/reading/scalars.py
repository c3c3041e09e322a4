"""Readers of single values: texts, words of a closed list, bare numbers, true or false, dates."""

import re
from datetime import date

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.record import Reader
from layerfolio.reading.report import Report, did_you_mean, meant, quoted
from layerfolio.reading.tree import Node, Scalar, Sequence

# Numbers and booleans as YAML 1.2 has them; everything else is text.
INTEGER = re.compile(r"[-+]?[0-9]{1,15}")
DECIMAL = re.compile(r"[-+]?(\.[0-9]{1,40}|[0-9]{1,40}(\.[0-9]{0,40})?)([eE][-+]?[0-9]{1,3})?")
_TRUE, _FALSE = {"true", "True", "TRUE"}, {"false", "False", "FALSE"}
# Control characters and the marks that turn the direction of the text after them.
_UNSAFE = dict.fromkeys(
    [
        *range(32),
        *range(127, 160),
        0x200E,
        0x200F,
        0x2028,
        0x2029,
        *range(0x202A, 0x202F),
        *range(0x2066, 0x206A),
        0xFEFF,
    ],
    " ",
)


def scalar(node: Node, path: str, report: Report, wanted: str, example: str) -> str | None:
    """The text of a single value; a list or mapping in its place is reported."""
    if isinstance(node, Scalar):
        return node.text
    found = "a list" if isinstance(node, Sequence) else "keys with values"
    report.problem(node.place, path, f"{wanted} is expected here, not {found}", example)
    return None


class Line(Reader):
    """A text, on one line: white space is joined, control and direction marks are dropped."""

    def __init__(self, example: str = "a few words", longest: int = 4000):
        self.example, self.longest = example, longest

    def read(self, node: Node, path: str, report: Report) -> str | None:
        text = scalar(node, path, report, "a text", self.example)
        if text is None:
            return None
        clean = " ".join(text.translate(_UNSAFE).split())
        if not clean:
            report.problem(node.place, path, "the text is empty", self.example)
            return None
        if len(clean) > self.longest:
            report.problem(node.place, path, f"the text is longer than {self.longest} characters", self.example)
            return None
        if lost := getattr(node, "lost", ""):
            message = f"{quoted(lost)} is not read, what stands after # is a comment: put the text in quotes if it belongs to it"
            report.caution(path, message)
        return clean

    def schema(self, definitions: Definitions) -> dict:
        return {"type": ["string", "number"], "examples": [self.example]}


class Pick(Reader):
    """A word of a closed list."""

    def __init__(self, *words: str):
        self.words, self.example = words, words[0]

    def read(self, node: Node, path: str, report: Report) -> str | None:
        text = scalar(node, path, report, "one word", self.example)
        if text is None or text in self.words:
            return text
        from layerfolio.reading.trade_words import meant_by

        other = meant_by(text, self.words)
        hint = meant([other]) if other else did_you_mean(text, self.words)
        hint = hint if hint.endswith("?") else ""  # the known words stand once: as the example
        report.problem(node.place, path, f"{quoted(text)} is not known here{hint}", " | ".join(self.words))
        return None

    def schema(self, definitions: Definitions) -> dict:
        return {"enum": list(self.words)}


class Number(Reader):
    """A bare number: a count, a class, a factor."""

    def __init__(self, noun: str, example: str, least: float, most: float, whole: bool = False):
        self.noun, self.example, self.least, self.most, self.whole = noun, example, least, most, whole

    def read(self, node: Node, path: str, report: Report) -> float | None:
        text = scalar(node, path, report, self.noun, self.example)
        if text is None:
            return None
        if not (INTEGER if self.whole else DECIMAL).fullmatch(text):
            kind = "a whole number" if self.whole else "a bare number"
            report.problem(node.place, path, f"{quoted(text)} is not {self.noun}: {kind} is expected", self.example)
            return None
        value = int(text) if self.whole else float(text)
        if not self.least <= value <= self.most:
            bounds = f"from {self.least:g} to {self.most:g}"
            report.problem(node.place, path, f"{quoted(text)} is not {self.noun} {bounds}", self.example)
            return None
        return value

    def schema(self, definitions: Definitions) -> dict:
        kind = "integer" if self.whole else "number"
        return {"type": kind, "minimum": self.least, "maximum": self.most, "examples": [float(self.example)]}


class Flag(Reader):
    """true or false; `no` and `on` are words, as in YAML 1.2."""

    example = "true"

    def read(self, node: Node, path: str, report: Report) -> bool | None:
        text = scalar(node, path, report, "true or false", self.example)
        if text in _TRUE or text in _FALSE:
            return text in _TRUE
        if text is not None:
            report.problem(node.place, path, f"{quoted(text)} is neither true nor false", self.example)
        return None

    def schema(self, definitions: Definitions) -> dict:
        return {"type": "boolean"}


class Day(Reader):
    """A date, year first."""

    example = "2027-02-03"

    def read(self, node: Node, path: str, report: Report) -> date | None:
        text = scalar(node, path, report, "a date", self.example)
        if text is None:
            return None
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            report.problem(node.place, path, f"{quoted(text)} is not a date: write year-month-day", self.example)
            return None
        try:
            return date.fromisoformat(text)
        except ValueError:
            report.problem(node.place, path, f"there is no day {text}", self.example)
            return None

    def schema(self, definitions: Definitions) -> dict:
        return {"type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$", "examples": [self.example]}
