"""Source marks: a small letter and a number for each origin a sheet uses, resolved on the assumptions sheet."""

from dataclasses import dataclass, field

from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.sources import all_sources

LETTERS = {"layer": "p", "project": "p", "code": "s", "default": "d", "catalogue": "c"}
MEANING = {"c": "catalogue", "p": "project file", "s": "code set", "d": "default"}
NOT_REREAD = "†"
"""Behind the mark of a figure that was not re-read in its source (mark "memory") or was computed by us ("derived")."""

Key = tuple[str, str, str, str]
"""Letter, source, how sure, and the place where that parts one figure from another."""


@dataclass(slots=True)
class SourceBook:
    """Gives each origin its mark in order of first use."""

    _marks: dict[Key, str] = field(default_factory=dict)
    _places: dict[Key, list[str]] = field(default_factory=dict)

    def mark(self, datum: Datum | None) -> str:
        """The mark of a figure, with a dagger where it was not re-read in its source."""
        return self.origin_mark(datum.origin) if datum else ""

    def origin_mark(self, origin: Origin) -> str:
        letter = LETTERS[origin.chosen_by]
        apart = origin.place if origin.mark == "derived" else ""  # computed in another way from another place
        key = (letter, origin.source, origin.mark, apart)
        if key not in self._marks:
            number = sum(1 for known in self._marks if known[0] == letter) + 1
            self._marks[key] = f"{letter}{number}{NOT_REREAD if origin.mark in ('memory', 'derived') else ''}"
        if origin.place and origin.place not in self._places.setdefault(key, []):
            self._places[key].append(origin.place)
        return self._marks[key]

    def marks(self, *data: Datum | None) -> str:
        """The marks of several figures, each once, in order."""
        return " ".join(dict.fromkeys(filter(None, map(self.mark, data))))

    def rows(self) -> list[tuple[str, str, str, str]]:
        """(mark, source in words, places, how sure) in the order c, d, p, s and of first use."""
        found = []
        for key, mark in sorted(self._marks.items(), key=lambda item: (item[0][0], int(item[1].strip(NOT_REREAD)[1:]))):
            letter, source, sure, _ = key
            known = all_sources().get(source)
            words = f"{known.short}: {known.title}" if known and letter != "p" else source
            found.append(
                (
                    mark,
                    words,
                    "; ".join(self._places.get(key, [])),
                    "from the sizes in the project file" if (letter, sure) == ("d", "given") else _SURE[sure],
                )
            )
        return found


_SURE = {
    "found": "read in the source",
    "memory": "not re-read: confirm",
    "derived": "computed from the source: confirm",
    "given": "as stated there",
}
