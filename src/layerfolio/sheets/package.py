"""The whole set of sheets, in the order in which a reviewer reads them."""

from layerfolio import __version__
from layerfolio.dossier import Dossier, documented
from layerfolio.sheets.assembly_sheets import assembly_sheet, has_vapour_sheet, thermal_sheet
from layerfolio.sheets.assumptions import assumptions
from layerfolio.sheets.blocks import Package, Sheet, TitleBlock
from layerfolio.sheets.certificate import certificate
from layerfolio.sheets.compliance import compliance_record
from layerfolio.sheets.cover import cover
from layerfolio.sheets.criteria import criteria
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.evidence import evidence_sheet
from layerfolio.sheets.explanation import explanation_sheet
from layerfolio.sheets.guide import guide
from layerfolio.sheets.junction_sheets import junction_sheets
from layerfolio.sheets.moisture_sheet import moisture_sheet
from layerfolio.sheets.opening_schedule import opening_schedule
from layerfolio.sheets.structure import structural_sheets
from layerfolio.sheets.symbols import symbols
from layerfolio.sheets.whole_building import whole_building


def package(dossier: Dossier) -> Package:
    """All sheets of a project, what is only looked up at the end.

    The source book fills while the other sheets are written, so the assumptions are made after them.
    """
    desk = Desk(dossier := documented(dossier))
    assemblies: list[Sheet] = []
    for name in dossier.assemblies:
        assemblies += [assembly_sheet(desk, name), thermal_sheet(desk, name)]
        if has_vapour_sheet(dossier.assemblies[name]):
            assemblies.append(moisture_sheet(desk, name))
    meeting = junction_sheets(desk)
    explanations = [explanation_sheet(desk, i, one) for i, one in enumerate(dossier.explanations, 1)]
    families = tuple(dict.fromkeys(family for sheet in (*assemblies, *meeting) for family in sheet.legend))
    front = (cover(desk), guide(desk), compliance_record(desk), criteria(desk), whole_building(desk), opening_schedule(desk))
    evidence = evidence_sheet(desk, dossier.register)
    back = (evidence, symbols(desk, families), certificate(desk))
    structure = structural_sheets(desk)
    found = (*front, assumptions(desk), *assemblies, *meeting, *structure, *explanations, *back)
    sheets = tuple(sheet for sheet in found if sheet is not None)
    about = dossier.project.project
    made = Package(title_block(dossier), about.title, sheets)
    if about.sheet_numbers == "plain":
        return made
    from layerfolio.sheets.renumbered import renumbered

    return renumbered(made, dossier.project)


def title_block(dossier: Dossier) -> TitleBlock:
    about = dossier.project.project
    return TitleBlock(
        project=about.title,
        site=about.location or "",
        prepared_by=about.prepared_by or "",
        date=str(about.date or ""),
        revision=about.revision or "",
        page=about.page,
        input_sha256=dossier.input_sha256,
        version=__version__,
    )
