"""What can be wrong with what a person gave us: said once, with the place and an example of what is right."""

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One mistake. `line` and `column` count from 1; 0 when the mistake has no place in the file.

    `path` is the dotted way through the project file (`assemblies.W1.layers[3].thickness`), empty for the file itself.
    """

    file: str
    line: int
    column: int
    path: str
    message: str
    example: str = field(default="", compare=False)

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}:{self.column}" if self.line else self.file
        where = f" {self.path}:" if self.path else ""
        example = f" (for example: {self.example})" if self.example else ""
        return f"{place}:{where} {self.message}{example}"


class ProblemsFound(Exception):
    """The input cannot be used; carries every problem found in the run, in file order.

    `to_look_at` is what stops nothing and was seen on the way, with its places.
    """

    def __init__(self, problems: list[Problem] | tuple[Problem, ...], to_look_at: tuple[Problem, ...] = ()):
        self.problems = tuple(sorted(problems))
        self.to_look_at = to_look_at
        super().__init__("\n".join(map(str, self.problems)))


@dataclass(frozen=True, slots=True)
class Caution:
    """Something that does not stop the work but that the person should read; `path` as in Problem."""

    path: str
    message: str
