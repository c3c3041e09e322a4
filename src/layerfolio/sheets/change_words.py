"""Changes that a balance is run with again, in words of the system that comes first."""

import re

from layerfolio.sheets.figures import with_unit
from layerfolio.sheets.moisture_words import marked

_AIR_LAYER = re.compile(r"s_d ([0-9.]+) m\b")


def change_words(text: str, system: str) -> str:
    """Words of a study in mark-up; the equivalent air layer that they name in inches too where these come first."""
    return marked(_AIR_LAYER.sub(lambda found: f"s_d {with_unit(float(found[1]), 's_d', system)}", text))
