"""The guide still stands where the last cut left it: what can use that comes first."""

from dataclasses import replace

from nesting.cut_sequence import order_cuts
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.garage.remaining import Remaining
from nesting.layout import Layout, SheetLayout


def put_standing_first(
    remaining: Remaining, layout: Layout, planned: Planned, marks: Marks
) -> Layout:
    """Return a layout with the piece first that the guide still stands for, if there is one.

    Args:
        remaining: What is left of the job.
        layout: Its layout.
        planned: The plan that was being cut.
        marks: What has been marked of it.
    """
    job = remaining.job
    if marks.last_cut is None:
        return layout
    number, cut_number = marks.last_cut
    cut = planned.sheets[number - 1].cuts[cut_number - 1]
    keep = cut.at + cut.removed if cut.is_trim else cut.at

    def moves_guide(sheet: SheetLayout) -> bool:
        if sheet.sheet >= len(remaining.in_hand) or not remaining.in_hand[sheet.sheet].is_cut:
            return True
        first = next(iter(order_cuts(job, sheet).steps), None)
        return first is None or (first.by, first.direction, first.is_trim, first.keep) != (
            cut.by,
            cut.direction,
            cut.is_trim,
            keep,
        )

    return replace(layout, sheets=tuple(sorted(layout.sheets, key=moves_guide)))
