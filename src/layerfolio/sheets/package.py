"""The whole set of sheets, in the order in which a reviewer reads them."""

from layerfolio import __version__
from layerfolio.dossier import Dossier
from layerfolio.sheets.assembly_sheets import assembly_sheet, has_vapour_sheet, thermal_sheet
from layerfolio.sheets.assumptions import assumptions
from layerfolio.sheets.blocks import Package, Sheet, TitleBlock
from layerfolio.sheets.compliance import compliance_record
from layerfolio.sheets.cover import cover
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.explanation import explanation_sheet
from layerfolio.sheets.guide import guide
from layerfolio.sheets.moisture_sheet import moisture_sheet
from layerfolio.sheets.symbols import symbols


def package(dossier: Dossier) -> Package:
    """All sheets of a project. The source book fills while the assemblies are written, so their sheets come first here."""
    desk = Desk(dossier)
    assemblies: list[Sheet] = []
    for name in dossier.assemblies:
        assemblies += [assembly_sheet(desk, name), thermal_sheet(desk, name)]
        if has_vapour_sheet(dossier.assemblies[name]):
            assemblies.append(moisture_sheet(desk, name))
    explanations = [explanation_sheet(desk, i, one) for i, one in enumerate(dossier.explanations, 1)]
    families = tuple(dict.fromkeys(family for sheet in assemblies for family in sheet.legend))
    front = [cover(desk), guide(desk), compliance_record(desk), assumptions(desk)]
    sheets = (*front, *assemblies, *explanations, symbols(desk, families))
    return Package(title_block(dossier), dossier.project.project.title, sheets)


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
