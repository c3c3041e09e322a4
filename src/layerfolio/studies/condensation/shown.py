"""Which months of the balance a picture draws and the steps work out: one choice for both."""

from layerfolio.studies.climate_year import MONTHS
from layerfolio.studies.condensation.types import Profile, Run


def nearest(run: Run, profile: Profile) -> tuple[int, float]:
    """The node inside the section that is nearest to saturation, and its relative humidity."""
    inner = range(1, len(run.nodes) - 1) or range(len(run.nodes))
    humidity = {k: profile.pressure[k] / profile.saturation[k] for k in inner}
    node = max(humidity, key=humidity.__getitem__)
    return node, humidity[node]


def months_of(run: Run) -> tuple[str, str]:
    """The month that wets most and the one that dries most; in a dry year nearest to and farthest from saturation."""
    if run.planes():
        measure = {month.name: month.flow for month in run.months}
    else:
        measure = {one.month: nearest(run, one)[1] for one in run.profiles}
    return max(MONTHS, key=measure.__getitem__), min(MONTHS, key=measure.__getitem__)
