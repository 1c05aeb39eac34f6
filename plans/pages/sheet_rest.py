"""The pages of a sheet after its first one: the rest of the cut table, and what ends it."""

from collections.abc import Sequence
from dataclasses import dataclass

from plans.pages.blocks import Block, flow, side_by_side, space, stack
from plans.pages.lettering import heading, paragraph
from plans.pages.sheet_drawing import draw_small
from plans.sections.sheet_view import SheetView

SMALL = ((78.0, 46.0), (58.0, 34.0), (44.0, 26.0))  # the copy of the drawing; low to save a page


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Rest:
    """What has to stand on the pages of a sheet.

    Attributes:
        view: The sheet.
        head: Head of the cut table.
        rows: All rows of the cut table.
        foot: What stands below the last row.
        width: Of the pages.
        room: Their height.
        said: Stands beside the small copy on every later page.
        said_once: Stands there on the first of them only.
    """

    view: SheetView
    head: Block
    rows: tuple[Block, ...]
    foot: tuple[Block, ...]
    width: float
    room: float
    said: str
    said_once: str


def fill_pages(rest: Rest, first: Block, done: int) -> list[Block]:
    """Return the bodies of all pages, with smaller copies of the drawing where that saves one.

    Args:
        rest: What has to stand there.
        first: The body of the first page.
        done: How many rows of the table it holds.
    """
    return min((_fill(rest, first, done, small) for small in SMALL), key=len)


def _fill(rest: Rest, first: Block, done: int, small: tuple[float, float]) -> list[Block]:
    bodies = [first]
    while done < len(rest.rows):
        said = (rest.said, rest.said_once) if len(bodies) == 1 else (rest.said,)
        body, done = _later_page(rest, done, said, small)
        bodies.append(body)
    return [*bodies[:-1], *flow([bodies[-1], *rest.foot], rest.room)]


def count_fitting(rows: Sequence[Block], room: float) -> int:
    """Return how many rows fit."""
    count, used = 0, 0.0
    while count < len(rows) and used + rows[count].height <= room:
        used += rows[count].height
        count += 1
    return count


def _later_page(
    rest: Rest, done: int, said: Sequence[str], small: tuple[float, float]
) -> tuple[Block, int]:
    """Return a further page of the table, and how many rows are done after it."""
    view, start = rest.view, small[0] + 6.0
    room_beside = rest.width - start
    general = f"Heavy: the cuts of this page. {view.home_text}. {view.face_text}"
    words = stack(
        [space(10.0), *(paragraph(text, room_beside) for text in (general, *said) if text)]
    )
    # The copy's height does not depend on which cuts it shows.
    height = max(draw_small(view, *small, frozenset()).height, words.height)
    count = max(1, count_fitting(rest.rows[done:], rest.room - height - rest.head.height))
    numbers = [row.number for row in view.rows[done : done + count]]
    copy = draw_small(view, *small, frozenset(numbers))
    cuts = f"Cuts {numbers[0]} to {numbers[-1]}" if count > 1 else f"Cut {numbers[0]}"
    title = heading(f"{cuts} of {len(rest.rows)}", room_beside)
    upper = side_by_side([(0.0, copy), (start, title), (start, words)])
    upper = Block(height=height, shapes=upper.shapes)
    return stack([upper, rest.head, *rest.rows[done : done + count]]), done + count
