"""A project file that holds only what differs from another: the chain is read, checked for loops and merged."""

import hashlib
from collections.abc import Iterator
from dataclasses import dataclass
from os.path import isfile
from pathlib import Path

from layerfolio.problems import Problem, ProblemsFound
from layerfolio.reading.files import decode, inside, read_bytes, shown_name
from layerfolio.reading.nodes import compose
from layerfolio.reading.record import null
from layerfolio.reading.report import quoted
from layerfolio.reading.tree import Mapping, Node, Scalar, Sequence

_KEY = "variant_of"
LONGEST_CHAIN = 20


@dataclass(frozen=True)
class Chain:
    """The merged tree; the files from the one opened to the last base; the checksum over their bytes in that order.

    `folders` gives for each file, as places name it, the folder it is in.
    """

    tree: Mapping
    files: tuple[Path, ...]
    folders: dict[str, Path]
    input_sha256: str


def read_chain(path: Path) -> Chain:
    """Read a project file and everything it is a variant of; raises ProblemsFound."""
    root, digest = path.parent, hashlib.sha256()
    trees: list[Mapping] = []
    files: list[Path] = []
    following: Path | None = path
    while following is not None:
        data = read_bytes(following)
        digest.update(data)
        trees.append(compose(decode(data, following), shown_name(following)))
        files.append(following)
        following = _base(trees[-1], files, root)
    merged = trees[-1]
    for variant in reversed(trees[:-1]):
        merged = merge(merged, variant)
    folders = {shown_name(one): one.parent for one in files}
    return Chain(merged, tuple(files), folders, digest.hexdigest())


def _base(tree: Mapping, files: list[Path], root: Path) -> Path | None:
    """The file that this one is a variant of; None when it stands alone."""
    stated = tree.items.get(_KEY)
    if stated is None or null(stated):
        return None
    if not isinstance(stated, Scalar):
        raise _refused(stated, "the name of a file is expected here")
    found = inside(stated.text, files[-1].parent, root)
    if found is None:
        raise _refused(stated, f"the path {quoted(stated.text)} leaves the project's folder")
    if found in [one.resolve() for one in files]:
        raise _refused(stated, f"{quoted(stated.text)} is a variant of itself: the files go round in a loop")
    if len(files) >= LONGEST_CHAIN:
        raise _refused(stated, f"more than {LONGEST_CHAIN} files stand in a chain of variants")
    if not isfile(found):
        raise _refused(stated, f"there is no file {quoted(stated.text)}")
    return files[-1].parent / stated.text


def _refused(node: Node, message: str) -> ProblemsFound:
    return ProblemsFound([Problem(*node.place, _KEY, message, f"{_KEY}: project.yaml")])


def merge(base: Mapping, variant: Mapping) -> Mapping:
    """Maps merge, lists and single values replace, null removes. Every value keeps the place where it is stated."""
    made = Mapping(variant.place)
    made.holder = variant.holder
    made.items, made.keys = dict(base.items), dict(base.keys)
    for name, value in variant.items.items():
        below = base.items.get(name)
        if null(value):
            made.items.pop(name, None)
            made.keys.pop(name, None)
            continue
        both = isinstance(value, Mapping) and isinstance(below, Mapping)
        made.items[name] = merge(below, value) if both else value
        made.keys[name] = variant.keys[name]
    return made


def differences(path: Path) -> tuple[str, ...]:
    """Dotted keys that a variant states otherwise than the file it is a variant of, in the order of the file.

    Empty for a file that is no variant; a list counts as one key, as it replaces the other; a removed key is among them.
    """
    own = compose(decode(read_bytes(path), path), shown_name(path))
    base = _base(own, [path], path.parent)
    return tuple(_differing(own, read_chain(base).tree, "")) if base else ()


def _differing(own: Mapping, base: Mapping, above: str) -> Iterator[str]:
    for name, value in own.items.items():
        below, dotted = base.items.get(name), f"{above}{name}"
        if isinstance(value, Mapping) and isinstance(below, Mapping):
            yield from _differing(value, below, f"{dotted}.")
        elif dotted not in (_KEY, "layerfolio") and not _same(value, below):
            yield dotted


def _same(one: Node, other: Node | None) -> bool:
    """Whether two values read alike; nothing and null are alike."""
    if other is None or null(one):
        return null(one) and (other is None or null(other))
    if isinstance(one, Scalar) and isinstance(other, Scalar):
        return one.text == other.text
    if isinstance(one, Sequence) and isinstance(other, Sequence):
        return len(one.items) == len(other.items) and all(map(_same, one.items, other.items))
    both = isinstance(one, Mapping) and isinstance(other, Mapping)
    return both and one.items.keys() == other.items.keys() and all(_same(v, other.items[k]) for k, v in one.items.items())
