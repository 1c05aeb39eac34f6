"""The job: everything the engine is told."""

from dataclasses import dataclass

from nesting.cabinets.build import CabinetBuild
from nesting.car import Car
from nesting.earlier import Earlier
from nesting.lengths import Length, Unit
from nesting.parts import Part
from nesting.saw import Keep, Saw, Times
from nesting.sheets import Sheet
from nesting.terms import Terms
from nesting.timber import Timber
from nesting.yard import Yard


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """A number that the plan rests on.

    Attributes:
        name: What it is, in the user's words, such as "kerf".
        value: Its value with unit, as text.
        is_default: True where the job file left it out.
        check: How to check it before the first cut.
        is_choice: True where nothing is to be measured: it is as one wants it.
    """

    name: str
    value: str
    is_default: bool
    check: str
    is_choice: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Parts, sheets and saw: the engine's whole input.

    Attributes:
        name: Title of the job.
        unit: The unit of the job file, used on every page.
        step: Sizes made by the calculator are rounded to this.
        saw: The saw and its guide.
        times: Minutes of work.
        keep: Which leftovers are worth keeping.
        sheets: Kinds of sheet, in the order of the file. Names are unique.
        parts: Kinds of part: those of the file first, then those of the cabinets.
        cabinets: What the calculator made, in the order of the file.
        assumptions: The numbers that the plan rests on, defaults marked.
        earlier: What an earlier plan led to, where the job is what is left of it; None for a new
            job.
        yard: The yard that makes the first cuts; None where all is cut at home.
        car: The car that what is bought goes home in; None where that does not matter.
        timber: The lengths that battens are cut from, in the order of the file.
        terms: What is asked of buying, sessions and batches.
    """

    name: str
    unit: Unit = Unit.MM
    step: Length
    saw: Saw = Saw()
    times: Times = Times()
    keep: Keep = Keep()
    sheets: tuple[Sheet, ...]
    parts: tuple[Part, ...]
    cabinets: tuple[CabinetBuild, ...] = ()
    assumptions: tuple[Assumption, ...] = ()
    earlier: Earlier | None = None
    yard: Yard | None = None
    car: Car | None = None
    timber: tuple[Timber, ...] = ()
    terms: Terms = Terms()
