"""Pages as one PDF file.

The two fonts are embedded, only with the characters used. No date and no random number goes in,
so the same pages give the same bytes.
"""

from collections.abc import Sequence
from io import BytesIO

from reportlab.lib.units import mm as points_per_mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from plans.pages.fonts import BOLD, REGULAR, text_width, type_size
from plans.pages.shapes import Anchor, Page, Shape, Solid, Text
from plans.pages.strokes import Pen, Stroke, strokes_of

_NAMES = {False: "DejaVuSansCondensed", True: "DejaVuSansCondensed-Bold"}
_BUTT = 0


def write_pdf(pages: Sequence[Page]) -> bytes:
    """Return the pages as one PDF file with a bookmark for each."""
    for is_bold, path in ((False, REGULAR), (True, BOLD)):
        if _NAMES[is_bold] not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(_NAMES[is_bold], str(path)))
    sink = BytesIO()
    canvas = Canvas(sink, invariant=1, pageCompression=1, initialFontName=_NAMES[False])
    canvas.setCreator("setout")
    canvas.setViewerPreference("PrintScaling", "None")  # templates and figures are to scale
    if pages:
        canvas.setTitle(pages[0].job_name)
        canvas.setSubject(f"cut plan {pages[0].fingerprint}")
    canvas.showOutline()
    for number, page in enumerate(pages):
        _write_page(canvas, page, f"page{number}")
    canvas.save()
    return sink.getvalue()


def _write_page(canvas: Canvas, page: Page, key: str) -> None:
    canvas.setPageSize((page.width_mm * points_per_mm, page.height_mm * points_per_mm))
    canvas.bookmarkPage(key)
    canvas.addOutlineEntry(page.title, key)
    canvas.scale(points_per_mm, points_per_mm)
    canvas.setLineCap(_BUTT)
    pen = None
    for shape in page.shapes:
        if not isinstance(shape, Solid):
            for stroke in strokes_of(shape):
                pen = _write_stroke(canvas, page, stroke, pen)
        _write_filled(canvas, page, shape)
    canvas.showPage()


def _write_stroke(canvas: Canvas, page: Page, stroke: Stroke, pen: Pen | None) -> Pen:
    if stroke.pen != pen:
        canvas.setLineWidth(stroke.pen.thickness)
        canvas.setDash(list(stroke.pen.dashes))
    up = page.height_mm
    canvas.line(stroke.x1, up - stroke.y1, stroke.x2, up - stroke.y2)
    return stroke.pen


def _write_filled(canvas: Canvas, page: Page, shape: Shape) -> None:
    match shape:
        case Solid(points=points):
            path = canvas.beginPath()
            path.moveTo(points[0][0], page.height_mm - points[0][1])
            for x, y in points[1:]:
                path.lineTo(x, page.height_mm - y)
            path.close()
            canvas.drawPath(path, stroke=0, fill=1)
        case Text():
            _write_text(canvas, page, shape)


def _write_text(canvas: Canvas, page: Page, text: Text) -> None:
    width = text_width(text.words, text.height, bold=text.bold)
    before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[text.anchor]
    canvas.setFont(_NAMES[text.bold], type_size(text.height))
    up = page.height_mm - text.y
    if not text.is_upright:
        canvas.drawString(text.x - before, up, text.words)
        return
    canvas.saveState()
    canvas.translate(text.x, up)
    canvas.rotate(90)
    canvas.drawString(-before, 0, text.words)
    canvas.restoreState()
