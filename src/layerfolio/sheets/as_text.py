"""A sheet as readable plain text: the words of the page in their order, for golden tests and the terminal."""

from collections.abc import Callable, Iterator

from layerfolio.sheets import blocks as b
from layerfolio.sheets.markup import as_plain

Lines = Iterator[str]


def as_text(sheet: b.Sheet) -> str:
    """The whole sheet, one line for each line of meaning; ends with a newline."""
    lines = [f"=== {sheet.number}  {sheet.title}  (scale {sheet.scale}) ==="]
    for block in sheet.blocks:
        lines.append("")
        lines.extend(_lines(block))
    if sheet.legend:
        lines += ["", "legend: " + ", ".join(sheet.legend)]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _lines(block: b.Block) -> Lines:
    return _WRITERS[type(block)](block)


def _inner(parts: tuple, indent: str = "    ") -> Lines:
    for part in parts:
        for line in _lines(part):
            yield indent + line


def _head(block: b.Head) -> Lines:
    tag = f"[{block.tag}] " if block.tag else ""
    yield "  |  ".join(as_plain(t) for t in (tag + block.title, block.subtitle, block.phrase, block.under) if t)


def _heading(block: b.Heading) -> Lines:
    yield f"## {as_plain(block.text)}"


def _paragraph(block: b.Paragraph) -> Lines:
    yield from as_plain(block.text).split("\n")


def _bullets(block: b.Bullets) -> Lines:
    mark = "[ ]" if block.marker == "box" else "-"
    for item in block.items:
        yield f"{mark} {as_plain(item)}"


def _pairs(block: b.Pairs) -> Lines:
    for label, value in block.rows:
        yield f"{as_plain(label)}: {as_plain(value)}"


def _cell(cell: b.Cell) -> str:
    if isinstance(cell, b.VerdictCell):
        return " ".join(filter(None, (f"<{cell.verdict}>", _cell(cell.text))))
    return as_plain(cell).replace("\n", " / ")


def _table(block: b.Table) -> Lines:
    heads = [as_plain(c.title) + (f" ({as_plain(c.unit)})" if c.unit else "") for c in block.columns]
    yield " | ".join(heads)
    for row in block.rows:
        yield ("= " if row.total else "") + " | ".join(map(_cell, row.cells))
        if row.after:
            yield "    " + _cell(row.after)


def _figure(block: b.Figure) -> Lines:
    drawing = block.drawing
    scale = f", {drawing.scale_text}" if drawing.scale_text else ""
    yield f"(figure: {drawing.name}{scale})"


def _equation(block: b.Equation) -> Lines:
    left = as_plain(block.left)
    for number, right in enumerate(block.rights):
        last = number == len(block.rights) - 1
        total = f"  ... {as_plain(block.total)}" if block.total and last else ""
        yield f"{left if number == 0 else ' ' * len(left)} = {as_plain(right)}{total}"


def _calculation(block: b.Calculation) -> Lines:
    total = f" | {as_plain(block.total_title)} ({as_plain(block.total_unit)})" if block.total_title else ""
    yield f"Step{total} | Source"
    for step in block.steps:
        yield f"{step.number}  {as_plain(step.title)}  [{as_plain(step.source)}]"
        yield from _inner(step.body)


def _band(block: b.Band) -> Lines:
    yield f"{as_plain(block.required)} | {as_plain(block.provided)} | <{block.verdict}> | {as_plain(block.where)}"


def _result_box(block: b.ResultBox) -> Lines:
    for name, figure, small in block.figures:
        yield " ".join(filter(None, (f"{as_plain(name)}: {as_plain(figure)}", as_plain(small))))
    if block.verdicts:
        for subject, verdict in block.verdicts:
            yield f"{as_plain(subject)} <{verdict}>"
        return
    verdict = f"<{block.verdict}>" if block.verdict else ""
    yield " ".join(filter(None, (as_plain(block.clause), verdict, as_plain(block.remark))))


def _count(block: b.VerdictCount) -> Lines:
    yield "  ".join(f"<{verdict}> {count}" for verdict, count in block.counts)


def _index(block: b.Index) -> Lines:
    yield "(index of the sheets)"


def _note_box(block: b.NoteBox) -> Lines:
    yield f"{as_plain(block.title)}: " + "  ".join(f"[ ] {as_plain(tick)}" for tick in block.ticks)


def _free_space(block: b.FreeSpace) -> Lines:
    yield f"(space: {as_plain(block.text)})"


def _numbered(block: b.Numbered) -> Lines:
    yield f"{block.number} {as_plain(block.label)}".strip()
    yield from _inner(block.blocks)


def _beside(block: b.Beside) -> Lines:
    yield "left:"
    yield from _inner(block.left)
    yield "right:"
    yield from _inner(block.right)


def _framed(block: b.Framed) -> Lines:
    yield f"[[ {as_plain(block.title)} ]]"
    yield from _inner(block.blocks)


def _nothing(block: b.Block) -> Lines:
    yield from ()


_WRITERS: dict[type, Callable[..., Lines]] = {
    b.Head: _head, b.Heading: _heading, b.Paragraph: _paragraph, b.Bullets: _bullets, b.Pairs: _pairs, b.Table: _table,
    b.Figure: _figure, b.Equation: _equation, b.Calculation: _calculation, b.Band: _band, b.ResultBox: _result_box,
    b.VerdictCount: _count, b.Index: _index, b.NoteBox: _note_box, b.FreeSpace: _free_space, b.Numbered: _numbered,
    b.Beside: _beside, b.Framed: _framed, b.Space: _nothing, b.FieldBreak: _nothing,
}  # fmt: skip
