"""A pocket calculator for printed lines."""

import ast
import math
import re

_ARITHMETIC = (ast.Expression, ast.BinOp, ast.UnaryOp, ast.Constant, ast.operator, ast.unaryop)


def recompute(text):
    """What a pocket calculator gives for a printed expression."""
    text = re.sub(r"(?<![⁻⁰¹²³⁴⁵⁶⁷⁸⁹])(?<!·10)([²³])(?![⁰¹²³⁴⁵⁶⁷⁸⁹])", lambda m: f"**{'23'['²³'.index(m[1])]}", text)
    plain = text.replace("^", "**").replace("−", "-").replace("π", repr(math.pi)).replace("·10", "e").replace(" · ", " * ")
    plain = plain.translate(str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789"))
    tree = ast.parse(plain, mode="eval")
    assert all(isinstance(node, (*_ARITHMETIC, ast.Call, ast.Name, ast.Load)) for node in ast.walk(tree)), text
    return eval(compile(tree, "printed line", "eval"), {"__builtins__": {}, "exp": math.exp, "ln": math.log})
