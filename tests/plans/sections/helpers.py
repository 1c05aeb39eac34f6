"""A worked-out plan for the tests of sections."""

from nesting.cut_sequence import order_cuts
from nesting.job import Job
from nesting.layout import Layout
from plans.sections.worked import Worked, work_out


def worked_out(job: Job, layout: Layout) -> Worked:
    """Return a layout with its cuts in order and its codes."""
    return work_out(job, layout, tuple(order_cuts(job, sheet) for sheet in layout.sheets))
