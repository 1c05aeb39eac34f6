"""What every screen of the phone page says: the texts of the printed pages, one step at a time.

Nothing is worked out or rounded here: every figure is the very text of the cut table.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

from plans.phone.held import Held, held_pieces
from plans.plan import Plan
from plans.sections.cautions import Caution
from plans.sections.codes import WASTE
from plans.sections.cut_table import CutRow
from plans.sections.overview import AssumedNumber
from plans.sections.set_up import INTRODUCTION, set_up_lines
from plans.sections.sheet_view import SheetView
from plans.sections.shopping import Shopping


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """In the shop's aisle: what to buy, and how to choose it off the stack."""

    key: str
    title: str
    shopping: Shopping
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Safety:
    """Every caution in full, before anything is set up or cut."""

    key: str
    title: str
    introduction: str
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """How the saw is measured and the first edge is made, and the numbers assumed."""

    key: str
    title: str
    lines: tuple[str, ...]
    assumed: tuple[AssumedNumber, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetStart:
    """Before the first cut of a sheet: how it lies.

    Attributes:
        key: Name of the screen, the same every time the plan is made.
        title: "Sheet 2".
        view: The sheet.
        cautions: The short lines that stand on the pages of a sheet.
    """

    key: str
    title: str
    view: SheetView
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One cut.

    Attributes:
        key: Name of the screen.
        title: "Sheet 2".
        count: "cut 4 of 23".
        view: The sheet.
        held: The cut, with the piece in hand.
        people: "TWO PEOPLE" or "one person".
        remark: What to look out for, without the people.
        kept: What is kept: code, and for a part its name and status.
        freed: What falls free, likewise; "" where nothing does.
        setting: Whether the guide stays where it is.
        cautions: The short lines that stand on the pages of a sheet.
    """

    key: str
    title: str
    count: str
    view: SheetView
    held: Held
    people: str
    remark: str
    kept: tuple[str, str]
    freed: tuple[str, str]
    setting: str
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """After the last cut: what did not fit, and what is left over."""

    key: str
    title: str
    unplaced: tuple[str, ...]
    offcuts: tuple[tuple[str, str], ...]


TWO_PEOPLE = "TWO PEOPLE"

Screen: TypeAlias = Shop | Safety | SetUp | SheetStart | Cut | End


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Somewhere to jump to: the first of several screens.

    Attributes:
        key: Name of its first screen, and the start of the names of all.
        title: What the list of places calls it.
        more: What stands beside the title.
    """

    key: str
    title: str
    more: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PhonePage:
    """The whole phone page.

    Attributes:
        job_name: Title of the job.
        fingerprint: That of the printed plan.
        screens: In the order of use.
        places: Where one can jump to.
        views: The sheets, for drawings that several screens share.
    """

    job_name: str
    fingerprint: str
    screens: tuple[Screen, ...]
    places: tuple[Place, ...]
    views: tuple[SheetView, ...]


def make_phone_page(plan: Plan) -> PhonePage:
    """Return the phone page of a plan; the same plan gives the same page."""
    return PhonePage(
        job_name=plan.job_name,
        fingerprint=plan.fingerprint,
        screens=tuple(_screens(plan)),
        places=tuple(_places(plan)),
        views=plan.sheets,
    )


def _places(plan: Plan) -> Iterator[Place]:
    yield Place(key="shop", title="Shopping list", more="")
    yield Place(key="safety", title="Safety", more="")
    yield Place(key="set-up", title="Setting up", more="")
    for view in plan.sheets:
        cuts = "1 cut" if len(view.rows) == 1 else f"{len(view.rows)} cuts"
        title = f"Sheet {view.number}"
        yield Place(key=f"sheet-{view.number}", title=title, more=f"{view.material}, {cuts}")


def _screens(plan: Plan) -> Iterator[Screen]:
    yield Shop(
        key="shop",
        title="Shopping list",
        shopping=plan.shopping,
        cautions=_short(plan, "shopping"),
    )
    yield Safety(key="safety", title="Safety", introduction=INTRODUCTION, cautions=plan.cautions)
    yield SetUp(
        key="set-up",
        title="Setting up",
        lines=set_up_lines(plan.unit),
        assumed=plan.overview.assumed,
    )
    for view in plan.sheets:
        yield from _sheet_screens(view, _short(plan, "sheet"))
    yield End(
        key="end",
        title="All cuts made",
        unplaced=plan.overview.unplaced,
        offcuts=tuple((row.code, row.size) for row in plan.offcuts),
    )


def _short(plan: Plan, where: str) -> tuple[str, ...]:
    return tuple(caution.short for caution in plan.cautions if where in caution.where)


def _sheet_screens(view: SheetView, cautions: tuple[str, ...]) -> Iterator[Screen]:
    key, title = f"sheet-{view.number}", f"Sheet {view.number}"
    yield SheetStart(key=key, title=title, view=view, cautions=cautions)
    names = {
        part.code: f"{part.name}, {part.status}" if part.status != "final" else part.name
        for part in view.parts
    }
    names |= {rest.code: "offcut" for rest in view.rests if rest.code != WASTE}
    for held in held_pieces(view):
        row = held.row
        yield Cut(
            key=f"{key}-cut-{row.number}",
            title=title,
            count=f"cut {row.number} of {len(view.rows)}",
            view=view,
            held=held,
            people=TWO_PEOPLE if row.people > 1 else "one person",
            remark=row.remark.removeprefix(TWO_PEOPLE).removeprefix("; "),
            kept=(row.keep_code, names.get(row.keep_code, "")),
            freed=(row.free_code, names.get(row.free_code, "")),
            setting=_setting(row),
            cautions=cautions,
        )


def _setting(row: CutRow) -> str:
    if not (row.guide_left or row.guide_right):
        return "The yard makes this cut."
    if row.same_as:
        return f"Same setting as cut {row.same_as}: do not move the guide."
    return "New setting. Guide at"
