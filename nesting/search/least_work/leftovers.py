"""What the leftovers of a layout are good for."""

from nesting.job import Job
from nesting.layout import Layout, Rect, RestLeaf, SheetLayout, walk
from nesting.lengths import Length
from nesting.parts import Part
from nesting.search.grid import list_ways
from nesting.sheets import Sheet


def rate_leftovers(job: Job, layout: Layout) -> tuple[int, int, int]:
    """Return how useful the offcuts are; the larger is the better.

    First the area of the largest part that could be cut again from one of them, then the area of
    the largest offcut, then the area of all offcuts worth keeping. Areas are in square nanometres.
    """
    insured = largest = kept = 0
    for sheet in layout.sheets:
        stock = job.sheets[sheet.sheet]
        for piece in list_offcuts(job, sheet):
            kept += piece[0] * piece[1]
            largest = max(largest, piece[0] * piece[1])
            for part in job.parts:
                area = part.blank_length * part.blank_width
                if area > insured and fits_offcut(part, stock, piece):
                    insured = area
    return insured, largest, kept


def list_offcuts(job: Job, layout: SheetLayout) -> list[tuple[Length, Length]]:
    """Return what can be used of the offcuts of one sheet, extents along x and y."""
    sheet = job.sheets[layout.sheet]
    low_x, low_y = sheet.trim.left, sheet.trim.bottom
    high_x, high_y = sheet.length - sheet.trim.right, sheet.width - sheet.trim.top
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    offcuts = []
    for place in walk(layout.root, whole):
        if isinstance(place.node, RestLeaf) and place.node.is_offcut:
            rect = place.rect
            length = min(rect.x + rect.length, high_x) - max(rect.x, low_x)
            width = min(rect.y + rect.width, high_y) - max(rect.y, low_y)
            offcuts.append((length, width))
    return offcuts


def fits_offcut(part: Part, sheet: Sheet, piece: tuple[Length, Length]) -> bool:
    """Return whether a part can be cut from an offcut of a sheet."""
    if (part.material, part.thickness) != (sheet.material, sheet.thickness):
        return False
    sides = (part.blank_length, part.blank_width)
    return any(
        along_x <= piece[0] and along_y <= piece[1]
        for along_x, along_y in (
            sides[::-1] if turned else sides for turned in list_ways(part, sheet)
        )
    )
