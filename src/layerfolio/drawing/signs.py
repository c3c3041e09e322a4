"""Names of the signs that a drawing uses beside its hatches; they follow the hatch families in `Drawing.families`."""

from layerfolio.drawing import control
from layerfolio.drawing.cut import Cut
from layerfolio.drawing.marks import Circle

AIR_TOWARDS, AIR_ALONG = "air towards the reader", "air along the paper"
FASTENER, TAPE = "fastener", "tape"
CONTROL = {sign: f"control {sign}" for sign in "WAVT"}


def signs_of(cut: Cut) -> tuple[str, ...]:
    """Moving air as it is drawn, then the letters of the control lines, in the order of a legend; fasteners and tape between."""
    towards = {isinstance(marks[0], Circle) for _, marks in cut.signs}
    air = [name for name, is_used in ((AIR_TOWARDS, True), (AIR_ALONG, False)) if is_used in towards]
    drawn = [name for name, is_used in ((FASTENER, cut.pins), (TAPE, cut.seams)) if is_used]
    return (*air, *drawn, *(CONTROL[sign] for sign in control.letters_used(cut.stack)))
