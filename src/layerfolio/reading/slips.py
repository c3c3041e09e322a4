"""Slips that a parser of YAML reports far from where they were made: found in the text itself, with their own place."""

import re
from typing import NamedTuple

from layerfolio.reading.signs import ODD_SPACES, odd_space

_ODD = re.compile(rf"(?:^ *(?:- *)?|:)([{ODD_SPACES}])")
_BREAK = re.compile(r"\r\n|[\r\n\u0085\u2028\u2029]")
_COMMENT = r"(?:^|(?<=[ \t]))\#[^\n]*"
_OPENING = r"(?:^[ ]*(?:-[ ]+)*|[:?][ ]+(?:-[ ]+)*|[\[{][ ]*|,[ ]+)(?P<quote>['\"])"
_NEXT = re.compile(f"{_COMMENT}|{_OPENING}", re.M)
_QUOTED = {"'": re.compile(r"(?:[^']|'')*+'"), '"': re.compile(r'(?:[^"\\]|\\.)*+"', re.S)}
_MAY_FOLLOW = re.compile(r"[ \t\r]*(?:$|[ \t]\#|[,\]}]|:(?:[ \t\r]|$))", re.M)
_KEY_ALONE = re.compile(r" *(?:- +)?([^\s:#'\"\[{&*!|>%@`-][^\s:]*)(:?)")


class Slip(NamedTuple):
    """Where, counted from 1, what is wrong, and an example of what is right."""

    place: tuple[int, int]
    message: str
    example: str


def lines_of(text: str) -> list[str]:
    """The lines as a parser of YAML counts them."""
    return _BREAK.split(text)


def odd_space_in(text: str, line: int) -> Slip | None:
    """A character that only looks like a space, where one counts: at most two lines of text back from `line`."""
    for number in (line, _line_before(text, line)):
        found = _ODD.search(_line(text, number))
        if found:
            return Slip((number, found.start(1) + 1), odd_space(found[1]), "  title: Tern Point chandlery")
    return None


def quotation(text: str, line: int) -> Slip | None:
    """The first quotation mark, not below `line`, that is never closed, or too early."""
    at, last = 0, sum(len(one) + 2 for one in lines_of(text)[:line])
    while (found := _NEXT.search(text, at)) and found.start() < last:
        at = found.end()
        if quote := found["quote"]:
            closing = _QUOTED[quote].match(text, at)
            if closing is None or not _MAY_FOLLOW.match(text, closing.end()):
                return _quotation(text, quote, at, closing.end() if closing else len(text))
            at = closing.end()
    return None


def _quotation(text: str, quote: str, start: int, end: int) -> Slip | None:
    """What is wrong with a quoted text whose first character is at `start`, and that ends before `end`."""
    if "\n" in text[start:end] or end == len(text):
        return Slip(_place(text, start - 1), "a quotation mark that opens here is never closed", '"text in quotes"')
    if not text[end].isalnum():
        message = "text stands after the closing quotation mark: put all of it in quotes"
        end += len(text[end:]) - len(text[end:].lstrip(" \t"))
        return Slip(_place(text, end), message, '"Tern Point chandlery"')
    if quote == "'":
        message = "an apostrophe ends a text in single quotes: put the text in double quotes"
        return Slip(_place(text, end - 1), message, '"ship\'s chandlery"')
    message = "a quotation mark ends a text in double quotes: put the text in single quotes"
    return Slip(_place(text, end - 1), message, "'a 6\" wall'")


def colon(text: str, line: int) -> Slip | None:
    """The line itself, when a word begins it and no colon with a space follows anywhere in it."""
    stands = _line(text, line)
    found = _KEY_ALONE.match(stands)
    if not found or re.search(r":(?: |$)", stands):
        return None
    word = found[1]
    if found[2]:
        return Slip((line, found.end(2)), "a space is missing after the colon", f"{word}: {stands[found.end() :].strip()}")
    rest = stands[found.end() :].strip()
    return Slip((line, found.start(1) + 1), "a key stands without its colon", f"{word}: {rest or '...'}")


def colon_before(text: str, line: int, column: int) -> Slip | None:
    """The colon at this place is unexpected because the line before lacks its own."""
    if not re.fullmatch(r" *(?:- +)?[^\s:]+ *", _line(text, line)[: column - 1]):
        return None
    before = _line_before(text, line)
    return colon(text, before) if before else None


def beginning(text: str, line: int, column: int) -> Slip:
    """A text that begins with a sign that means something to a parser."""
    value = re.split(r"[ \t]#", _line(text, line)[column - 1 :])[0].strip()
    return Slip((line, column), f"a text cannot begin with {value[:1]}: put it in quotes", in_quotes(value))


def after_bracket(text: str, line: int, column: int) -> Slip | None:
    """A text that begins with a bracket and goes on after its end."""
    stands = _line(text, line)
    value = re.match(r" *(?:- +)?[^\s:]+: +([\[{].*)", stands)
    if not value or stands[: column - 1].rstrip()[-1:] not in ("]", "}"):
        return None
    message = "text stands after the closing bracket: put all of it in quotes"
    return Slip((line, column), message, in_quotes(value[1].strip()))


def in_quotes(value: str) -> str:
    """The text as it can stand in a file, on one line."""
    shown = "".join(one if one.isprintable() else "?" for one in value[:60])
    return f"'{shown}'" if '"' in shown and "'" not in shown else '"' + shown.replace('"', "'") + '"'


def _line(text: str, number: int) -> str:
    lines = lines_of(text)
    return lines[number - 1] if 0 < number <= len(lines) else ""


def _line_before(text: str, number: int) -> int:
    """The number of the last line before this one that holds more than a comment; 0 when there is none."""
    lines = lines_of(text)
    for before in range(min(number - 1, len(lines)), 0, -1):
        if lines[before - 1].strip(" \t") and not lines[before - 1].lstrip().startswith("#"):
            return before
    return 0


def _place(text: str, position: int) -> tuple[int, int]:
    lines = lines_of(text[:position])
    return len(lines), len(lines[-1]) + 1
