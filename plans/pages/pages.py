"""All pages of a plan, in the order of their use."""

from plans.pages.bench_pages import bench_pages
from plans.pages.car_page import car_pages
from plans.pages.frame import number_pages, share_pages
from plans.pages.labels_page import labels_pages
from plans.pages.offcuts_page import offcuts_pages
from plans.pages.overview_page import overview_sections
from plans.pages.paper import Paper
from plans.pages.read_aloud_page import read_aloud_pages
from plans.pages.safety_page import safety_section, set_up_section
from plans.pages.shapes import Page
from plans.pages.sheet_page import sheet_pages
from plans.pages.shopping_page import shopping_section
from plans.pages.work_page import work_section
from plans.pages.yard_page import yard_pages
from plans.plan import Plan
from plans.sections.repeats import find_repeats
from plans.sections.sheet_notes import make_sheet_notes


def make_pages(
    plan: Plan, paper: Paper, *, read_aloud: bool = False, turns_tiles: bool = False
) -> tuple[Page, ...]:
    """Return a plan's pages on one size of paper.

    The wall, the pocket and the safety notes come before the sheets, the labels after them.

    Args:
        plan: The plan.
        paper: To print on.
        read_aloud: Also print the cuts of every sheet in words, after its pages.
        turns_tiles: Print every other tile of a template upside down.
    """
    drafts = [
        *share_pages([*overview_sections(plan, paper), work_section(plan, paper)], paper),
        *share_pages([shopping_section(plan, paper)], paper),
        *yard_pages(plan, paper),
        *car_pages(plan, paper),
        *share_pages([safety_section(plan, paper), set_up_section(plan, paper)], paper),
    ]
    alike = {row.code: row.look_alikes for row in plan.parts}
    for repeat in find_repeats(plan.sheets):
        notes = make_sheet_notes(plan.workshop, repeat.numbers)
        drafts += sheet_pages(
            repeat, plan.unit, plan.cautions, paper, alike, plan.handed, notes=notes
        )
        if read_aloud:
            drafts += read_aloud_pages(repeat.view, paper)
    drafts += bench_pages(plan, paper, turns_tiles=turns_tiles)
    drafts += labels_pages(plan, paper)
    drafts += offcuts_pages(plan, paper)
    return number_pages(drafts, plan)
