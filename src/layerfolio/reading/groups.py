"""Readers of lists and mappings: one record, lists of one kind, records under names that the person chooses."""

from collections.abc import Callable
from typing import Any

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.record import Reader, Record, null
from layerfolio.reading.report import Report, join
from layerfolio.reading.tree import Mapping, Node, Sequence


class Nested(Reader):
    """One record."""

    def __init__(self, record: type[Record], example: str = ""):
        self.record, self.example = record, example

    def read(self, node: Node, path: str, report: Report) -> Record | None:
        return self.record.read(node, path, report)

    def schema(self, definitions: Definitions) -> dict:
        return definitions.reference(self.record)


class Later(Reader):
    """One record of a module that is imported only when a file states it, so that other files pay nothing for it."""

    def __init__(self, module: str, name: str, example: str = ""):
        self.module, self.name, self.example = f"layerfolio.reading.{module}", name, example

    @property
    def record(self) -> type[Record]:
        from importlib import import_module

        return getattr(import_module(self.module), self.name)

    def read(self, node: Node, path: str, report: Report) -> Record | None:
        return self.record.read(node, path, report)

    def schema(self, definitions: Definitions) -> dict:
        return definitions.reference(self.record)


class ListOf(Reader):
    """A list, or with `single` also one value without a list. Values with mistakes are left out of the tuple."""

    def __init__(self, item: Reader, example: str = "", least: int = 0, single: bool = False):
        self.item, self.least, self.single = item, least, single
        self.example = example or f"[{item.example}]"

    def read(self, node: Node, path: str, report: Report) -> tuple | None:
        if not isinstance(node, Sequence):
            if self.single:
                one = self.item.read(node, path, report)
                return None if one is None else (one,)
            report.problem(node.place, path, "a list is expected here", self.example)
            return None
        if len(node.items) < self.least:
            report.problem(node.holder, path, "nothing is listed here", self.example)
            return None
        found = [self.item.read(one, f"{path}[{n}]", report) for n, one in enumerate(node.items)]
        return tuple(one for one in found if one is not None)

    def schema(self, definitions: Definitions) -> dict:
        was, definitions.partial = definitions.partial, False  # a list of a variant replaces the whole list
        item = self.item.schema(definitions)
        definitions.partial = was
        many = {"type": "array", "items": item} | ({"minItems": self.least} if self.least else {})
        return {"anyOf": [many, item]} if self.single else many


class MapOf(Reader):
    """Records or values by a name that the person chooses; `name_wrong` says what is wrong with a name."""

    def __init__(self, item: Reader, example: str, least: int = 0, name_wrong: Callable[[str], str] | None = None):
        self.item, self.example, self.least, self.name_wrong = item, example, least, name_wrong

    def read(self, node: Node, path: str, report: Report) -> dict[str, Any] | None:
        if not isinstance(node, Mapping):
            report.problem(node.place, path, "names with their values are expected here", self.example)
            return None
        stated = {name: value for name, value in node.items.items() if not null(value)}
        if len(stated) < self.least:
            report.problem(node.holder, path, "nothing is listed here", self.example)
        for name in [one for one in node.items if one not in stated]:
            report.problem(node.keys[name], join(path, name), f"nothing stands below {name}", self.example)
        for name in stated:
            wrong = self.name_wrong(name) if self.name_wrong else ""
            if wrong:
                report.problem(node.keys[name], join(path, name), wrong, self.example)
        found = {name: self.item.read(value, join(path, name), report) for name, value in stated.items()}
        return {name: value for name, value in found.items() if value is not None}

    def schema(self, definitions: Definitions) -> dict:
        item = self.item.schema(definitions)
        if definitions.partial:
            item = {"anyOf": [item, {"type": "null"}]}
        made = {"type": "object", "additionalProperties": item}
        return {**made, "minProperties": self.least} if self.least and not definitions.partial else made
