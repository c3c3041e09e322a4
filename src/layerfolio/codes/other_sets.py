"""Keys of the project file that the chosen set does not go by: stated in good faith, used nowhere."""

from collections.abc import Iterator
from typing import Any

from layerfolio.problems import Caution

CANADA, STATES = ("nbc", "bc", "qc"), ("irc",)
GOES_BY = {
    "site_loads.wind_speed": (STATES, "site_loads.wind_pressure_1_50"),
    "site_loads.seismic.category": (STATES, "site_loads.seismic.Sa02"),
    "site_loads.wind_pressure_1_50": (CANADA, "site_loads.wind_speed"),
    "site_loads.seismic.Sa02": (CANADA, "site_loads.seismic.category"),
    "climate.moisture_index": (CANADA, ""),
    "code.air_route": (CANADA, ""),
    "building.accessory": (STATES, ""),
    "building.townhouse": (STATES, ""),
}
"""Key, the codes that go by it, and the key that the others go by in its place."""
PATHS = {"insulation R-values": STATES, "total UA": STATES, "trade-off": CANADA}
"""Energy paths that some codes alone have."""


def set_cautions(project: Any) -> Iterator[Caution]:
    """Keys and energy paths that are for other codes. The set of methods alone (iso) judges none of them and is left out."""
    code = project.code.set.partition("-")[0]
    if code == "iso":
        return
    for path, (codes, instead) in GOES_BY.items():
        if code not in codes and _at(project, path) is not None:
            other = f": it goes by {instead}" if instead else ""
            yield Caution(path, f"the set {project.code.set} does not use it{other}")
    energy = project.code.energy_path
    if code not in PATHS.get(energy, (code,)):
        yield Caution("code.energy_path", f"the set {project.code.set} has no path {energy}")


def _at(project: Any, path: str) -> Any:
    found = project
    for name in path.split("."):
        found = getattr(found, name, None)
    return found
