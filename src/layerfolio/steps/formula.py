"""A formula is an ordinary function whose single return expression *is* the formula, in the symbols of its source."""

from collections.abc import Callable
from dataclasses import dataclass, field

REGISTRY: dict[str, "Formula"] = {}


@dataclass(frozen=True, eq=False)
class Formula:
    """`result` and the parameter names are names of shared/glossary.yaml; `source` is "key of sources.yaml, clause".

    `within` gives an empirical formula its valid range per parameter; outside it the formula refuses (ValueError).
    """

    function: Callable[..., float]
    result: str
    source: str
    within: dict[str, tuple[float, float]] | None = field(default=None)

    @property
    def name(self) -> str:
        return self.function.__name__

    @property
    def title(self) -> str:
        return (self.function.__doc__ or self.name).strip().splitlines()[0].rstrip(".")

    def __call__(self, **arguments: float | tuple[float, ...]) -> float:
        for name, (low, high) in (self.within or {}).items():
            if not low <= arguments[name] <= high:
                raise ValueError(f"{self.title}: {name} = {arguments[name]:g} is outside {low:g} to {high:g}")
        return self.function(**arguments)


def formula(
    result: str, *, source: str, within: dict[str, tuple[float, float]] | None = None
) -> Callable[[Callable[..., float]], Formula]:
    """Make a keyword-only function a Formula and list it in REGISTRY, where the laws of the test suite find it."""

    def make(function: Callable[..., float]) -> Formula:
        REGISTRY[function.__name__] = made = Formula(function, result, source, within)
        return made

    return make
