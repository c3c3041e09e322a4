"""A dry-cup permeance in the terms of both countries, for sheets that explain it to either."""

from layerfolio.catalogue.files import load
from layerfolio.home import folder


def retarder_class(permeance: float) -> str:
    """Class I, II or III of the IRC's R702.7 by dry cup (kg/(m2.s.Pa)), empty above its last limit."""
    from layerfolio.codes.retarder_class import class_of

    return class_of(permeance, load(folder("shared") / "codes" / "irc" / "R702.7" / "vapour-retarder.yaml")["classes"])
