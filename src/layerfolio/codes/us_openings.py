"""An opening beside the limit of an American table: its own value, or the code's default for a product without a label."""

from typing import Any, NamedTuple

from layerfolio.catalogue.opening_defaults import OpeningDefaults, opening_defaults
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.limits import Resolved, resolve
from layerfolio.codes.rating import rated_to
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import TRANSMITTANCE, proved
from layerfolio.codes.wording import figure


class Case(NamedTuple):
    """One opening beside its limit; `by_default` where it has no value of its own and the code's stands for it."""

    requirement: Requirement
    opening: Any
    about: Context
    resolved: Resolved
    value: float | None
    by_default: bool

    @property
    def limit(self) -> float | None:
        return self.resolved.limit.value

    @property
    def standard(self) -> str:
        """The standard that it is rated to, empty for every other basis."""
        rule = self.requirement.rule
        names = rule.get("rated_of", {}).get(self.opening.kind, rule["rated"])
        return rated_to(self.opening.basis, names) if self.opening.how == "stated" else ""

    @property
    def within(self) -> bool:
        return self.value is not None and judges.at_most(self.value, self.limit)

    @property
    def papers(self) -> bool:
        """Whether a valid document of the rating is given."""
        return proved(self.about, self.opening.name, self.opening.stated, TRANSMITTANCE)

    @property
    def shows(self) -> bool:
        """Whether its value may be used in a mean: rated with its document, or the code's own."""
        return self.by_default or bool(self.standard and self.papers)

    def shown(self, value: float) -> str:
        return figure("U", value, customary=self.about.customary, both=self.about.both, digits=2)


def defaults_of(opening: Any, about: Context) -> OpeningDefaults | None:
    """The code's own figures for it, by frame and panes as far as the project file states them."""
    frame, glass = (getattr(opening.stated, part, None) for part in ("frame", "glass"))
    return opening_defaults(
        about.edition.set_id, opening.kind, frame=getattr(frame, "material", None), panes=getattr(glass, "panes", None),
        tint=getattr(glass, "tint", None),
    )  # fmt: skip


def case_of(requirement: Requirement, opening: Any, about: Context) -> Case:
    """The opening with its value: its own, else the code's default."""
    value, default = opening.transmittance, None
    if value is None:
        found = defaults_of(opening, about)
        default = found.transmittance.value if found and found.transmittance else None
    return Case(requirement, opening, about, resolve(requirement, opening, about), value or default, value is None)
