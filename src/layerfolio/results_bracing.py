"""Lines of bracing in the results file. Lengths in m, shares as 1, unit shear in kN/m; unknown figures are null."""

from typing import Any

from layerfolio.dossier import Dossier
from layerfolio.studies.structure_types import UnitShear


def wall_lines_part(dossier: Dossier) -> dict[str, Any]:
    """Each line with its path, what is required and provided, and the verdict of its worst finding."""
    if not dossier.wall_lines:
        return {}
    from layerfolio.codes.context import Envelope, context
    from layerfolio.codes.wall_lines import line_judged, line_verdict

    around = Envelope(dossier.thermal, dossier.ground, dossier.openings, dossier.building, dossier.wall_lines)
    about, found = context(dossier.project, around), {}
    for name, study in dossier.wall_lines.items():
        judged = line_judged(study, about)
        found[name] = {
            "assembly": study.assembly,
            "path": judged.path if judged else None,
            "required": _quantity(judged.required, judged.unit) if judged else None,
            "provided": _quantity(judged.provided, judged.unit) if judged else None,
            "unit_shear": _quantity(_kilo(study.unit_shear), "kN/m"),
            "unit_shear_by": _shear(study.shear),
            "verdict": str(line_verdict(dossier.findings, name)),
            "length": _quantity(study.length, "m"),
            "panels": _quantity(study.total_panels, "m"),
            "share": _quantity(study.share, "1"),
            "greatest_gap": _quantity(study.greatest_gap, "m"),
            "end_distance": _quantity(study.end_distance, "m"),
            "missing": list(study.missing),
        }
    return found


def _shear(one: UnitShear | None) -> dict[str, Any] | None:
    if one is None:
        return None
    names = ("wind", "seismic", "design_wind", "design_seismic")
    return {
        "row": one.row,
        **{name: _quantity(_kilo(getattr(one, name)), "kN/m") for name in names},
        "edition": one.edition,
        "species_factor": one.species,
        "aspect_factor": one.aspect,
        "open": list(one.marks),
    }


def _kilo(value: float | None) -> float | None:
    return None if value is None else value / 1000


def _quantity(value: float | None, unit: str) -> dict | None:
    return None if value is None else {"value": value, "unit": unit}
