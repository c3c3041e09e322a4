"""From a template's text to blocks.

A template (templates/*.txt, Jinja2) renders to small plain text, one construct a line:

    ! tag | title | phrase     head of the page
    # text     ## text         sub-heading, sub-heading over a rule
    @ label    @@ label        numbered item until the next one (@@: a rule below)
    - text     -- text         bullets, bullets in two columns
    o text     oo text         boxes to tick on site, in two columns
    anything else              a paragraph; an empty line ends it

An expression whose value is a block stands for that block. A person's text is escaped and can never begin a construct.
"""

from collections.abc import Iterable

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from layerfolio.home import folder
from layerfolio.sheets.blocks import Block, Bullets, Head, Heading, Numbered, Paragraph
from layerfolio.sheets.markup import plain

_TEXT, _BLOCK = "\x02", "\x03"
_BULLETS = {"- ": ("square", 1), "-- ": ("square", 2), "o ": ("box", 1), "oo ": ("box", 2)}


class Marked(str):
    """Text in our own mark-up, made by us: not escaped again."""


class Templates:
    """Renders the sheet texts; one for each package, so that nothing outlives a build."""

    def __init__(self) -> None:
        self._blocks: list[Block] = []
        self._environment = Environment(
            loader=FileSystemLoader(folder("templates")), undefined=StrictUndefined, finalize=self._finalize,
            trim_blocks=True, lstrip_blocks=True, keep_trailing_newline=False, autoescape=False,
        )  # fmt: skip

    def _finalize(self, value: object) -> str:
        if isinstance(value, Marked):
            return _TEXT + value
        if isinstance(value, str):
            return _TEXT + " ".join(plain(value).split())
        if isinstance(value, Block):
            self._blocks.append(value)
            return f"{_BLOCK}{len(self._blocks) - 1}{_BLOCK}"
        raise TypeError(f"a template may print text and blocks only, not {type(value).__name__}: format figures first")

    def blocks(self, name: str, **values: object) -> tuple[Block, ...]:
        """The blocks of templates/<name>.txt with these values."""
        self._blocks = []
        text = self._environment.get_template(f"{name}.txt").render(**values)
        return _numbered(_parse(text.splitlines(), self._blocks))


def _parse(lines: Iterable[str], made: list[Block]) -> list[Block | tuple[str, bool]]:
    """Blocks in order; a numbered item begins as (label, rule)."""
    found: list[Block | tuple[str, bool]] = []
    paragraph: list[str] = []
    bullets: list[str] = []
    kind = ""

    def close() -> None:
        nonlocal kind
        if paragraph:
            found.append(Paragraph(" ".join(paragraph)))
            paragraph.clear()
        if bullets:
            marker, columns = _BULLETS[kind]
            found.append(Bullets(tuple(bullets), marker, columns))
            bullets.clear()
        kind = ""

    for raw in lines:
        line = raw.strip(" ")
        start = next((s for s in _BULLETS if line.startswith(s)), "")
        if start:
            if start != kind:
                close()
            kind = start
            bullets.append(_clean(line[len(start) :]))
            continue
        if not line or line[0] in "!#@" + _BLOCK:
            close()
            if line:
                found.append(_construct(line, made))
        elif bullets:
            bullets[-1] += " " + _clean(line)
        else:
            paragraph.append(_clean(line))
    close()
    return found


def _clean(text: str) -> str:
    return text.replace(_TEXT, "").strip()


def _construct(line: str, made: list[Block]) -> Block | tuple[str, bool]:
    if line.startswith(_BLOCK):
        return made[int(line.strip(_BLOCK))]
    if line.startswith("@"):
        return _clean(line.lstrip("@")), line.startswith("@@")
    if line.startswith("#"):
        return Heading(_clean(line.lstrip("#")), rule=line.startswith("##"))
    tag, title, phrase = (*(_clean(part) for part in line[1:].split(" | ")), "", "")[:3]
    return Head(tag, title, phrase)


def _numbered(parsed: list[Block | tuple[str, bool]]) -> tuple[Block, ...]:
    """Gather the blocks after each label into a numbered item."""
    found: list[Block] = []
    label: tuple[str, bool] | None = None
    inside: list[Block] = []
    count = 0

    def close() -> None:
        nonlocal count
        if label:
            count += 1
            found.append(Numbered(str(count), label[0], tuple(inside), label[1]))
            inside.clear()

    for one in parsed:
        if isinstance(one, tuple):
            close()
            label = one
        elif label:
            inside.append(one)
        else:
            found.append(one)
    close()
    return tuple(found)
