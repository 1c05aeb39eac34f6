"""The screens of the phone page as records: what each says, before it is written.

Every figure is the very text of the printed pages.
"""

from dataclasses import dataclass
from typing import TypeAlias

from plans.phone.held import Held
from plans.sections.car import CarPage
from plans.sections.cautions import Caution
from plans.sections.holes import PanelHoles
from plans.sections.overview import AssumedNumber
from plans.sections.repeats import Repeat
from plans.sections.sheet_view import SheetView
from plans.sections.shopping import Shopping
from plans.sections.yard import YardPage


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """In the shop's aisle: what to buy, and how to choose it off the stack."""

    key: str
    title: str
    shopping: Shopping
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Yard:
    """At the yard's counter: what is cut there of one kind of sheet."""

    key: str
    title: str
    page: YardPage


@dataclass(frozen=True, slots=True, kw_only=True)
class Loading:
    """Beside the car: what goes in, in order."""

    key: str
    title: str
    page: CarPage


@dataclass(frozen=True, slots=True, kw_only=True)
class Safety:
    """Every caution in full, before anything is set up or cut."""

    key: str
    title: str
    introduction: str
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """How the saw is measured and the first edge is made, and the numbers assumed.

    Attributes:
        key: Name of the screen.
        title: "Setting up".
        lines: What to do, in order; the last says where to stand.
        note: The caution about the hand that holds the saw.
        assumed: The numbers assumed.
    """

    key: str
    title: str
    lines: tuple[str, ...]
    note: str
    assumed: tuple[AssumedNumber, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetStart:
    """Before the first cut of a sheet, or of several that are cut alike: how it lies.

    Attributes:
        key: Name of the screen, the same every time the plan is made.
        title: "Sheet 2", or "Sheet 2 × 3".
        repeat: The sheet.
        alike: Which sheets are cut alike, "" for one.
        cautions: Where to stand, and the short lines that stand on the pages of a sheet.
    """

    key: str
    title: str
    repeat: Repeat
    alike: str
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Guide:
    """Where the guide goes on one side of the blade.

    Attributes:
        sign: "L" or "R"; with blocks, the block and "at".
        figure: From the edge that is measured from.
        is_off: True where it would lie off the piece: it is struck out.
    """

    sign: str
    figure: str
    is_off: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Copy:
    """One of several sheets that are cut alike, at one cut.

    Attributes:
        number: Number of the sheet.
        hold: Code of its piece in hand.
        made: Codes of what is kept and what falls free.
    """

    number: int
    hold: str
    made: tuple[str, ...]


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
        guides: The places for the guide, that of the hand first; none for a cut of the yard.
        copies: The sheets to tick, where several are cut alike.
        cautions: Where to stand, and the short lines that stand on the pages of a sheet.
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
    guides: tuple[Guide, ...]
    copies: tuple[Copy, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """After the last cut of a session: where the work can be left.

    Attributes:
        key: Name of the screen.
        title: "Stop here".
        lines: Which sessions are over, and what lies about.
    """

    key: str
    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Holes:
    """At the bench: the holes of one panel."""

    key: str
    title: str
    panel: PanelHoles
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """After the last cut: what did not fit, what is left over, and what only the paper shows."""

    key: str
    title: str
    unplaced: tuple[str, ...]
    offcuts: tuple[tuple[str, str], ...]
    on_paper: str


Screen: TypeAlias = Shop | Yard | Loading | Safety | SetUp | SheetStart | Cut | Stop | Holes | End


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
