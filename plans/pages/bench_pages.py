"""All pages for after the sheets are cut, in the order of their use: the parts, the bench."""

from plans.pages.checks_page import checks_section
from plans.pages.covering_page import covering_section
from plans.pages.frame import Draft, share_pages
from plans.pages.frame_page import assembly_section, frame_section
from plans.pages.holes_page import holes_section
from plans.pages.measure_first_page import measure_first_section
from plans.pages.paper import Paper
from plans.pages.parts_page import parts_section
from plans.pages.template_page import template_pages
from plans.plan import Plan


def bench_pages(plan: Plan, paper: Paper, *, turns_tiles: bool = False) -> tuple[Draft, ...]:
    """Return the parts list and what is needed at the bench.

    Args:
        plan: The plan.
        paper: To print on.
        turns_tiles: Whether every other tile of a template is printed upside down.
    """
    carcass = (parts_section, measure_first_section, frame_section, assembly_section, holes_section)
    closing = (checks_section, covering_section)
    return (
        *share_pages([section(plan, paper) for section in carcass], paper),
        *template_pages(plan, paper, turns=turns_tiles),
        *share_pages([section(plan, paper) for section in closing], paper),
    )
