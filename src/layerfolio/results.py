"""The results file: what outside readers rely on. Quantities are {"value", "unit"} in SI; numbers unrounded; unknown is null."""

from typing import TYPE_CHECKING, Any

from layerfolio import __version__
from layerfolio.codes.findings import Finding, Measured
from layerfolio.dossier import Dossier, documented
from layerfolio.results_moisture import results_part
from layerfolio.studies.types import LayerHeat, LayerVapour, MethodResult, ThermalStudy, VapourStudy

if TYPE_CHECKING:
    from layerfolio.studies.corrections import Corrections

FORMAT = 1

UNITS = {
    "R": "m2.K/W",
    "U": "W/(m2.K)",
    "W": "kg/(m2.s.Pa)",
    "permeance": "kg/(m2.s.Pa)",
    "s_d": "m",
    "d": "m",
    "area": "m2",
    "lam": "W/(m.K)",
    "HDD": "K.d",
    "storeys": "1",
    "R_eff": "m2.K/W",
}


def quantity(value: float | None, unit: str) -> dict | None:
    return None if value is None else {"value": value, "unit": unit}


def results(dossier: Dossier) -> dict[str, Any]:
    """The whole results file as plain data, in a stable order."""
    from layerfolio.results_bracing import wall_lines_part
    from layerfolio.results_envelope import building_part, openings_part
    from layerfolio.results_junctions import junctions_part

    dossier = documented(dossier)
    return {
        "layerfolio": {"version": __version__, "results_format": FORMAT},
        "project": {"title": dossier.project.project.title, "input_sha256": dossier.input_sha256},
        "assemblies": {name: _assembly(dossier, name) for name in dossier.assemblies},
        "openings": openings_part(dossier.openings),
        "building": building_part(dossier.building, dossier.envelope),
        "wall_lines": wall_lines_part(dossier),
        "junctions": junctions_part(dossier.junctions),
        "findings": [_finding(f) for f in dossier.findings],
        "explanations": [
            {"question": e.question, "assembly": e.assembly, "because": e.because} for e in dossier.explanations
        ],
        "warnings": [{"path": c.path, "message": c.message} for c in dossier.cautions],
    }


def _assembly(dossier: Dossier, name: str) -> dict[str, Any]:
    from layerfolio.results_structure import structure_part

    one, thermal, vapour = dossier.assemblies[name], dossier.thermal[name], dossier.vapour[name]
    heat = {h.layer.number: h for h in thermal.layers}
    cups = {v.layer.number: v for v in vapour.layers}
    return {
        "kind": one.kind,
        "layers": [_layer(x, heat.get(x.number), cups.get(x.number)) for x in one.layers],
        "thermal": {**_thermal(thermal), **_ground(dossier.ground.get(name))},
        "vapour": _vapour(vapour),
        "condensation": results_part(dossier.condensation[name]),
        "structure": structure_part(dossier, name),
        "carbon": {},
    }


def _layer(layer: Any, heat: LayerHeat | None, cups: LayerVapour | None) -> dict[str, Any]:
    conductivity = layer.conductivity.value if layer.conductivity else None
    if layer.resistivity:
        conductivity = 1 / layer.resistivity.value
    figure = layer.resistance or layer.resistivity or layer.conductivity
    return {
        "name": layer.name,
        "thickness": quantity(layer.thickness.value if layer.thickness else None, "m"),
        "conductivity": quantity(conductivity, "W/(m.K)"),
        "resistance": quantity(heat.resistance if heat else None, "m2.K/W"),
        "resistance_with_framing": quantity(heat.with_framing if heat else None, "m2.K/W"),
        "equivalent_air_layer": quantity(cups.s_d_dry if cups else None, "m"),
        "equivalent_air_layer_wet": quantity(cups.s_d_wet if cups else None, "m"),
        "counts": layer.counts,
        "source": figure.origin.source if figure else None,
        "chosen_by": figure.origin.chosen_by if figure else None,
        "mark": figure.origin.mark if figure else None,
    }


def _thermal(study: ThermalStudy) -> dict[str, Any]:
    asked = study.asked
    return {
        "method": study.method,
        "resistance": quantity(asked.resistance if asked else None, "m2.K/W"),
        "transmittance": quantity(asked.transmittance if asked else None, "W/(m2.K)"),
        "by_method": {name: _method(result) for name, result in study.by_method.items()},
        "corrections": _corrections(study.corrections) if study.corrections else None,
        "framing_share_of_heat": quantity(study.framing_share_of_heat, "1"),
        "interfaces": [
            {
                "between": list(x.between),
                "temperature": quantity(x.temperature, "degC"),
                "through_framing": quantity(x.through_framing, "degC"),
            }
            for x in study.interfaces
        ],
        "missing": list(study.missing),
    }


def _corrections(found: "Corrections") -> dict[str, Any]:
    """What fasteners, air voids and rain add; where `counted` is false the corrected transmittance is the plain one."""
    names = ("fasteners", "air_voids", "inverted_roof", "total", "corrected_transmittance")
    return {**{name: quantity(getattr(found, name), "W/(m2.K)") for name in names}, "counted": found.counted}


def _ground(study: Any) -> dict[str, Any]:
    """Through the ground, by ISO 13370; null for an assembly that does not lie against it."""
    return {
        "ground_transmittance": quantity(study.transmittance if study else None, "W/(m2.K)"),
        "ground": {
            "kind": study.kind,
            "characteristic_dimension": quantity(study.characteristic_dimension, "m"),
            "equivalent_thickness": quantity(study.equivalent_thickness, "m"),
            "missing": list(study.missing),
        }
        if study
        else None,
    }


def _method(result: MethodResult) -> dict[str, Any]:
    found: dict[str, Any] = {
        "resistance": quantity(result.resistance, "m2.K/W"),
        "transmittance": quantity(result.transmittance, "W/(m2.K)"),
    }
    if result.upper_limit is not None:
        found["upper_limit"] = quantity(result.upper_limit, "m2.K/W")
        found["lower_limit"] = quantity(result.lower_limit, "m2.K/W")
        found["within_limits"] = result.within_limits
    return found


def _vapour(study: VapourStudy) -> dict[str, Any]:
    control = study.control
    return {
        "control_layer": study.control_layer,
        "control_permeance": {
            "dry": quantity(control.permeance_dry if control else None, "kg/(m2.s.Pa)"),
            "wet": quantity(control.permeance_wet if control else None, "kg/(m2.s.Pa)"),
        },
        "inside_equivalent_air_layer": quantity(study.inside_s_d, "m"),
        "outside_equivalent_air_layer": quantity(study.outside_s_d, "m"),
        "ratio": study.ratio,
        "missing": list(study.missing),
    }


def _measured(one: Measured | None) -> dict | None:
    return None if one is None else quantity(one.value, UNITS.get(one.quantity) or _unit(one.quantity))


def _unit(name: str) -> str:
    """The glossary's SI unit of a quantity that a seldom asked requirement compares; a plain number where it has none."""
    from layerfolio.glossary import terms

    found = terms().get(name)
    return found.si if found else "1"


def _finding(f: Finding) -> dict[str, Any]:
    return {
        "id": f.id,
        "assembly": f.assembly,
        "opening": f.assembly if f.opening else None,
        "wall_line": f.assembly if f.id.rpartition("/")[2].startswith("wall-line") else None,
        "edition": f.edition,
        "clause": f.clause,
        "topic": f.topic,
        "question": f.question,
        "path": f.path,
        "performance": f.performance or None,
        "chosen": f.chosen or None,
        "answered_by": f.answered_by or None,
        "verdict": str(f.verdict),
        "asked": f.asked,
        "given": f.given,
        "provided": _measured(f.provided),
        "limit": _measured(f.limit),
        "reason": f.reason,
        "next_step": f.next_step,
        "who_decides": f.who_decides,
        "evidence": list(f.evidence),
        "source": f.source,
        "place": f.place,
        "mark": f.mark,
        "amended": f.amended or None,
    }
