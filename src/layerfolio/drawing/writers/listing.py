"""A drawing as text, for golden tests and for readers without a viewer: one line for each mark, hatches in short."""

from collections.abc import Iterator
from hashlib import sha256

from layerfolio.drawing.hatches.strokes import ROLE
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Drawing, Group, Line, Mark, Point, Stipple, Text
from layerfolio.drawing.writers.svg_paths import number

INDENT = "  "


def write(drawing: Drawing) -> str:
    """The listing; lengths in mm with two decimals, y upward. A hatch is its number of marks and their check sum."""
    scale = drawing.scale_text or ("no scale" if drawing.scale is None else f"1 : {number(drawing.scale)}")
    lines = [f"{drawing.name}: {_mm(drawing.width)} x {_mm(drawing.height)}, {scale}"]
    lines += [f"families {', '.join(drawing.families)}"] if drawing.families else []
    lines += [f"note {one}" for one in drawing.notes]
    lines += _lines(drawing.marks, INDENT)
    return "\n".join(lines) + "\n"


def _lines(marks: tuple[Mark, ...], indent: str) -> Iterator[str]:
    for mark in marks:
        match mark:
            case Group():
                yield f"{indent}{mark.name}:"
                yield from _lines(mark.marks, indent + INDENT)
            case Clip() if all(getattr(one, "role", "") == ROLE for one in mark.marks):
                yield f"{indent}hatch within {_points(mark.outline)}: {_short(mark.marks)}"
            case Clip():
                yield f"{indent}clip {_points(mark.outline)}:"
                yield from _lines(mark.marks, indent + INDENT)
            case Line() | Curve() | Circle() if mark.role == ROLE:
                yield f"{indent}hatch: {_short((mark,))}"
            case _:
                yield indent + _one(mark)


def _one(mark: Mark) -> str:
    match mark:
        case Line():
            looks = _looks(mark.width, mark.halo, dash=mark.dash, round_ends=mark.round_ends)
            return f"line{_role(mark)} {looks}: {_points(mark.points)}"
        case Curve():
            return f"curve{_role(mark)} {_looks(mark.width, mark.halo, mark.fill)}: {_commands(mark)}"
        case Circle():
            return f"circle{_role(mark)} {_looks(mark.width, 0, mark.fill)}: {_point(mark.centre)} r {_mm(mark.radius)}"
        case Area():
            return f"area {mark.layer} [{mark.family}]: {_points(mark.outline)}"
        case Stipple():
            turn = f" turn {number(mark.turn)}" if mark.turn else ""
            return f"stipple {mark.tile} from {_point(mark.shift)}{turn}: {_points(mark.outline)}"
        case Text():
            return f"text{_role(mark)} {_letters(mark)}: {_point(mark.at)} {mark.text!r}"
    raise TypeError(f"not a mark: {mark!r}")


def _letters(text: Text) -> str:
    extras = (("turn", text.turn), ("spaced", text.spaced), ("box", text.box))
    shown = [f"{name} {number(value)}" for name, value in extras if value]
    return " ".join([text.style, number(text.size), text.anchor, *shown])


def _looks(width: float, halo: float, fill: str = "", *, dash: tuple[float, ...] = (), round_ends: bool = False) -> str:
    parts = [_mm(width)] if width else []
    parts += [f"dash {'/'.join(map(number, dash))}"] if dash else []
    parts += [f"halo {_mm(halo)}"] if halo else []
    parts += [f"filled {fill}"] if fill else []
    parts += ["round"] if round_ends else []
    return ", ".join(parts)


def _short(marks: tuple[Mark, ...]) -> str:
    """Number of drawn things and a check sum over all their lengths."""
    text = "\n".join(map(_one, marks))
    count = sum(_count(one) for one in marks)
    return f"{count} drawn, {sha256(text.encode()).hexdigest()[:10]}"


def _count(mark: Mark) -> int:
    return sum(command[0] == "M" for command in mark.commands) if isinstance(mark, Curve) else 1


def _commands(curve: Curve) -> str:
    return " ".join(kind + ",".join(map(_mm, values)) for kind, *values in curve.commands)


def _role(mark: Line | Curve | Circle | Text) -> str:
    return f" {mark.role}" if mark.role else ""


def _points(points: tuple[Point, ...]) -> str:
    return " ".join(map(_point, points))


def _point(point: Point) -> str:
    return f"({_mm(point[0])} {_mm(point[1])})"


def _mm(value: float) -> str:
    shown = f"{value:.2f}"
    return "0.00" if shown == "-0.00" else shown
