"""A record is one mapping of the project file: its keys are declared once, with what they hold and what they mean.

Reading, the JSON Schema and the frozen attributes all come from that one declaration. pydantic models were measured
first: twenty of them, no file opened, took 2.0 times the bare imports of which `check` as a whole may take 2.5.
"""

from copy import copy
from typing import Any, ClassVar

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.report import Report, did_you_mean, join, nearest, quoted
from layerfolio.reading.tree import Mapping, Node, Scalar

OTHER_WORDS = {
    "shgc": "solar_factor", "solar heat gain": "solar_factor", "g value": "solar_factor", "g": "solar_factor",
    "u value": "transmittance", "u factor": "transmittance", "u": "transmittance",
    "r value": "resistance", "r": "resistance", "k value": "conductivity", "lambda": "conductivity", "k": "conductivity",
    "perm": "permeance", "perms": "permeance", "mu": "vapour_resistance_factor", "sd": "equivalent_air_layer",
    "pitch": "slope", "er": "energy_rating", "wall": "in", "tempered": "safety_glazing", "hrv": "heat_recovery",
}  # fmt: skip
"""What people call a key in their trade."""


class Reader:
    """Reads one value. `example` shows a right one; `read` reports what is wrong and then returns None."""

    example = ""

    def read(self, node: Node, path: str, report: Report) -> Any:
        raise NotImplementedError

    def schema(self, definitions: Definitions) -> dict:
        raise NotImplementedError


class Key:
    """One key of a record: how it is read, what it means, and what stands when it is not stated."""

    def __init__(self, reader: Reader, about: str, required: bool, default: Any, name: str):
        self.reader, self.about, self.required, self.default, self.name = reader, about, required, default, name


def key(reader: Reader, about: str, *, required: bool = False, default: Any = None, name: str = "") -> Any:
    """Declare a key; `name` only where the key is a word of Python (`class`)."""
    return Key(reader, about, required, default, name)


class Frozen:
    """Attributes that are set once, compared and shown."""

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"{type(self).__name__} is frozen")

    __delattr__ = __setattr__  # type: ignore[assignment]

    def __eq__(self, other: object) -> bool:
        return type(self) is type(other) and self.__dict__ == other.__dict__

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        shown = ", ".join(f"{name}={value!r}" for name, value in self.__dict__.items() if name != "stated")
        return f"{type(self).__name__}({shown})"


class Record(Frozen):
    """Frozen attributes named as the keys. `stated` names those that stand in the file, well or badly."""

    KEYS: ClassVar[dict[str, Key]] = {}
    stated: frozenset[str]

    def __init_subclass__(cls) -> None:
        cls.KEYS = cls.KEYS | {name: value for name, value in vars(cls).items() if isinstance(value, Key)}

    def __init__(self, **values: Any):
        unknown = values.keys() - self.KEYS.keys() - {"stated"}
        if unknown:
            raise TypeError(f"{type(self).__name__} has no key {', '.join(sorted(unknown))}")
        stated = values.pop("stated", frozenset(values))
        full = {name: values[name] if name in values else copy(one.default) for name, one in self.KEYS.items()}
        self.__dict__.update(full, stated=stated)

    def but(self, **changes: Any) -> Any:
        """A copy with some values changed; what counts as stated stays."""
        values = {name: self.__dict__[name] for name in self.KEYS}
        return type(self)(**{**values, **changes, "stated": self.stated})

    def check(self, node: Mapping, path: str, report: Report) -> None:
        """Rules between the keys of this record; a value with a mistake of its own is None here but `stated`."""

    @classmethod
    def read(cls, node: Node, path: str, report: Report) -> Any:
        """The record that a mapping states; None when the node is no mapping."""
        if not isinstance(node, Mapping):
            wanted = ", ".join(list(cls.outside_names())[:4])
            report.problem(node.place, path, f"keys with values are expected here: {wanted} ...")
            return None
        names = cls.outside_names()
        items = _rejoined(node.items, names)
        stated = frozenset(names[word] for word, value in items.items() if word in names and not null(value))
        values, meant = {"stated": stated}, set()
        for word, value in items.items():
            if word not in names:
                other = OTHER_WORDS.get(word.lower().replace("_", " ").replace("-", " "), "")
                meant.add(other if other in names else nearest(word, names))
                hint = f": did you mean {quoted(other)}?" if other in names else did_you_mean(word, names)
                report.problem(node.keys[word], join(path, word), f"unknown key {quoted(word)}{hint}")
            elif not null(value):
                found = cls.KEYS[names[word]].reader.read(value, join(path, word), report)
                if found is not None:
                    values[names[word]] = found
        cls._report_missing(node, path, report, stated | {names[word] for word in meant if word})
        made = cls(**values)
        made.check(node, path, report)
        return made

    @classmethod
    def outside_names(cls) -> dict[str, str]:
        """Attribute name by key as written."""
        return {one.name or name: name for name, one in cls.KEYS.items()}

    @classmethod
    def _report_missing(cls, node: Mapping, path: str, report: Report, stated: frozenset[str]) -> None:
        """Required keys that are not there, unless a misspelt one was meant for it."""
        for word, name in cls.outside_names().items():
            if cls.KEYS[name].required and name not in stated:
                example = f"{word}: {cls.KEYS[name].reader.example}".strip()
                report.problem(node.holder, join(path, word), f"{word} is missing", example)


def _rejoined(items: dict[str, Node], names: dict[str, str]) -> dict[str, Node]:
    """`{thickness: 1,9 mm}` reaches us as `thickness: 1` and a key `9 mm`: put together what the comma parted."""
    made: dict[str, Node] = {}
    last = ""
    for word, value in items.items():
        before = made.get(last)
        if word not in names and null(value) and word[:1].isdigit() and isinstance(before, Scalar):
            made[last] = Scalar(before.place, f"{before.text},{word}", True)
        else:
            made[word], last = value, word
    return made


def null(node: Node) -> bool:
    """Whether the value is empty, which counts as not stated (and removes a key in a variant)."""
    return getattr(node, "is_null", False)
