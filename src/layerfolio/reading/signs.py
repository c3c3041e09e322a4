"""Signs that mislead in a file that is good YAML: spaces that are none, texts that a comment sign cuts short.

Every reading comes through here, so it stays light; what is sought after a mistake is in slips.
"""

import re

ODD_SPACES = "\u00a0\u1680" + "".join(map(chr, range(0x2000, 0x200E))) + "\u202f\u205f\u2060\u3000\ufeff"
_CUT = re.compile(r"[ \t]#(?=[^\s#]| ?[0-9])")


def odd_space(found: str) -> str:
    """What to say about a character that looks like a space and is none."""
    from unicodedata import name

    called = name(found, "an unusual space").lower()
    return f"U+{ord(found):04X} ({called}) stands here and only looks like a space: use plain spaces"


def odd_beginning(key: str) -> str:
    """The odd space that a key begins with, also behind the dash of a list; empty when none does."""
    first = key.removeprefix("-")[:1]
    return first if first and first in ODD_SPACES else ""


def cut_off(text: str) -> dict[int, str]:
    """Lines, from 0, on which a `#` with no space after it, or before a number, may cut off a part of a text."""
    if not _CUT.search(text):
        return {}
    return {n: one for n, one in enumerate(text.splitlines()) if _CUT.search(one)}


def lost(line: str, end: int) -> str:
    """What such a `#` cuts off a text that ends at `end`; empty when what follows is an ordinary comment."""
    rest = line[end:].strip()
    return rest if _CUT.match(f" {rest}") else ""
