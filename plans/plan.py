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
from nesting.saw import Hand
from plans.sections.battens import BattenSection, make_batten_sections
from plans.sections.bench_checks import BenchChecks, make_bench_checks
from plans.sections.bound import Bound
from plans.sections.car import CarPage, make_car_page
from plans.sections.cautions import Caution, make_cautions
from plans.sections.covering import RollPlan, make_roll_plans
from plans.sections.fingerprint import make_fingerprint
from plans.sections.frame import Frame, make_frames
from plans.sections.gauge_blocks import GaugeBlock, make_gauge_blocks
from plans.sections.handed import Handed, make_handed
from plans.sections.holes import HoleOrder, PanelHoles, make_hole_orders, make_panel_holes
from plans.sections.labels import Label, make_labels
from plans.sections.measure_first import Waiting, make_waiting
from plans.sections.offcuts import OffcutRow, make_offcut_rows
from plans.sections.overview import Overview, make_overview
from plans.sections.part_list import PartRow, make_part_rows
from plans.sections.picture import Picture, make_pictures
from plans.sections.sheet_view import SheetView, make_sheet_view
from plans.sections.shopping import Shopping, make_shopping
from plans.sections.templates import Template, make_templates
from plans.sections.ways import WayLine
from plans.sections.worked import work_out
from plans.sections.workshop import Workshop, make_workshop
from plans.sections.yard import YardPage, make_yard_pages

RIGHT_HANDED = make_handed(Hand.RIGHT)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """All that is printed for the bench, once the sheets are cut.

    Attributes:
        pictures: Every design, to be drawn.
        waiting: The parts whose size comes from the work.
        battens: How the battens are cut.
        frames: How every design goes together.
        holes: The holes, panel by panel.
        hole_orders: What is done for each, in order.
        templates: What is printed at full size.
        checks: Diagonals, sums and stacks.
        rolls: Covering and cloth.
    """

    pictures: tuple[Picture, ...] = ()
    waiting: tuple[Waiting, ...] = ()
    battens: tuple[BattenSection, ...] = ()
    frames: tuple[Frame, ...] = ()
    holes: tuple[PanelHoles, ...] = ()
    hole_orders: tuple[HoleOrder, ...] = ()
    templates: tuple[Template, ...] = ()
    checks: tuple[BenchChecks, ...] = ()
    rolls: tuple[RollPlan, ...] = ()


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
        bench: All that is printed for the bench.
        yard: What the yard is asked for, one page a kind of sheet.
        car: How the pieces are loaded; None where the job names no car.
        workshop: Sessions, kits, test pieces and fallbacks.
        handed: What depends on the hand that holds the saw.
        blocks: The blocks that set the guide; empty where a tape does.
        chance: How much the plan forgives, in a sentence; "" where that was not tried.
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
    bench: Bench = Bench()
    yard: tuple[YardPage, ...] = ()
    car: CarPage | None = None
    workshop: Workshop = Workshop()
    handed: Handed = RIGHT_HANDED
    blocks: tuple[GaugeBlock, ...] = ()
    chance: str = ""


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


def make_plan(job: Job, solved: Solved, ways: tuple[WayLine, ...] = ()) -> Plan:
    """Return everything that is printed for a layout of a job.

    The cuts of every sheet are put in order here. Nothing depends on time, chance or machine.
    """
    sequences = tuple(order_cuts(job, sheet) for sheet in solved.layout.sheets)
    worked = work_out(job, solved.layout, sequences)
    bound = Bound(cost=solved.bound, sheets=sum(group.sheet_bound for group in solved.groups))
    overview = make_overview(worked, bound)
    shopping = make_shopping(worked, bound, ways)
    cautions = make_cautions(worked)
    sheets = tuple(make_sheet_view(job, sheet) for sheet in worked.sheets)
    parts, labels = make_part_rows(worked), make_labels(worked)
    offcuts, bench = make_offcut_rows(worked), _make_bench(job, parts)
    yard, car = make_yard_pages(worked), make_car_page(worked)
    workshop, handed = make_workshop(worked), make_handed(job.saw.hand)
    blocks = make_gauge_blocks(job)
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
            bench,
            yard,
            car,
            workshop,
            handed,
            blocks,
        ),
        overview=overview,
        shopping=shopping,
        cautions=cautions,
        sheets=sheets,
        parts=parts,
        labels=labels,
        offcuts=offcuts,
        sequences=sequences,
        bench=bench,
        yard=yard,
        car=car,
        workshop=workshop,
        handed=handed,
        blocks=blocks,
    )


def _make_bench(job: Job, parts: tuple[PartRow, ...]) -> Bench:
    """Return what is printed for the bench."""
    holes = make_panel_holes(job)
    return Bench(
        pictures=make_pictures(job),
        waiting=make_waiting(job, parts),
        battens=make_batten_sections(job),
        frames=make_frames(job),
        holes=holes,
        hole_orders=make_hole_orders(job),
        templates=make_templates(holes),
        checks=make_bench_checks(job),
        rolls=make_roll_plans(job),
    )
