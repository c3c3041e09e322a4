"""How a joint through insulation and its calculation print in findings."""

from layerfolio.codes.context import Context
from layerfolio.codes.naming import called
from layerfolio.codes.site_figures import pressure
from layerfolio.codes.stated import metres
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.joint import Joint
from layerfolio.studies.structure_types import Attachment


def given_words(one: Joint, study: Attachment, about: Context) -> str:
    """What hangs on what: boards, fastener, spacing, penetration, weight, and the calculated figures."""
    boards = listed([called(board) for board in one.insulation])
    depth = one.insulation_depth
    found = [f"{metres(depth, about.customary)} of {boards}" if depth else boards, fastener_words(study, about)]
    if one.penetration is not None and one.main is not None:
        found.append(f"{metres(one.penetration, about.customary)} into the framing")
    if study.weight is not None:
        found.append(f"{pressure(study.weight, about.customary)} outside the insulation")
    return "; ".join(filter(None, (*found, numbers(study, about))))


def fastener_words(study: Attachment, about: Context) -> str:
    """The fastener with its spacing; what is not stated is left out."""
    if not study.fastener:
        return "fasteners not stated"
    sizes = " x ".join(_size(one, about) for one in (study.diameter, study.length) if one)
    apart = [f"at {metres(study.spacing, about.customary)}"] if study.spacing else []
    apart += [f"in rows at {metres(study.rows, about.customary)}"] if study.rows else []
    return " ".join(filter(None, (study.fastener, sizes, *apart)))


def _size(value: float, about: Context) -> str:
    if not about.customary:
        return f"{value * 1000:.3g} mm"
    return f"{value / 0.0254:.3g} in ({value * 1000:.3g} mm)"


def numbers(study: Attachment, about: Context) -> str:
    """Capacity, mode, weight on a fastener; empty while there are none."""
    if study.capacity_lateral is None:
        return ""
    said = [f"calculated lateral capacity {force(study.capacity_lateral, about)} in mode {study.governing_mode}"]
    if study.demand is not None:
        said.append(f"weight on a fastener {force(study.demand, about)}")
    if study.withdrawal_capacity is not None:
        said.append(f"withdrawal capacity {force(study.withdrawal_capacity, about)}")
    if study.withdrawal_demand is not None:
        said.append(f"wind on a fastener {force(study.withdrawal_demand, about)}")
    return ", ".join(said)


def force(value: float, about: Context) -> str:
    """ "95 N", "21 lbf (95 N)"."""
    return figure("Z_y", value, customary=about.customary, digits=0)
