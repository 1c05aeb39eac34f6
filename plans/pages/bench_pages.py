"""All pages for the bench, in the order of their use: after the sheets are cut, before labels."""

from plans.pages.checks_page import checks_pages
from plans.pages.covering_page import covering_pages
from plans.pages.frame import Draft, join_short
from plans.pages.frame_page import assembly_pages, frame_pages
from plans.pages.holes_page import holes_pages
from plans.pages.measure_first_page import measure_first_pages
from plans.pages.paper import Paper
from plans.pages.template_page import template_pages
from plans.plan import Plan


def bench_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return what is needed at the bench; nothing where only parts are cut."""
    carcass = (
        *measure_first_pages(plan, paper),
        *frame_pages(plan, paper),
        *assembly_pages(plan, paper),
    )
    return (
        *join_short(carcass),
        *holes_pages(plan, paper),
        *template_pages(plan, paper),
        *checks_pages(plan, paper),
        *covering_pages(plan, paper),
    )
