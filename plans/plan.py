"""The plan: everything that is printed, as plain data."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Protocol

from nesting.cut_sequence import Sequence as CutSequence
from nesting.cut_sequence import order_cuts
from nesting.job import Job
from nesting.layout import Layout
from nesting.lengths import Unit
from plans.sections.bound import Bound
from plans.sections.car import CarPage, make_car_page
from plans.sections.cautions import Caution, make_cautions
from plans.sections.fingerprint import make_fingerprint
from plans.sections.labels import Label, make_labels
from plans.sections.offcuts import OffcutRow, make_offcut_rows
from plans.sections.overview import Overview, make_overview
from plans.sections.part_list import PartRow, make_part_rows
from plans.sections.sheet_view import SheetView, make_sheet_view
from plans.sections.shopping import Shopping, make_shopping
from plans.sections.worked import work_out
from plans.sections.yard import YardPage, make_yard_pages


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """All sections of one printed plan.

    Attributes:
        job_name: Title of the job.
        unit: The one unit of all its pages.
        fingerprint: Code that changes with any size, position or figure; on every page.
        overview: First page.
        shopping: Second page.
        cautions: The notes that apply.
        sheets: One page or more each.
        parts: The parts list, by cabinet and code.
        labels: In the order of cutting.
        offcuts: What is left over.
        sequences: The cuts of every sheet in order; what the sections were made from.
        yard: What the yard is asked for, one page a kind of sheet.
        car: How the pieces are loaded; None where the job names no car.
    """

    job_name: str
    unit: Unit
    fingerprint: str
    overview: Overview
    shopping: Shopping
    cautions: tuple[Caution, ...]
    sheets: tuple[SheetView, ...]
    parts: tuple[PartRow, ...]
    labels: tuple[Label, ...]
    offcuts: tuple[OffcutRow, ...]
    sequences: tuple[CutSequence, ...]
    yard: tuple[YardPage, ...] = ()
    car: CarPage | None = None


class OneMaterial(Protocol):
    """What a plan needs to know of the search for one material and thickness."""

    @property
    def sheet_bound(self) -> int:
        """How many sheets any plan for the parts placed must use at least."""


class Solved(Protocol):
    """What a plan needs to know of a search; its result and `Figures` both have it."""

    @property
    def layout(self) -> Layout:
        """The layout to print."""

    @property
    def bound(self) -> Decimal:
        """What any plan for the parts placed must cost at least."""

    @property
    def groups(self) -> Sequence[OneMaterial]:
        """What is known of each material and thickness; empty where nothing is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """A layout that did not come from the search, with what is known of it.

    Attributes:
        layout: The layout to print.
        bound: What any plan must cost at least; 0 where nothing is known.
        groups: What is known of each material and thickness; empty where nothing is.
    """

    layout: Layout
    bound: Decimal = Decimal(0)
    groups: tuple[OneMaterial, ...] = ()


def make_plan(job: Job, solved: Solved) -> Plan:
    """Return everything that is printed for a layout of a job.

    The cuts of every sheet are put in order here. Nothing depends on time, chance or machine.
    """
    sequences = tuple(order_cuts(job, sheet) for sheet in solved.layout.sheets)
    worked = work_out(job, solved.layout, sequences)
    bound = Bound(cost=solved.bound, sheets=sum(group.sheet_bound for group in solved.groups))
    overview = make_overview(worked, bound)
    shopping = make_shopping(worked, bound)
    cautions = make_cautions(worked)
    sheets = tuple(make_sheet_view(job, sheet) for sheet in worked.sheets)
    parts, labels = make_part_rows(worked), make_labels(worked)
    offcuts = make_offcut_rows(worked)
    yard, car = make_yard_pages(worked), make_car_page(worked)
    return Plan(
        job_name=job.name,
        unit=job.unit,
        fingerprint=make_fingerprint(
            job.name,
            job.unit,
            overview,
            shopping,
            cautions,
            sheets,
            parts,
            labels,
            offcuts,
            yard,
            car,
        ),
        overview=overview,
        shopping=shopping,
        cautions=cautions,
        sheets=sheets,
        parts=parts,
        labels=labels,
        offcuts=offcuts,
        sequences=sequences,
        yard=yard,
        car=car,
    )
