"""What the sheet of a floor says below its table: edge insulation that is not drawn, the value against the ground."""

from layerfolio.codes.findings import Finding
from layerfolio.sheets.blocks import Paragraph
from layerfolio.sheets.desk import BUILDING, RECORD, Desk
from layerfolio.sheets.figures import with_unit
from layerfolio.sheets.markup import plain
from layerfolio.units.show import length_text


def floor_notes(desk: Desk, name: str) -> tuple[Paragraph, ...]:
    """One paragraph, or none where the assembly neither has edge insulation nor meets the ground."""
    said = " ".join(filter(None, (_edge(desk, name), _through_the_ground(desk, name))))
    return (Paragraph(said),) if said else ()


def _edge(desk: Desk, name: str) -> str:
    """Insulation at the edge of a floor stands in no layer and is not drawn."""
    edge = desk.dossier.assemblies[name].ground.get("edge_insulation")
    if not edge:
        return ""
    system, direction = desk.system, edge.get("direction", "")
    words = [plain(edge["material"])] if edge.get("material") else []
    words.append(direction)
    if edge.get("width") is not None:
        words.append(f"{length_text(edge['width'], system)} {'in from the edge' if direction == 'horizontal' else 'deep'}")
    if edge.get("resistance") is not None:
        words.append(f"{{R}} = {with_unit(edge['resistance'], 'R', system, 3)}")
    if edge.get("thickness") is not None:
        words.append(f"{length_text(edge['thickness'], system)} thick")
    judged = next((f for f in desk.dossier.findings_of(name, "thermal") if _of_the_edge(f)), None)
    where = f"judged on {RECORD}, line {desk.line(judged)}" if judged else f"counted on {plain(name)}-T"
    return f"Edge insulation, {', '.join(filter(None, words))}: not drawn here; {where}."


def _of_the_edge(finding: Finding) -> bool:
    return "edge" in finding.asked and "edge" in finding.given


def _through_the_ground(desk: Desk, name: str) -> str:
    study = desk.dossier.ground.get(name)
    if study is None or study.transmittance is None:
        return ""
    value = with_unit(study.transmittance, "U_gr", desk.system, 3)
    return f"For the heat loss {BUILDING} takes {{U_gr}} = {value} by ISO 13370, see {plain(name)}-T."
