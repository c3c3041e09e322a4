"""What a YAML parser complains about, in words for a person who never heard of tokens and scalars."""

import re

import yaml

from layerfolio.reading import slips

_BEGINNINGS = ("while scanning an anchor", "while scanning an alias", "while scanning a block scalar")
_ENTRIES = ("block sequence entries are not allowed", "mapping keys are not allowed")

_WORDS = (  # (pattern of the parser's message, what is wrong, an example of what is right)
    (
        r"mapping values are not allowed",
        "a colon is not expected here: indent the line, or quote the text",
        'title: "W1: north"',
    ),
    (r"could not find expected ':'", "a key stands without its colon", "title: Tern Point chandlery"),
    (r"did not find expected key", "the line is indented otherwise than its neighbours, or a colon is missing", ""),
    (
        r"did not find expected '-' indicator",
        "the line does not belong to the list above it: look at its indentation",
        "",
    ),
    (r"unexpected end of stream", "a quotation mark that opens here is never closed", '"text in quotes"'),
    (r"unexpected document indicator", "a quotation mark that opens here is not closed before ---", '"text in quotes"'),
    (r"maximum nesting depth", "values are nested more than 40 deep", ""),
    (r"undefined tag handle", "a tag (a word with !) has no meaning here: leave it out", '"text in quotes"'),
    (r"unknown escape character", "a backslash stands in double quotes: use single quotes", r"'C:\data'"),
    (r"did not find expected node content", "a value is missing here, or a bracket closes that was never opened", ""),
    (r"did not find expected <document start>", "text stands after the end of the project", ""),
    (r"invalid (leading|trailing|Unicode|incomplete)", "the text is not valid here", ""),
)


def in_words(error: yaml.YAMLError, text: str) -> tuple[tuple[int, int], str, str]:
    """(line, column), message and example for what the parser could not read."""
    if not isinstance(error, yaml.MarkedYAMLError) or error.problem_mark is None:
        return _unreadable_character(text)
    line, column = error.problem_mark.line + 1, error.problem_mark.column + 1
    problem = error.problem or ""
    if found := _slip(error, line, column, text):
        return found
    if "cannot start any token" in problem or "tab character" in problem:
        return _bad_start(line, column, text)
    if "or ']'" in problem or "or '}'" in problem:
        return _unclosed(error, line, column)
    if "node content" in problem and not text.splitlines()[line - 1 :]:
        return (line, column), "the file ends here, and a value or a closing bracket is missing", "[1, 2]"
    for pattern, message, example in _WORDS:
        if re.search(pattern, problem):
            opens = "opens here" in message and error.context_mark
            where = (error.context_mark.line + 1, error.context_mark.column + 1) if opens else (line, column)
            return where, message, example
    return (line, column), f"this is not readable as YAML ({problem or 'unknown reason'})", ""


def _slip(error: yaml.MarkedYAMLError, line: int, column: int, text: str) -> slips.Slip | None:
    """What a person did, where that can be told from the text better than from the parser's message."""
    problem, opened = error.problem or "", error.context_mark
    if (error.context or "") in _BEGINNINGS and opened:
        return slips.beginning(text, opened.line + 1, opened.column + 1)
    if any(words in problem for words in _ENTRIES):
        return slips.beginning(text, line, column)
    found = slips.quotation(text, line) or slips.odd_space_in(text, line)
    if not found and "mapping values" in problem:
        found = slips.colon_before(text, line, column)
    elif not found and "expected ':'" in problem and opened:
        found = slips.odd_space_in(text, opened.line + 1) or slips.colon(text, opened.line + 1)
    elif not found and "expected key" in problem:
        found = slips.after_bracket(text, line, column)
    return found


def _bad_start(line: int, column: int, text: str) -> tuple[tuple[int, int], str, str]:
    lines = slips.lines_of(text)
    found = lines[line - 1][column - 1 : column] if line <= len(lines) else ""
    if found == "\t":
        return (line, column), "a tab cannot indent a line: use spaces", "  title: Tern Point chandlery"
    return slips.beginning(text, line, column)


def _unclosed(error: yaml.MarkedYAMLError, line: int, column: int) -> tuple[tuple[int, int], str, str]:
    bracket = "]" if "']'" in error.problem else "}"
    opened = error.context_mark
    message = f"the bracket that opens here is not closed by {bracket}, or a comma is missing, before line {line}"
    example = "[bracing, vapour control]" if bracket == "]" else "{material: spruce, width: 38 mm}"
    where = (opened.line + 1, opened.column + 1) if opened else (line, column)
    return where, f"{message}, column {column}", example


def _unreadable_character(text: str) -> tuple[tuple[int, int], str, str]:
    """The first character that YAML does not allow; the parser counts it in bytes, a person in characters."""
    allowed = re.compile("[\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]*")
    position = allowed.match(text).end()  # type: ignore[union-attr]
    line, column = text.count("\n", 0, position) + 1, position - text.rfind("\n", 0, position)
    code = ord(text[position]) if position < len(text) else 0
    return (line, column), f"the control character U+{code:04X} stands in the text: delete it", ""
