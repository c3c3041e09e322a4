"""The bundled faces, registered once with reportlab."""

from functools import cache

from layerfolio.drawing import font

NAMES = {
    "regular": "LF",
    "bold": "LF-Bold",
    "oblique": "LF-Oblique",
    "bold oblique": "LF-BoldOblique",
    "mono": "LF-Mono",
}


@cache
def register() -> dict[str, str]:
    """Register the faces (once a process) and give the PDF font name of each style.

    The four condensed faces are also one family, so that bold and oblique work in the mark-up of paragraphs. Each
    canvas must start with `initialFontName="LF"`, else a font that is not embedded gets into the file.
    """
    from reportlab.pdfbase.pdfmetrics import registerFont, registerFontFamily
    from reportlab.pdfbase.ttfonts import TTFont

    for style, name in NAMES.items():
        registerFont(TTFont(name, str(font.path(style))))
    registerFontFamily("LF", normal="LF", bold="LF-Bold", italic="LF-Oblique", boldItalic="LF-BoldOblique")
    return NAMES
