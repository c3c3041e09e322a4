"""Spell a recorded step: its own return expression in symbols, with the numbers put in, and the result.

Nothing is typed twice: the text is read from the formula's source with `ast` when something is printed.
"""

import ast
import inspect
import textwrap
from dataclasses import dataclass
from functools import cache

from layerfolio.glossary import term
from layerfolio.steps.formula import Formula
from layerfolio.steps.trace import Argument, Step
from layerfolio.units.show import as_number, significant

PI = "π"
"""Printed as it is, in symbols and in numbers: pocket calculators have a key for it."""
_RAISED = {2: "²", 3: "³"}
_SUM, _PRODUCT, _MINUS, _POWER, _ATOM = range(1, 6)
_OPERATORS = {ast.Add: (" + ", _SUM), ast.Sub: (" − ", _SUM), ast.Mult: (" · ", _PRODUCT), ast.Div: (" / ", _PRODUCT)}


@dataclass(frozen=True, slots=True)
class Spelled:
    """One step in words for printing; mark-up of sheets.markup ({R_si} is a symbol). `unit` is a unit string."""

    left: str
    symbols: str
    numbers: str
    result: str
    unit: str
    arguments: tuple[tuple[str, str | tuple[str, ...], str], ...] = ()  # name, shown, unit string


@cache
def _body(formula: Formula) -> ast.expr:
    """The return expression of a formula."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(formula.function)))
    returns = [node for node in ast.walk(tree) if isinstance(node, ast.Return)]
    if len(returns) != 1 or returns[0].value is None:
        raise TypeError(f"{formula.name}: a formula has exactly one return expression")
    return returns[0].value


class _Speller:
    """Walks an expression; `words` gives the text of each name, a tuple of texts for a repeated quantity."""

    def __init__(self, words: dict[str, str | tuple[str, ...]], symbolic: bool):
        self.words, self.symbolic = words, symbolic

    def text(self, node: ast.expr, outer: int = 0) -> str:
        words, rank = self.spell(node)
        return f"({words})" if rank < outer else words

    def spell(self, node: ast.expr) -> tuple[str, int]:
        if isinstance(node, ast.BinOp):
            return self._binary(node)
        if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub):
            return "−" + self.text(node.operand, _PRODUCT), _MINUS
        if isinstance(node, ast.Call):
            return self._call(node)
        if isinstance(node, ast.Name):
            words = PI if node.id == "pi" else self.words[node.id]
            assert isinstance(words, str)
            return words, _SUM if words.startswith("−") else _ATOM
        if isinstance(node, ast.Constant):
            return f"{node.value:g}", _ATOM
        raise TypeError(f"a formula cannot be spelled with {ast.dump(node)}")

    def _binary(self, node: ast.BinOp) -> tuple[str, int]:
        if isinstance(node.op, ast.Pow):
            if isinstance(node.right, ast.Constant) and node.right.value in _RAISED:
                return self.text(node.left, _ATOM) + _RAISED[node.right.value], _POWER
            return f"{self.text(node.left, _ATOM)}^{self.text(node.right, _ATOM)}", _POWER
        sign, rank = _OPERATORS[type(node.op)]
        strict = isinstance(node.op, ast.Sub | ast.Div)
        right = self.text(node.right, rank + 1 if strict else rank)
        if right.startswith("−"):
            right = f"({right})"
        return self.text(node.left, rank) + sign + right, rank

    def _call(self, node: ast.Call) -> tuple[str, int]:
        name = getattr(node.func, "id", getattr(node.func, "attr", ""))
        if name == "sum":
            return self._sum(node.args[0])
        if name == "prod":
            return self._product(node.args[0])
        return f"{name}({'; '.join(self.text(a) for a in node.args)})", _ATOM

    def _product(self, node: ast.expr) -> tuple[str, int]:
        words = self.words[node.id]
        return (f"Π {words}", _PRODUCT) if self.symbolic else (" · ".join(words), _PRODUCT)

    def _sum(self, node: ast.expr) -> tuple[str, int]:
        if isinstance(node, ast.Name):
            words = self.words[node.id]
            if self.symbolic:
                return f"Σ {words}", _PRODUCT
            return (" + ".join(words), _SUM if len(words) > 1 else _ATOM)
        assert isinstance(node, ast.GeneratorExp)
        names = [n.id for n in ast.walk(node.generators[0].target) if isinstance(n, ast.Name)]
        if self.symbolic:
            return f"Σ {self.text(node.elt, _PRODUCT)}", _PRODUCT
        rows = zip(*(self.words[name] for name in names), strict=True)
        parts = [_Speller(dict(zip(names, row, strict=True)), False).text(node.elt, _SUM) for row in rows]
        return " + ".join(parts), _SUM if len(parts) > 1 else _PRODUCT


def shown(value: float, digits: int = 4) -> str:
    """At most that many significant digits; a value that is exactly shorter prints short."""
    short = f"{value:.{digits}g}"
    if "e" not in short and abs(float(short) - value) <= 1e-12 * abs(value):
        return short.replace("-", "−")
    return significant(value, digits)


def _map(argument: Argument, change) -> Argument:
    return tuple(map(change, argument)) if isinstance(argument, tuple) else change(argument)


def _words(arguments: dict[str, Argument], digits: int) -> dict[str, str | tuple[str, ...]]:
    return {name: _map(value, lambda v: shown(v, digits)) for name, value in arguments.items()}  # type: ignore[misc]


def _fitting_words(formula: Formula, arguments: dict[str, Argument], result: float) -> dict:
    """As few digits as let the printed line recompute to the very digits of the printed result."""
    for digits in range(4, 12):
        words = _words(arguments, digits)
        read = {name: _map(text, as_number) for name, text in words.items()}  # type: ignore[arg-type]
        if significant(formula.function(**read), 4) == significant(result, 4):
            return words
    return words


def customary_values(step: Step) -> tuple[dict[str, Argument], float] | None:
    """Arguments and result in customary units, or None where the formula does not hold in them."""
    from layerfolio.units.show import in_units

    def convert(name: str):
        return lambda v: in_units(v, term(name).customary)

    arguments = {name: _map(value, convert(name)) for name, value in step.arguments}
    result = in_units(step.value, term(step.formula.result).customary)
    try:
        fits = abs(step.formula.function(**arguments) - result) <= 1e-4 * abs(result)
    except (ZeroDivisionError, ValueError):
        return None
    return (arguments, result) if fits else None


def spell(step: Step, system: str = "metric") -> Spelled:
    """The step in symbols, in numbers and its result; customary units where the formula holds in them, else SI."""
    formula, result, unit = step.formula, step.value, term(step.formula.result).si
    arguments = dict(step.arguments)
    converted = customary_values(step) if system == "customary" else None
    if converted:
        arguments, result = converted
        unit = term(formula.result).customary
    printed = shown(result)
    words = _fitting_words(formula, arguments, as_number(printed))
    body = _body(formula)
    symbols = _Speller({name: "{" + name + "}" for name in arguments}, True).text(body)
    numbers = _Speller(words, False).text(body)
    side = "customary" if converted else "si"
    listed = tuple((name, text, getattr(term(name), side)) for name, text in words.items())
    return Spelled("{" + formula.result + "}", symbols, numbers, printed, unit, listed)
