"""What every page has: its title, the job, the fingerprint and "page n of N"."""

from collections.abc import Sequence
from dataclasses import dataclass

from plans.pages.blocks import Block, Section, flow_sections, moved
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import NOTE, fit, heading, shorten
from plans.pages.paper import LEFT, TOP, Paper
from plans.pages.shapes import Anchor, Line, LineKind, Page, Role, Shape, Text
from plans.plan import Plan

TITLE = 7.0
BASELINE = 9.2
HEAD = 15.0  # from the top margin to the body

SECTION = 5.6  # the title of what begins below something else
TITLES_APART = "; "  # between the titles of what stands on one page


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A page that does not know its number yet.

    Attributes:
        title: Of the page.
        beside: A few words after the title, smaller.
        paper: As it is turned for this page.
        body: What stands below the head.
    """

    title: str
    beside: str = ""
    paper: Paper
    body: Block


def body_room(paper: Paper) -> float:
    """Return the height of a page's body."""
    return paper.body_height - HEAD


def share_pages(sections: Sequence[Section], paper: Paper) -> tuple[Draft, ...]:
    """Return sections for one place, one after the other; nothing where all are empty.

    A page is called by the titles of all that stands on it.
    """
    filled = [section for section in sections if section.blocks]
    if not filled:
        return ()
    pages = flow_sections(
        filled, body_room(paper), lambda title: heading(title, paper.body_width, height=SECTION)
    )
    return tuple(
        Draft(title=TITLES_APART.join(page.titles), paper=paper, body=page.body) for page in pages
    )


def number_pages(drafts: Sequence[Draft], plan: Plan) -> tuple[Page, ...]:
    """Return the pages with their heads, in order."""
    return tuple(
        Page(
            width_mm=draft.paper.width_mm,
            height_mm=draft.paper.height_mm,
            title=printable(draft.title),
            job_name=plan.job_name,
            fingerprint=plan.fingerprint,
            shapes=(
                *moved(_head(draft, plan, number, len(drafts)), LEFT, TOP),
                *moved(draft.body.shapes, LEFT, TOP + HEAD),
            ),
        )
        for number, draft in enumerate(drafts, start=1)
    )


def _head(draft: Draft, plan: Plan, number: int, count: int) -> tuple[Shape, ...]:
    width = draft.paper.body_width
    title = printable(draft.title)
    of_pages = f"plan {plan.fingerprint}   page {number} of {count}"
    right_start = width - max(text_width(of_pages, NOTE), width / 3)
    height = fit(title, right_start - 4.0, TITLE, NOTE, bold=True) or NOTE
    title_end = text_width(title, height, bold=True)
    shapes: list[Shape] = [
        Text(x=0, y=BASELINE, words=title, height=height, role=Role.TITLE, bold=True),
        Text(
            x=width,
            y=4.6,  # room above for stacked accents
            words=shorten(plan.job_name, width / 3, NOTE, bold=True),
            height=NOTE,
            bold=True,
            anchor=Anchor.END,
        ),
        Text(x=width, y=BASELINE, words=printable(of_pages), height=NOTE, anchor=Anchor.END),
        Line(x1=0, y1=12.0, x2=width, y2=12.0, kind=LineKind.HEAVY_RULE),
    ]
    room = right_start - title_end - 8
    if draft.beside and room > 0:
        words = shorten(draft.beside, room, NOTE)
        shapes.append(Text(x=title_end + 4, y=BASELINE, words=words, height=NOTE))
    return tuple(shapes)
