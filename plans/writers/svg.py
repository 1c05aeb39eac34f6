"""A page as an SVG file: plain text that reads the same from run to run."""

from collections.abc import Iterator
from xml.sax.saxutils import escape, quoteattr

from plans.pages.fonts import text_width, type_size
from plans.pages.shapes import Anchor, Page, Shape, Solid, Text
from plans.pages.strokes import Stroke, strokes_of

_FAMILY = "'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif"


def write_svg(page: Page) -> bytes:
    """Return a page as one SVG file, in millimetres.

    The typeface is named, not embedded; every text says how long it runs, so that another
    typeface is squeezed into its room.
    """
    width, height = _number(page.width_mm), _number(page.height_mm)
    size = f'width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}"'
    family = f'font-family={quoteattr(_FAMILY)} font-stretch="condensed"'
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" {size}>',
        f"<title>{escape(f'{page.job_name}, {page.title}, plan {page.fingerprint}')}</title>",
        f'<rect width="{width}" height="{height}" fill="white"/>',
        f'<g stroke="black" fill="black" {family}>',
    ]
    for shape in page.shapes:
        lines += _elements(shape)
    return "\n".join([*lines, "</g>", "</svg>", ""]).encode()


def _elements(shape: Shape) -> Iterator[str]:
    if isinstance(shape, Solid):
        points = " ".join(f"{_number(x)},{_number(y)}" for x, y in shape.points)
        yield f'<polygon points="{points}" stroke="none"/>'
        return
    for stroke in strokes_of(shape):
        yield _line(stroke)
    if isinstance(shape, Text):
        yield _text(shape)


def _line(stroke: Stroke) -> str:
    dashes = " ".join(_number(dash) for dash in stroke.pen.dashes)
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return (
        f'<line x1="{_number(stroke.x1)}" y1="{_number(stroke.y1)}" x2="{_number(stroke.x2)}"'
        f' y2="{_number(stroke.y2)}" stroke-width="{_number(stroke.pen.thickness)}"{dashed}/>'
    )


def _text(text: Text) -> str:
    width = text_width(text.words, text.height, bold=text.bold)
    x, y = _number(text.x), _number(text.y)
    anchor = "" if text.anchor is Anchor.START else f' text-anchor="{text.anchor.value}"'
    weight = ' font-weight="bold"' if text.bold else ""
    turn = f' transform="rotate(-90 {x} {y})"' if text.is_upright else ""
    return (
        f'<text x="{x}" y="{y}" font-size="{_number(type_size(text.height))}"'
        f' textLength="{_number(width)}" lengthAdjust="spacingAndGlyphs" stroke="none"'
        f"{anchor}{weight}{turn}>{escape(text.words)}</text>"
    )


def _number(value: float) -> str:
    """Return a number of millimetres to a hundredth."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
