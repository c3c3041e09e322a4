"""Readers of figures that come in more than one number: by dry and wet cup, and month by month."""

from typing import Any

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Frozen, Reader, null
from layerfolio.reading.report import Report, did_you_mean, join, quoted
from layerfolio.reading.scalars import DECIMAL
from layerfolio.reading.tree import Mapping, Node, Scalar, Sequence
from layerfolio.units.grammar import QuantityError, parse


class Cups(Frozen):
    """A figure by dry and wet cup. One value serves both (`single`); a cup that is not stated is None."""

    def __init__(self, dry: Any = None, wet: Any = None, at_thickness: Any = None, single: bool = False):
        self.__dict__.update(dry=dry, wet=wet, at_thickness=at_thickness, single=single)


class ByCup(Reader):
    """One value, or `{dry: ..., wet: ...}`; with `thickness` also `at_thickness` (and `value` for a single one)."""

    def __init__(self, value: Reader, thickness: Reader | None = None):
        self.value, self.thickness, self.example = value, thickness, value.example
        self.readers = {"dry": value, "wet": value}
        if thickness:
            self.readers |= {"value": value, "at_thickness": thickness}

    def read(self, node: Node, path: str, report: Report) -> Cups | None:
        if not isinstance(node, Mapping):
            one = self.value.read(node, path, report)
            return None if one is None else Cups(one, one, None, True)
        before = len(report.problems)
        found = self._parts(node, path, report)
        if len(report.problems) > before:
            return None
        if "value" in found:
            return Cups(found["value"], found["value"], found.get("at_thickness"), True)
        return Cups(found.get("dry"), found.get("wet"), found.get("at_thickness"))

    def _parts(self, node: Mapping, path: str, report: Report) -> dict[str, Any]:
        found = {}
        for name, inner in node.items.items():
            if name not in self.readers:
                message = f"unknown key {quoted(name)}{did_you_mean(name, self.readers)}"
                report.problem(node.keys[name], join(path, name), message)
            elif not null(inner):
                found[name] = self.readers[name].read(inner, join(path, name), report)
        if not {"dry", "wet", "value"} & {name for name, inner in node.items.items() if not null(inner)}:
            report.problem(node.place, path, "a value is missing: dry, wet or both", f"{{dry: {self.example}}}")
        elif "value" in found and {"dry", "wet"} & found.keys():
            report.problem(node.keys["value"], join(path, "value"), "one value and values by cup cannot both stand")
        return found

    def schema(self, definitions: Definitions) -> dict:
        inner = {name: reader.schema(definitions) for name, reader in self.readers.items()}
        by_cup = {"type": "object", "properties": inner, "additionalProperties": False, "minProperties": 1}
        return {"anyOf": [self.value.schema(definitions), by_cup]}


class Series(Frozen):
    """Twelve monthly values, January first, in the house unit of `kind`; `unit` as stated."""

    def __init__(self, kind: str, unit: str, values: tuple[float, ...]):
        self.__dict__.update(kind=kind, unit=unit, values=values)


class Monthly(Reader):
    """`{unit: degC, values: [twelve numbers]}`."""

    def __init__(self, value: Measure, units: tuple[str, ...]):
        self.value, self.units = value, units
        self.example = f"{{unit: {_in_yaml(units[0])}, values: [12 numbers, January first]}}"

    def read(self, node: Node, path: str, report: Report) -> Series | None:
        if not isinstance(node, Mapping):
            report.problem(node.place, path, "a unit and twelve values are expected here", self.example)
            return None
        before = len(report.problems)
        for name in node.items:
            if name not in ("unit", "values"):
                message = f"unknown key {quoted(name)}{did_you_mean(name, ('unit', 'values'))}"
                report.problem(node.keys[name], join(path, name), message)
        for name in ("unit", "values"):
            if name not in node.items or null(node.items[name]):
                report.problem(node.holder, join(path, name), f"{name} is missing", self.example)
        if len(report.problems) > before:
            return None
        unit = self._unit(node.items["unit"], join(path, "unit"), report)
        values = self._values(node.items["values"], unit, join(path, "values"), report) if unit else None
        return Series(self.value.kinds[0], unit, values) if unit and values else None

    def _unit(self, node: Node, path: str, report: Report) -> str | None:
        if isinstance(node, Scalar) and node.text in self.units:
            return node.text
        text = quoted(node.text) if isinstance(node, Scalar) else "this"
        report.problem(node.place, path, f"{text} is not a unit for these values", " | ".join(self.units))
        return None

    def _values(self, node: Node, unit: str, path: str, report: Report) -> tuple[float, ...] | None:
        if not isinstance(node, Sequence) or len(node.items) != 12:
            count = f"{len(node.items)} values stand" if isinstance(node, Sequence) else "no list stands"
            report.problem(node.place, path, f"{count} here, 12 are needed, January first", self.example)
            return None
        before = len(report.problems)
        found = [self._one(one, unit, f"{path}[{n}]", report) for n, one in enumerate(node.items)]
        if len(report.problems) > before:
            return None
        if unit == "%" and max(found) <= 0.01:
            message = f"the values are shares: write percent, {max(found) * 10000:g} instead of {max(found) * 100:g}"
            report.problem(node.place, path, message, self.example)
            return None
        return tuple(found)

    def _one(self, node: Node, unit: str, path: str, report: Report) -> float:
        if not isinstance(node, Scalar) or not DECIMAL.fullmatch(node.text):
            text = quoted(node.text) if isinstance(node, Scalar) else "this"
            report.problem(node.place, path, f"{text} is not a bare number: the unit stands once, under unit", "-12")
            return 0.0
        text = f"{node.text.rstrip('.')} {unit}"
        try:
            value = parse(text, self.value.kinds[0]).value
        except QuantityError as error:
            report.problem(node.place, path, error.message, "-12")
            return 0.0
        if wrong := self.value.limits(value, text):
            report.problem(node.place, path, wrong, self.value.example)
        return value

    def schema(self, definitions: Definitions) -> dict:
        values = {"type": "array", "items": {"type": "number"}, "minItems": 12, "maxItems": 12}
        properties = {"unit": {"enum": list(self.units)}, "values": values}
        required = [] if definitions.partial else ["unit", "values"]
        return {"type": "object", "properties": properties, "additionalProperties": False, "required": required}


def _in_yaml(unit: str) -> str:
    return f'"{unit}"' if unit == "%" else unit
