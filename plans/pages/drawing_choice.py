"""How large a sheet is drawn: as large as can be, unless a little smaller saves a page."""

from plans.pages.lettering import FIGURE
from plans.pages.shapes import Line, LineKind, Role, Text
from plans.pages.sheet_drawing import Drawing, draw_sheet, size_of_drawing
from plans.pages.sheet_flow import SheetBlocks, plan_pages, warning_below

ROWS_WANTED = 5  # under a drawing, so that one sees how the cuts go on
STEP = 2.0  # from one height that is tried to the next
LEAST_SHARE = 0.67  # of the height that there is room for
LEAST_HEIGHT = 70.0  # drawings of long narrow pieces are low already
LETTERED = (Role.CODE, Role.CUT_NUMBER)
FEW = 4  # one code or number in so many may be small, or stand beside what it names


def choose_drawing(sheet: SheetBlocks) -> Drawing:
    """Return the drawing with which a sheet takes fewest pages.

    Where several do, one with enough rows below it is taken, and of these the largest. A drawing
    that is made smaller counts only if nearly all of its lettering is as large as it should be.

    Args:
        sheet: What has to stand on the pages besides the drawing.
    """
    width = sheet.first_width
    room = sheet.first_room - sheet.facts.height - warning_below(sheet).height
    _, tallest = size_of_drawing(sheet.view, width, room)
    largest: dict[tuple[int, int], float] = {}
    # A turned page holds no rows, so a smaller drawing saves nothing there.
    for height in [tallest] if sheet.is_turned else _heights(tallest):
        plan = plan_pages(sheet, height)
        key = (plan.page_count, -min(plan.counts[0], ROWS_WANTED))
        largest.setdefault(key, height)
    for _, height in sorted(largest.items()):
        if height == tallest:
            break
        smaller = draw_sheet(sheet.view, width, height)
        if _is_as_good(smaller):
            return smaller
    return draw_sheet(sheet.view, width, room)


def _heights(tallest: float) -> list[float]:
    """Return the heights that are tried, from the tallest down."""
    least = max(LEAST_HEIGHT, LEAST_SHARE * tallest)
    count = max(0, int((tallest - least) / STEP))
    return [tallest - STEP * step for step in range(count + 1)]


def _is_as_good(drawing: Drawing) -> bool:
    """Return whether every code and number has room, and few are small or stand beside."""
    lettered = [
        shape
        for shape in drawing.block.shapes
        if isinstance(shape, Text) and shape.role in LETTERED
    ]
    leaders = [
        shape
        for shape in drawing.block.shapes
        if isinstance(shape, Line) and shape.kind is LineKind.LEADER
    ]
    small = sum(text.height < FIGURE for text in lettered) + len(leaders)
    return not drawing.unlettered and small * FEW <= len(lettered)
