"""References to sheets in texts: found, and written by the numbers of another table.

Records, calculations and schedules have numbers that nothing else in a project can have. Details share theirs with openings
and seismic categories, assemblies' sheets with the assemblies: these count as references only behind a word that says so.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

OWN = re.compile(r"[GCEX][0-9]+|ST[0-9]+|.+-[TV]")
DETAIL = re.compile(r"D[0-9]+")
NOT_BEHIND = ("class ", "Class ", "grade ", "Table ", "Figure ", "Zone ", "zone ", "category ", "categories ", "clause ")
ENDINGS = {"sheets that end in -T": "sheets of thermal steps", "sheets that end in -V": "sheets of moisture"}
"""What is said of plain numbers by their endings, and by the titles of the same sheets."""
_JOINED, _END, _GAP = r"(?:, | and | to |; )", r"(?!\w|-[A-Z])", r"[_*]*[ \u00a0][_*]*"


@dataclass(frozen=True)
class References:
    """`numbers` from the plain ones to those that print; `kept` are texts of the user's own that happen to look like numbers."""

    numbers: Mapping[str, str]
    kept: tuple[str, ...] = ()

    @cached_property
    def _own(self) -> re.Pattern:
        return re.compile(rf"(?<![\w\-.])(?:{_any(one for one in self.numbers if OWN.fullmatch(one))})(?!\w|-[A-Z])")

    @cached_property
    def _told(self) -> tuple[re.Pattern, ...]:
        """What counts as a reference behind a word (see, sheet; of details on, as, a bracket too), and runs of details."""
        details = _any(one for one in self.numbers if DETAIL.fullmatch(one))
        several = rf"{{0}}(?:{_JOINED}{{0}})*{_END}"
        every = several.format(f"(?:{_any(self.numbers)})")
        listed = several.format(f"(?:{details})")
        return (
            re.compile(rf"(?P<lead>(?<![A-Za-z])(?:[Ss]ee|[Ss]heets?){_GAP})(?P<list>{every})"),
            re.compile(rf"(?P<lead>(?<![A-Za-z])(?:[Oo]n|as){_GAP}|\()(?P<list>{listed})"),
            re.compile(rf"(?P<lead>(?<!ategories )(?<!ategory )(?<!\w))(?P<list>(?:{details}) to (?:{details}){_END})"),
        )

    def rewritten(self, text: str) -> str:
        """The text with its references by the other numbers."""
        if text in ENDINGS:
            return ENDINGS[text]
        if not any(one.isdigit() for one in text):
            return text
        parts = self._kept.split(text) if self.kept else [text]
        return "".join(part if part in self.kept else self._plain(part) for part in parts)

    @cached_property
    def _kept(self) -> re.Pattern:
        return re.compile("(" + "|".join(map(re.escape, sorted(self.kept, key=len, reverse=True))) + ")")

    def _plain(self, text: str) -> str:
        for pattern in self._told:
            text = pattern.sub(lambda found: found["lead"] + self._list(found["list"]), text)
        return self._own.sub(self._one, text)

    def _one(self, found: re.Match) -> str:
        before = found.string[: found.start()]
        return found[0] if before.endswith(NOT_BEHIND) else self.numbers[found[0]]

    def _list(self, text: str) -> str:
        return "".join(self.numbers.get(one, one) for one in re.split(rf"({_JOINED})", text))

    def listed(self, text: str) -> str:
        """A cell that holds nothing but numbers of sheets, in bold or not."""
        return re.sub(rf"(?<![\w\-])(?:{_any(self.numbers)})(?!\w|-[A-Z])", lambda found: self.numbers[found[0]], text)


def _any(numbers: Iterable[str]) -> str:
    """Longest first, so that W1-T is not taken for W1; nothing matches where there is none."""
    return "|".join(map(re.escape, sorted(numbers, key=lambda one: (-len(one), one)))) or r"(?!)"
