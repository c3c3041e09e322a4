"""What lies beyond the layers: unheated spaces, and cavities that count between a still and a well ventilated one."""

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import thermal as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.layer_heat import source_words


def unheated_space(assembly: Assembly, record: Recorder) -> float:
    """Resistance of the unheated space between the assembly and the outside air, m2.K/W; 0 without one that counts."""
    roof, beside = assembly.roof_space, assembly.unheated_space
    if roof is not None:
        record.section("Unheated roof space", key="space")
        return record.given("R_sp", roof.value, "the roof space with the roof over it", source_words(roof), roof)
    if beside is None:
        return 0.0
    record.section("Unheated space beside the assembly", key="space")
    areas, transmittances = zip(*beside.envelope, strict=True)
    return record.step(
        f.unheated_space_resistance,
        A_i=assembly.area.value,
        A_e=areas,
        U_e=transmittances,
        n_u=beside.air_changes,
        V_u=beside.volume,
        running_total=True,
    )


def between(openings: float, still: dict[str, float], ventilated: dict[str, float], record: Recorder) -> dict[str, float]:
    """Totals of a component with a slightly ventilated cavity, m2.K/W, by method; recorded for each."""
    record.section("Slightly ventilated cavity: between the two totals", key="slightly-ventilated")
    return {
        method: record.step(
            f.slightly_ventilated_resistance,
            about=method.replace("-", " "),
            A_v=openings,
            R_u=still[method],
            R_v=total,
        )
        for method, total in ventilated.items()
    }
