"""Structure in the results file: dead load and cladding attachment of each assembly. Unknown figures are null."""

from typing import Any

from layerfolio.dossier import Dossier
from layerfolio.studies.structure_types import Attachment, DeadLoad


def structure_part(dossier: Dossier, name: str) -> dict[str, Any]:
    """Loads in kPa, forces in N, lengths in m; `cladding_attachment` is null where no cladding hangs outside insulation."""
    load, study = dossier.dead_loads[name], dossier.attachments.get(name)
    return {
        "dead_load": _quantity(_kilo(load.total), "kPa"),
        "dead_load_on_fasteners": _quantity(_kilo(load.on_fasteners), "kPa"),
        "dead_load_by_layer": _layers(load),
        "cladding_attachment": None if study is None else _attachment(study),
    }


def _layers(load: DeadLoad) -> list[dict[str, Any]]:
    return [{"name": one.name, "dead_load": _quantity(_kilo(one.load), "kPa"), "mark": one.mark or None} for one in load.layers]


def _attachment(study: Attachment) -> dict[str, Any]:
    return {
        "layer": study.layer,
        "gap": _quantity(study.gap, "m"),
        "penetration": _quantity(study.penetration, "m"),
        "capacity_lateral": _quantity(study.capacity_lateral, "N"),
        "governing_mode": study.governing_mode or None,
        "modes": {one.name: _quantity(one.capacity, "N") for one in study.modes},
        "demand": _quantity(study.demand, "N"),
        "withdrawal_capacity": _quantity(study.withdrawal_capacity, "N"),
        "withdrawal_demand": _quantity(study.withdrawal_demand, "N"),
        "missing": list(study.missing),
        "refused": list(study.refused),
    }


def _kilo(value: float | None) -> float | None:
    return None if value is None else value / 1000


def _quantity(value: float | None, unit: str) -> dict | None:
    return None if value is None else {"value": value, "unit": unit}
