"""The trace of a calculation: data, not text. Sheets, the terminal and the tests each print it in their own way."""

from dataclasses import dataclass, field

from layerfolio.steps.formula import Formula

Argument = float | tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """A numbered step of the printed calculation begins; `key` lets other sheets point at it."""

    title: str
    key: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Step:
    """One formula with its arguments and value. `about` names the subject ("4 Mineral-wool board")."""

    formula: Formula
    arguments: tuple[tuple[str, Argument], ...]
    value: float
    about: str = ""
    running_total: bool = False  # print the value in the running-total column


@dataclass(frozen=True, slots=True)
class Given:
    """A figure read from catalogue, climate, project or code: its glossary name, value and source in one line.

    `figure` is the sourced figure itself where there is one, so that a sheet can print its source mark.
    """

    quantity: str
    value: float
    about: str
    source: str
    figure: object | None = None


@dataclass(frozen=True, slots=True)
class Choice:
    """Which branch was taken, and why, in words."""

    text: str
    because: str
    source: str = ""


Entry = Section | Step | Given | Choice


@dataclass(frozen=True, slots=True)
class Trace:
    entries: tuple[Entry, ...]

    def steps(self) -> tuple[Step, ...]:
        return tuple(e for e in self.entries if isinstance(e, Step))

    def section(self, key: str) -> tuple[int, "Section"]:
        """Printed number (from 1) and section of that key; KeyError when there is none."""
        number = 0
        for entry in self.entries:
            if isinstance(entry, Section):
                number += 1
                if entry.key == key:
                    return number, entry
        raise KeyError(key)


@dataclass(slots=True)
class Recorder:
    """Writes a trace while a study runs."""

    entries: list[Entry] = field(default_factory=list)

    def section(self, title: str, key: str = "", source: str = "") -> None:
        self.entries.append(Section(title, key, source))

    def step(self, formula: Formula, *, about: str = "", running_total: bool = False, **arguments: Argument) -> float:
        """Run the formula as plain floats and record it; returns its value."""
        value = formula(**arguments)
        self.entries.append(Step(formula, tuple(arguments.items()), value, about, running_total))
        return value

    def given(self, quantity: str, value: float, about: str, source: str, figure: object | None = None) -> float:
        self.entries.append(Given(quantity, value, about, source, figure))
        return value

    def choice(self, text: str, because: str, source: str = "") -> None:
        self.entries.append(Choice(text, because, source))

    def done(self) -> Trace:
        return Trace(tuple(self.entries))
