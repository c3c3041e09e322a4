"""YAML text to a tree of nodes, each with its place. Built from parser events, so that nothing recurses or expands.

Every scalar stays text here (`12:30`, `no`, `1_000`, dates): what it means is for the schema to say.
"""

from collections.abc import Iterator

import yaml

from layerfolio.problems import Problem, ProblemsFound
from layerfolio.reading.report import Place, join, quoted
from layerfolio.reading.signs import cut_off, lost, odd_beginning, odd_space
from layerfolio.reading.tree import Mapping, Node, Scalar, Sequence

DEEPEST = 40
MOST_VALUES = 20_000


def compose(text: str, file: str) -> Mapping:
    """The tree of one YAML document; raises ProblemsFound (all duplicates, or what ends the reading)."""
    builder = _Builder(file, cut_off(text))
    try:
        root = builder.build(_events(text))
    except yaml.YAMLError as error:
        from layerfolio.reading.yaml_words import in_words

        place, message, example = in_words(error, text)
        builder.problems.append(Problem(file, *place, "", message, example))
    except _Stop as stop:
        builder.problems.append(stop.problem)
    if builder.problems:
        raise ProblemsFound(builder.problems)
    if root is None or (isinstance(root, Scalar) and root.is_null):
        raise ProblemsFound([Problem(file, 1, 1, "", "the file is empty", "layerfolio: 1")])
    if not isinstance(root, Mapping):
        raise ProblemsFound(
            [Problem(file, *root.place[1:], "", "the file must hold keys with values", "layerfolio: 1")]
        )
    return root


def _events(text: str) -> Iterator[yaml.Event]:
    loader = yaml.CSafeLoader(text)
    try:
        while loader.check_event():
            yield loader.get_event()
    finally:
        loader.dispose()


class _Stop(Exception):
    def __init__(self, problem: Problem):
        self.problem = problem


class _Builder:
    """Keeps the open collections on a stack and the anchored nodes by name; `cut` is signs.cut_off."""

    def __init__(self, file: str, cut: dict[int, str]):
        self.file, self.cut = file, cut
        self.problems: list[Problem] = []
        self.open: list[Node] = []
        self.pending: list[tuple[str, Place] | None] = []  # the key that waits for its value, per open mapping
        self.anchors: dict[str, Node] = {}
        self.paths: list[str] = [""]
        self.root: Node | None = None
        self.count = 0

    def build(self, events: Iterator[yaml.Event]) -> Node | None:
        documents = 0
        for event in events:
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self.stop(event, "a second document begins here: one file holds one project", "delete the line ---")
            elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
                self.close()
            elif isinstance(event, yaml.NodeEvent):
                self.node(event)
        return self.root

    def stop(self, event: yaml.Event, message: str, example: str = "") -> None:
        raise _Stop(Problem(*self.place(event), self.here(), message, example))

    def place(self, event: yaml.Event) -> Place:
        return Place(self.file, event.start_mark.line + 1, event.start_mark.column + 1)

    def here(self) -> str:
        if self.open and isinstance(self.open[-1], Sequence):
            return f"{self.paths[-1]}[{len(self.open[-1].items)}]"
        key = self.pending[-1] if self.pending else None
        return join(self.paths[-1], key[0]) if key else self.paths[-1]

    def node(self, event: yaml.NodeEvent) -> None:
        if getattr(event, "tag", None):
            self.stop(event, f"the tag {quoted(event.tag)} has no meaning here: leave it out", '"text in quotes"')
        if self.open and isinstance(self.open[-1], Mapping) and self.pending[-1] is None:
            return self.key(event)
        made = self.alias(event) if isinstance(event, yaml.AliasEvent) else self.fresh(event)
        self.count += made.size
        if self.count > MOST_VALUES:
            self.stop(event, f"the file holds more than {MOST_VALUES} values: split it", "one file for each building")
        if len(self.open) + made.height > DEEPEST:
            self.stop(event, f"values are nested more than {DEEPEST} deep")
        path = self.here()
        self.attach(made, self.place(event))
        if isinstance(event, yaml.CollectionStartEvent):
            self.open.append(made)
            self.pending.append(None)
            self.paths.append(path)
        else:
            self.grow(made)

    def key(self, event: yaml.NodeEvent) -> None:
        if not isinstance(event, yaml.ScalarEvent):
            self.stop(event, "a key must be a plain word", "thickness: 38 mm")
        if event.value == "<<" and not event.style:
            self.stop(event, "merge keys (<<) are not read: write the keys out, or use variant_of")
        if not event.style and (odd := odd_beginning(event.value)):
            self.stop(event, odd_space(odd), "  title: Tern Point chandlery")
        self.pending[-1] = (event.value, self.place(event))

    def alias(self, event: yaml.AliasEvent) -> Node:
        node = self.anchors.get(event.anchor)
        if node is None:
            message = f"nothing is named &{event.anchor} above this place: put a text that begins with * in quotes"
            self.stop(event, message, f'"*{event.anchor}"')
        if any(node is one for one in self.open):
            self.stop(event, f"*{event.anchor} stands inside itself", "write the value out")
        return node

    def fresh(self, event: yaml.NodeEvent) -> Node:
        place = self.place(event)
        if isinstance(event, yaml.ScalarEvent):
            plain = event.style is None or event.style == ""
            made: Node = Scalar(place, event.value, plain, self.lost(event) if plain else "")
        else:
            made = Mapping(place) if isinstance(event, yaml.MappingStartEvent) else Sequence(place)
        if event.anchor:
            self.anchors[event.anchor] = made
        return made

    def lost(self, event: yaml.ScalarEvent) -> str:
        """What a `#` may have cut off this text."""
        end = event.end_mark
        return lost(self.cut[end.line], end.column) if event.value and end.line in self.cut else ""

    def attach(self, made: Node, place: Place) -> None:
        if not self.open:
            self.root = made
            return
        parent = self.open[-1]
        if isinstance(parent, Sequence):
            parent.items.append(made)
            return
        assert isinstance(parent, Mapping) and self.pending[-1]
        name, key_place = self.pending[-1]
        self.pending[-1] = None
        if name in parent.items:
            line = parent.keys[name].line
            path = join(self.paths[-1], name)
            self.problems.append(
                Problem(*key_place, path, f"the key {quoted(name)} stands twice (first in line {line})")
            )
        elif made.holder is made.place:
            made.holder = key_place
        parent.items[name], parent.keys[name] = made, key_place

    def close(self) -> None:
        done = self.open.pop()
        self.pending.pop()
        self.paths.pop()
        self.grow(done)

    def grow(self, done: Node) -> None:
        """The open collection counts what was put into it, aliases at their full size."""
        if self.open:
            parent = self.open[-1]
            parent.size += done.size
            parent.height = max(parent.height, done.height + 1)
