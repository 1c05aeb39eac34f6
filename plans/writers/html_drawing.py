"""The drawings of the phone page: every sheet once, and what each cut adds to it."""

from collections.abc import Iterable
from html import escape

from plans.phone.drawing import Box, Code, Stroke, draw_codes, draw_cut, draw_sheet
from plans.phone.records import Cut
from plans.sections.sheet_view import SheetView


def shared_drawings(views: Iterable[SheetView]) -> str:
    """Return what the drawings share: the hatch, and every sheet once."""
    hatch = (
        '<pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse"'
        ' patternTransform="rotate(45)"><path d="M3 0V6" stroke="#000" stroke-width="1.2"/>'
        "</pattern>"
        '<pattern id="crossed" width="6" height="6" patternUnits="userSpaceOnUse"'
        ' patternTransform="rotate(45)"><path d="M3 0V6M0 3H6" stroke="#000" stroke-width="1.2"/>'
        "</pattern>"
        '<pattern id="dashed" width="6" height="6" patternUnits="userSpaceOnUse"'
        ' patternTransform="rotate(-45)"><path d="M3 0V4" stroke="#000" stroke-width="1.2"/>'
        "</pattern>"
    )
    sheets = "".join(_sheet_group(view) for view in views)
    return f'<svg class="store" aria-hidden="true"><defs>{hatch}{sheets}</defs></svg>'


def _sheet_group(view: SheetView) -> str:
    drawn = draw_sheet(view)
    boxes = [
        *(_rect(box, "waste") for box in drawn.waste),
        *(_rect(box, "offcut") for box in drawn.offcuts),
        *(_rect(box, "thin") for box in drawn.parts),
        *(_rect(box, "defect") for box in drawn.defects),
        *(_rect(box, "stain") for box in drawn.stains),
        _rect(drawn.outline, "sheet"),
        *(_line(arm, "home") for arm in drawn.home),
    ]
    return f'<g id="drawn-{view.number}">{"".join(boxes)}</g>'


def picture(view: SheetView, marks: str = "") -> str:
    """Return the drawing of a sheet with what a cut adds to it."""
    drawn = draw_sheet(view)
    size = f'width="{drawn.width:g}" height="{drawn.height:g}"'
    box = f'viewBox="0 0 {drawn.width:g} {drawn.height:g}"'
    return (
        f'<svg {size} {box} role="img" aria-label="Sheet {view.number}">'
        f'<use href="#drawn-{view.number}"/>{marks}</svg>'
    )


def part_codes(view: SheetView) -> str:
    """Return the codes of what a sheet is cut into."""
    return _codes(draw_codes(view))


def cut_marks(screen: Cut) -> str:
    """Return what a cut adds: the piece in hand, the edge to measure from, the cut, the codes."""
    drawn = draw_cut(screen.view, screen.held)
    piece, edge = _rect(drawn.piece, "piece"), _line(drawn.edge, "edge")
    return f"{piece}{edge}{_rect(drawn.band, 'band')}{_codes(drawn.codes)}"


def _codes(codes: Iterable[Code]) -> str:
    return "".join(
        f'<text class="name" x="{code.x:g}" y="{code.y:g}">{escape(code.words)}</text>'
        for code in codes
    )


def _rect(box: Box, kind: str) -> str:
    return (
        f'<rect class="{kind}" x="{box.x:g}" y="{box.y:g}" width="{box.width:g}"'
        f' height="{box.height:g}"/>'
    )


def _line(stroke: Stroke, kind: str) -> str:
    return (
        f'<line class="{kind}" x1="{stroke.x1:g}" y1="{stroke.y1:g}" x2="{stroke.x2:g}"'
        f' y2="{stroke.y2:g}"/>'
    )
