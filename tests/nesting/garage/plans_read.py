"""Plans made by hand and read back, for tests of what comes after the first cut."""

from typing import Any

from nesting.garage.events import CutMade, Mark
from nesting.garage.marking import add_marks
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.job import Job
from nesting.layout import Layout
from plans.plan import Figures, make_plan
from plans.plan_file import dump, plan_document
from plans.plan_reading import planned_of
from plans.rehearsal import rehearse


def document_of(job: Job, layout: Layout) -> dict[str, Any]:
    """Return the plan file of a layout; it must pass its rehearsal."""
    figures = Figures(layout=layout)
    document = plan_document(job, figures, make_plan(job, figures))
    assert rehearse(document).faults == ()
    assert dump(document)
    return document


def planned(job: Job, layout: Layout) -> Planned:
    """Return a layout as it reads back from its plan file."""
    figures = Figures(layout=layout)
    return planned_of(plan_document(job, figures, make_plan(job, figures)))


def after_cuts(plan: Planned, number: int, *more: Mark) -> Marks:
    """Return the marks after so many cuts, counted over all sheets in order, and more."""
    cuts = [
        CutMade(sheet=sheet.number, cut=cut.number) for sheet in plan.sheets for cut in sheet.cuts
    ]
    return add_marks(plan, Marks(), (*cuts[:number], *more))
