"""What goes on which page of a sheet: reckoned from heights alone, before anything is drawn."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import product

from plans.pages.blocks import Block, flow, space, stack
from plans.pages.lettering import paragraph
from plans.pages.sheet_drawing import height_of_small, size_of_drawing
from plans.sections.sheet_view import SheetView

Size = tuple[float, float]

SMALL: tuple[Size, ...] = ((78.0, 46.0), (58.0, 34.0), (44.0, 26.0))
"""Sizes of the copy of the drawing on later pages; a low one to save a page."""
BESIDE_COPY = 6.0  # white between the copy and the words beside it
BESIDE_DRAWING = 3.0  # the same for the cautions beside the drawing
LEAST_BESIDE = 40.0  # width of these; narrower ones are hard to read
TITLE_ROOM = 8.0  # above these words
FEWEST_ROWS = 3  # under a drawing; fewer would look like the whole table


class ReasonPlace(Enum):
    """Where it stands why the cuts come in this order."""

    FIRST_PAGE = "first page"
    BESIDE_COPY = "beside the small copy of the second page"
    BELOW_TABLE = "below the last row"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SheetBlocks:
    """What has to stand on the pages of a sheet, but for its drawing.

    Attributes:
        view: The sheet.
        facts: Stand above the drawing.
        warning: The short cautions, beside the drawing or at the end of its page; "" for none.
        head: Head of the cut table.
        rows: All rows of the cut table.
        why: Why the cuts come in this order.
        foot: What stands below the last row.
        said: Stands beside the small copy on every later page.
        width: Of the upright pages.
        first_width: Of the first page.
        first_room: Height of it.
        room: Height of every other page.
        is_turned: Whether the first page is turned; it has no rows then.
    """

    view: SheetView
    facts: Block
    warning: str
    head: Block
    rows: tuple[Block, ...]
    why: str
    foot: tuple[Block, ...]
    said: str
    width: float
    first_width: float
    first_room: float
    room: float
    is_turned: bool

    @property
    def reason(self) -> Block:
        """Why the cuts come in this order, as a paragraph of its own."""
        return stack([space(1.0), paragraph(self.why, self.width)])


@dataclass(frozen=True, slots=True, kw_only=True)
class PagePlan:
    """What goes on which page.

    Attributes:
        counts: Rows on the first page, and on every later one that has some.
        small: Size of the copy of the drawing on later pages.
        reason_place: Where the reason stands.
        page_count: Pages with the foot.
    """

    counts: tuple[int, ...]
    small: Size
    reason_place: ReasonPlace
    page_count: int


def plan_pages(sheet: SheetBlocks, drawing_height: float) -> PagePlan:
    """Return the fewest pages under a drawing of this height, with the copies as large as can be.

    Args:
        sheet: What has to stand there.
        drawing_height: Of the drawing on the first page.
    """
    used = sheet.facts.height + drawing_height
    if warning_beside(sheet, drawing_height) is None:
        used += warning_below(sheet).height
    count = _rows_on_first(sheet, sheet.first_room - used)
    if count:
        used += sheet.head.height + _height(sheet.rows[:count])
    if used + sheet.reason.height <= sheet.first_room:
        used += sheet.reason.height
        places = [ReasonPlace.FIRST_PAGE]
    elif count < len(sheet.rows):
        places = [ReasonPlace.BESIDE_COPY, ReasonPlace.BELOW_TABLE]
    else:
        places = [ReasonPlace.BELOW_TABLE]
    ways = (_plan(sheet, count, used, small, place) for small, place in product(SMALL, places))
    return min(ways, key=lambda way: way.page_count)


def foot_blocks(sheet: SheetBlocks, place: ReasonPlace) -> tuple[Block, ...]:
    """Return what stands below the last row, the reason first where it has its place there."""
    return (sheet.reason, *sheet.foot) if place is ReasonPlace.BELOW_TABLE else sheet.foot


def warning_below(sheet: SheetBlocks) -> Block:
    """Return the cautions as they stand below drawing and rows, nothing where there are none."""
    if not sheet.warning:
        return Block(height=0.0)
    return stack([space(2.0), paragraph(sheet.warning, sheet.first_width, bold=True)])


def warning_beside(sheet: SheetBlocks, drawing_height: float) -> tuple[float, Block] | None:
    """Return the cautions as they stand right of a drawing, from their x; None without room."""
    drawn, _ = size_of_drawing(sheet.view, sheet.first_width, drawing_height)
    start = drawn + BESIDE_DRAWING
    if not sheet.warning or sheet.first_width - start < LEAST_BESIDE:
        return None
    words = stack(
        [space(BESIDE_DRAWING), paragraph(sheet.warning, sheet.first_width - start, bold=True)]
    )
    return (start, words) if words.height <= drawing_height else None


def words_beside(sheet: SheetBlocks, small: Size, *, has_reason: bool) -> Block:
    """Return what is said beside the small copy on a later page, below that page's title."""
    general = f"Heavy: the cuts of this page. {sheet.view.home_text}. {sheet.view.face_text}"
    texts = (general, sheet.said, sheet.why if has_reason else "")
    room = sheet.width - small[0] - BESIDE_COPY
    return stack([space(TITLE_ROOM), *(paragraph(text, room) for text in texts if text)])


def _rows_on_first(sheet: SheetBlocks, room: float) -> int:
    """Return how many rows stand under the drawing: none rather than so few as to mislead."""
    count = 0 if sheet.is_turned else _count_fitting(sheet.rows, room - sheet.head.height)
    return count if count >= min(FEWEST_ROWS, len(sheet.rows)) else 0


def _plan(sheet: SheetBlocks, count: int, used: float, small: Size, place: ReasonPlace) -> PagePlan:
    """Return the pages that follow on a first one.

    Args:
        sheet: What has to stand there.
        count: Rows on the first page.
        used: How much of it is used.
        small: Size of the copies.
        place: Of the reason.
    """
    later = list(_later_pages(sheet, count, small, place))
    last_used = later[-1][1] if later else used
    last = Block(height=last_used, shapes=sheet.head.shapes[:1])
    foot = [_outline(block) for block in foot_blocks(sheet, place)]
    return PagePlan(
        counts=(count, *(rows for rows, _ in later)),
        small=small,
        reason_place=place,
        page_count=len(later) + len(flow([last, *foot], sheet.room)),
    )


def _later_pages(
    sheet: SheetBlocks, done: int, small: Size, place: ReasonPlace
) -> Iterator[tuple[int, float]]:
    """Yield for every later page of the table its rows, and how much of it is used."""
    copy = height_of_small(sheet.view, *small)
    has_reason = place is ReasonPlace.BESIDE_COPY
    while done < len(sheet.rows):
        words = words_beside(sheet, small, has_reason=has_reason)
        upper = max(copy, words.height) + sheet.head.height
        count = max(1, _count_fitting(sheet.rows[done:], sheet.room - upper))
        yield count, upper + _height(sheet.rows[done : done + count])
        done += count
        has_reason = False


def _outline(block: Block) -> Block:
    """Return a block as high, with one shape at most: enough to reckon with."""
    return replace(block, shapes=block.shapes[:1])


def _count_fitting(rows: Sequence[Block], room: float) -> int:
    count, used = 0, 0.0
    while count < len(rows) and used + rows[count].height <= room:
        used += rows[count].height
        count += 1
    return count


def _height(rows: Sequence[Block]) -> float:
    return sum(row.height for row in rows)
