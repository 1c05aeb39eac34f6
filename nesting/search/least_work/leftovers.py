"""What the leftovers of a layout are good for."""

from collections.abc import Iterator

from nesting.job import Job
from nesting.layout import Cut, Layout, Node, Rect, RestLeaf, SheetLayout, walk
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
    offcuts = []
    for _, node, rect in _walk(job, layout):
        if isinstance(node, RestLeaf) and node.is_offcut:
            length = min(rect.x + rect.length, high_x) - max(rect.x, low_x)
            width = min(rect.y + rect.width, high_y) - max(rect.y, low_y)
            offcuts.append((length, width))
    return offcuts


def count_slivers(job: Job, layout: SheetLayout) -> int:
    """Return how many leftovers of one sheet, trims apart, are too narrow to be held."""
    places = list(_walk(job, layout))
    trims = {(*path, 0) for path, node, _ in places if isinstance(node, Cut) and node.is_trim}
    return sum(
        isinstance(node, RestLeaf)
        and path not in trims
        and min(rect.length, rect.width) < job.saw.smallest_held
        for path, node, rect in places
    )


def _walk(job: Job, layout: SheetLayout) -> Iterator[tuple[tuple[int, ...], Node, Rect]]:
    sheet = job.sheets[layout.sheet]
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    for place in walk(layout.root, whole):
        yield place.path, place.node, place.rect


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
