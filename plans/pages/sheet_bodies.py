"""The pages of a sheet filled: drawing and first rows, then the rest of the table and the foot."""

from collections.abc import Iterator

from plans.pages.blocks import Block, flow, side_by_side, stack
from plans.pages.lettering import heading
from plans.pages.sheet_drawing import draw_small
from plans.pages.sheet_flow import (
    BESIDE_COPY,
    PagePlan,
    ReasonPlace,
    SheetBlocks,
    foot_blocks,
    plan_pages,
    warning_below,
    warning_beside,
    words_beside,
)


def fill_pages(sheet: SheetBlocks, drawing: Block) -> list[Block]:
    """Return the bodies of all pages of a sheet.

    Args:
        sheet: What has to stand there besides the drawing.
        drawing: Of the sheet, for its first page.
    """
    plan = plan_pages(sheet, drawing.height)
    bodies = [_first_page(sheet, drawing, plan), *_later_pages(sheet, plan)]
    return [*bodies[:-1], *flow([bodies[-1], *foot_blocks(sheet, plan.reason_place)], sheet.room)]


def _first_page(sheet: SheetBlocks, drawing: Block, plan: PagePlan) -> Block:
    count = plan.counts[0]
    table = [sheet.head, *sheet.rows[:count]] if count else []
    reason = [sheet.reason] if plan.reason_place is ReasonPlace.FIRST_PAGE else []
    beside = warning_beside(sheet, drawing.height)
    if beside is None:
        return stack([sheet.facts, drawing, *table, warning_below(sheet), *reason])
    return stack([sheet.facts, side_by_side([(0.0, drawing), beside]), *table, *reason])


def _later_pages(sheet: SheetBlocks, plan: PagePlan) -> Iterator[Block]:
    """Yield the further pages of the table, each with a small copy that has its cuts heavy."""
    done, *later = plan.counts
    start = plan.small[0] + BESIDE_COPY
    has_reason = plan.reason_place is ReasonPlace.BESIDE_COPY
    for count in later:
        numbers = [row.number for row in sheet.view.rows[done : done + count]]
        cuts = f"Cuts {numbers[0]} to {numbers[-1]}" if count > 1 else f"Cut {numbers[0]}"
        title = heading(f"{cuts} of {len(sheet.rows)}", sheet.width - start)
        words = words_beside(sheet, plan.small, has_reason=has_reason)
        copy = draw_small(sheet.view, *plan.small, frozenset(numbers))
        upper = side_by_side([(0.0, copy), (start, title), (start, words)])
        yield stack([upper, sheet.head, *sheet.rows[done : done + count]])
        done += count
        has_reason = False
