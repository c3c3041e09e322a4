"""Readers of quantities: a number with its unit, of one kind, within bounds."""

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.record import Reader
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.scalars import DECIMAL, scalar
from layerfolio.reading.tree import Node, Scalar
from layerfolio.units.grammar import QuantityError, parse
from layerfolio.units.quantity import Quantity
from layerfolio.units.table import KINDS


class Measure(Reader):
    """A quantity of one kind (the first of `kinds` whose unit fits), within bounds in the house unit."""

    def __init__(
        self,
        *kinds: str,
        above: float | None = 0.0,
        least: float | None = None,
        most: float | None = None,
        example: str = "",
    ):
        self.kinds, self.above, self.least, self.most = kinds, above if least is None else None, least, most
        self.example = example or KINDS[kinds[0]].example

    def read(self, node: Node, path: str, report: Report) -> Quantity | None:
        text = scalar(node, path, report, f"a {KINDS[self.kinds[0]].noun} with its unit", self.example)
        if text is None:
            return None
        first = None
        for kind in self.kinds:
            try:
                quantity = parse(text, kind)
            except QuantityError as error:
                first = first or error
                continue
            wrong = self.wrong(quantity.value, text)
            if wrong:
                report.problem(node.place, path, wrong, self.example)
            return None if wrong else quantity
        assert first is not None
        report.problem(node.place, path, first.message, self.example)
        return None

    def wrong(self, value: float, text: str) -> str:
        """What is wrong with a single value; empty when nothing is."""
        return self.limits(value, text)

    def limits(self, value: float, text: str) -> str:
        """Which bound the value breaks; empty when none."""
        unit = KINDS[self.kinds[0]].unit
        if self.above is not None and value <= self.above:
            return f"{quoted(text)} must be above {_bound(self.above, unit)}"
        if self.least is not None and value < self.least:
            return f"{quoted(text)} must not be below {_bound(self.least, unit)}"
        if self.most is not None and value > self.most:
            return f"{quoted(text)} is over {_bound(self.most, unit)}"
        return ""

    def schema(self, definitions: Definitions) -> dict:
        noun = KINDS[self.kinds[0]].noun
        return {"type": "string", "pattern": "[0-9½¼¾]", "examples": [self.example], "title": f"{noun} with its unit"}


def _bound(value: float, unit: str) -> str:
    if not value:
        return "zero"
    return f"{value * 100:g} %" if unit == "1" else f"{value:g} {unit}"


class Humidity(Measure):
    """A relative humidity, in percent."""

    def __init__(self) -> None:
        super().__init__("share", most=1.0)
        self.example = "45 %"

    def read(self, node: Node, path: str, report: Report) -> Quantity | None:
        if isinstance(node, Scalar) and DECIMAL.fullmatch(node.text):
            value = float(node.text)
            meant = f"{value * 100:g} %" if 0 < value <= 1 else f"{value:g} %"
            report.problem(node.place, path, f"relative humidity needs its unit: write {meant}", meant)
            return None
        return super().read(node, path, report)

    def wrong(self, value: float, text: str) -> str:
        if 0 < value <= 0.01:
            return f"{quoted(text)} is a humidity of hardly anything: write {value * 10000:g} % if that is meant"
        return self.limits(value, text)
