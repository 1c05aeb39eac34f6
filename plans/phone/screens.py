"""The phone page of a plan: its screens in the order of use, and where one can jump to.

Nothing is worked out or rounded here: every figure is the very text of the printed pages.
"""

from collections.abc import Iterator

from plans.phone.records import (
    End,
    Holes,
    Loading,
    PhonePage,
    Place,
    Safety,
    Screen,
    SetUp,
    SheetStart,
    Shop,
    Yard,
)
from plans.phone.sheet_screens import sheet_screens
from plans.plan import Plan
from plans.sections.handed import say_stand
from plans.sections.repeats import Repeat, find_repeats
from plans.sections.set_up import INTRODUCTION, set_up_lines


def make_phone_page(plan: Plan) -> PhonePage:
    """Return the phone page of a plan; the same plan gives the same page."""
    repeats = find_repeats(plan.sheets)
    screens = (*_before_sawing(plan), *_sawing(plan, repeats), *_holes(plan), _end(plan))
    return PhonePage(
        job_name=plan.job_name,
        fingerprint=plan.fingerprint,
        screens=screens,
        places=tuple(_places(screens)),
        views=tuple(repeat.view for repeat in repeats),
    )


def _before_sawing(plan: Plan) -> Iterator[Screen]:
    """Yield the shop's aisle, the yard, the car, and what must be read before the first cut."""
    yield Shop(
        key="shop",
        title="Shopping list",
        shopping=plan.shopping,
        cautions=_short(plan, "shopping"),
    )
    for number, page in enumerate(plan.yard, start=1):
        yield Yard(key=f"yard-{number}", title="For the yard", page=page)
    if plan.car is not None:
        yield Loading(key="car", title="Into the car", page=plan.car)
    yield Safety(key="safety", title="Safety", introduction=INTRODUCTION, cautions=plan.cautions)
    yield SetUp(
        key="set-up",
        title="Setting up",
        lines=(*set_up_lines(plan.unit, plan.blocks), f"At every cut {plan.handed.stand}."),
        note=plan.handed.note,
        assumed=plan.overview.assumed,
    )


def _sawing(plan: Plan, repeats: tuple[Repeat, ...]) -> Iterator[Screen]:
    views = {view.number: view for view in plan.sheets}
    cautions = (say_stand(plan.handed), *_short(plan, "sheet"))
    for repeat in repeats:
        copies = tuple(views[number] for number in repeat.numbers[1:])
        yield from sheet_screens(repeat, copies, plan.handed, plan.workshop.sessions, cautions)


def _holes(plan: Plan) -> Iterator[Screen]:
    for number, panel in enumerate(plan.bench.holes, start=1):
        yield Holes(
            key=f"holes-{number}",
            title=f"Holes: {panel.panel}",
            panel=panel,
            cautions=_short(plan, "holes"),
        )


def _end(plan: Plan) -> End:
    return End(
        key="end",
        title="All cuts made",
        unplaced=plan.overview.unplaced,
        offcuts=tuple((row.code, row.size) for row in plan.offcuts),
        on_paper=f"On paper only: {', '.join(_on_paper(plan))}.",
    )


def _on_paper(plan: Plan) -> Iterator[str]:
    """Yield what the phone does not show, by the titles of its pages."""
    bench = plan.bench
    yield "the parts list"
    if bench.waiting:
        yield "Measure first"
    if bench.frames:
        yield "Frame and joints, Assembly"
    if bench.templates:
        yield "the templates at full size"
    if bench.checks:
        yield "Checks"
    if bench.rolls:
        yield "Covering"
    yield "the labels, Offcuts and log"


def _short(plan: Plan, where: str) -> tuple[str, ...]:
    return tuple(caution.short for caution in plan.cautions if where in caution.where)


def _places(screens: tuple[Screen, ...]) -> Iterator[Place]:
    """Yield where one can jump to: every screen but the single cuts and the end."""
    for screen in screens:
        match screen:
            case SheetStart(repeat=Repeat(view=view)):
                cuts = "1 cut" if len(view.rows) == 1 else f"{len(view.rows)} cuts"
                yield Place(key=screen.key, title=screen.title, more=f"{view.material}, {cuts}")
            case Yard(page=page):
                yield Place(key=screen.key, title=screen.title, more=page.heading)
            case Holes(panel=panel):
                yield Place(key=screen.key, title=screen.title, more=panel.design)
            case Shop() | Loading() | Safety() | SetUp():
                yield Place(key=screen.key, title=screen.title, more="")
