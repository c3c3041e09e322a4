"""A step of a calculation set close: as few lines and tables as hold it, publications named once."""

from dataclasses import replace

from layerfolio.sheets.blocks import CalcStep, Equation, Paragraph, Table
from layerfolio.sheets.measuring import width_of

Block = Equation | Table | Paragraph
LINE = 101.0  # mm that the right side of an equation may take


def close(step: CalcStep) -> CalcStep:
    """The same step in less room; nothing is left out."""
    body = [_joined(block) if isinstance(block, Equation) else block for block in step.body]
    return replace(step, body=tuple(_chained(body)), source=_sources(step.source))


def _chained(body: list[Block]) -> list[Block]:
    """Two tables become one where the second goes on, row by row, with what the first ends with."""
    done: list[Block] = []
    for block in body:
        match [*done[-3:], block]:
            case [Paragraph() as first, Table() as upper, Paragraph() as second, Table() as lower] if _goes_on(upper, lower):
                rows = (
                    replace(row, cells=(*row.cells, last.cells[-1])) for row, last in zip(upper.rows, lower.rows, strict=True)
                )
                columns = tuple(
                    replace(column, width=width)
                    for column, width in zip((*upper.columns, lower.columns[-1]), (14, 0, 15, 14), strict=True)
                )
                done[-3:] = [Paragraph(f"{first.text}; {second.text}"), replace(upper, columns=columns, rows=tuple(rows))]
            case _:
                done.append(block)
    return done


def _goes_on(upper: Table, lower: Table) -> bool:
    if len(upper.columns) != 3 or len(lower.columns) != 3 or len(upper.rows) != len(lower.rows):
        return False
    pairs = zip(upper.rows, lower.rows, strict=True)
    return all((one.cells[0], one.cells[-1]) == (other.cells[0], other.cells[1]) for one, other in pairs)


def _joined(equation: Equation) -> Equation:
    """As few lines as hold it: formula, numbers and result on one, with what it is about behind."""
    first, about = _about(equation.rights[0])
    rights = [first, *equation.rights[1:]]
    lines: list[str] = [rights[0]]
    for right in rights[1:]:
        joined = f"{lines[-1]} = {right}"
        if width_of(joined) <= LINE:
            lines[-1] = joined
        else:
            lines.append(right)
    if about:
        place = next((k for k in (len(lines) - 1, 0) if width_of(lines[k] + about) <= LINE), 0)
        lines[place] += about
    return replace(equation, rights=tuple(lines))


def _about(text: str) -> tuple[str, str]:
    """An equation's first line and what it is about."""
    head, mark, about = text.partition("   _")
    return (head, mark + about) if mark else (text, "")


def _sources(text: str) -> str:
    """Places of one publication behind its name, which stands once."""
    places: dict[str, list[str]] = {}
    for one in text.split("; "):
        head, _, place = one.partition(", ")
        places.setdefault(head, []).append(place)
    return "; ".join(
        ", ".join([head, *filter(None, dict.fromkeys(found))]) for head, found in places.items()
    )  # fmt: skip
