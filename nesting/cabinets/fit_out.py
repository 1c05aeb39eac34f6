"""Fitting out: everything that fittings add to a cabinet, in one call."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from nesting.cabinets.assembly import list_warnings, order_tasks
from nesting.cabinets.bench_tasks import Plan
from nesting.cabinets.boards import Board
from nesting.cabinets.checks_by_hand import CheckLine, check_diagonals, check_stacks
from nesting.cabinets.clearances import find_close_calls
from nesting.cabinets.closing_design import Closing, Covering
from nesting.cabinets.construction import Construction
from nesting.cabinets.discs import DiscAdvice, measure_discs
from nesting.cabinets.fittings import Fittings
from nesting.cabinets.fixings import FixingRow, map_fixings
from nesting.cabinets.goods import FixingLine, find_hardware_warnings, list_goods
from nesting.cabinets.hole_places import PlacedHole, place_holes
from nesting.cabinets.hole_sheets import HoleSheet, write_hole_sheet
from nesting.cabinets.holes import HoleKind
from nesting.cabinets.port_boards import PortBoard, find_port_boards, take_real_walls
from nesting.cabinets.shut_out import AssemblyStep, InsideLimit, find_limits
from nesting.cabinets.space import Point
from nesting.cabinets.volume import Mass, Room, find_finished, find_mass, find_room
from nesting.cabinets.ways_out import WayResult, check_ways
from nesting.cabinets.wrapping import WrapPlan, plan_cloth, plan_wrap
from nesting.lengths import Length, Unit


class Hazard(Enum):
    """What the pages have to carry a caution for."""

    HANGING = "hanging"
    MAINS = "mains"
    CIRCLES = "circles"
    ROUTER = "router"
    SOLVENTS = "solvents"


@dataclass(frozen=True, slots=True, kw_only=True)
class FitOut:
    """All that fittings add to the cabinets of one design.

    Attributes:
        holes: A sheet for each hole.
        clashes: What meets or comes too close, both items named.
        steps: The steps of assembly, each with what it shuts out.
        limits: How long each thing can be done inside.
        fixings: The screws of each joint.
        goods: Small goods for all cabinets of the design.
        wraps: Covering and cloth on the roll, for all cabinets of the design.
        room: Inside volume of one cabinet.
        mass: Mass of one cabinet.
        finished: Width, depth and height of one cabinet as it is carried.
        ways: Whether it gets through doors, round corners and into the car.
        checks: Diagonals and stacks.
        discs: What round holes leave for small parts.
        boards: Boards that line the ports of one cabinet.
        hazards: What the pages have to carry a caution for.
        warnings: What else should be looked at.
    """

    holes: tuple[HoleSheet, ...]
    clashes: tuple[str, ...]
    steps: tuple[AssemblyStep, ...]
    limits: tuple[InsideLimit, ...]
    fixings: tuple[FixingRow, ...]
    goods: tuple[FixingLine, ...]
    wraps: tuple[WrapPlan, ...]
    room: Room
    mass: Mass
    finished: Point
    ways: tuple[WayResult, ...]
    checks: tuple[CheckLine, ...]
    discs: tuple[DiscAdvice, ...]
    boards: tuple[PortBoard, ...]
    hazards: frozenset[Hazard]
    warnings: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What is fitted out.

    Attributes:
        name: Name of the design.
        letters: Letters of its cabinets.
        construction: One of them in space.
        covering: What they are covered with, None for nothing.
        baffle: What the design says of the baffle.
        back: What the design says of the back.
    """

    name: str
    letters: tuple[str, ...]
    construction: Construction
    covering: Covering | None = None
    baffle: Closing | None = None
    back: Closing | None = None

    @property
    def closings(self) -> dict[str, Closing | None]:
        """Baffle and back by the names of their panels."""
        return {"baffle": self.baffle, "back": self.back}


def fit_out(
    subject: Subject,
    fittings: Fittings,
    measured: Mapping[Board, Length],
    *,
    step: Length,
    unit: Unit,
) -> FitOut:
    """Return all that fittings add to the cabinets of a design.

    Args:
        subject: The design's cabinets.
        fittings: What the builder says of them.
        measured: Measured thicknesses.
        step: Part sizes are rounded to this.
        unit: The unit of messages.

    Raises:
        InputError: A hole, a screw or a piece of covering cannot be as it is given.
    """
    construction = subject.construction
    real = take_real_walls(fittings.holes, construction, measured)
    holes = place_holes(subject.name, real, construction, fittings.clearances.edge, unit)
    fixings, notes = (
        map_fixings(subject.name, construction, holes, fittings.screws, unit)
        if fittings.screws
        else ((), ())
    )
    tasks = order_tasks(
        Plan(
            construction=construction,
            holes=holes,
            covering=subject.covering,
            closings=subject.closings,
            wishes=fittings.assembly,
            hardware=fittings.hardware,
            screws=fittings.screws,
            rows=fixings,
            unit=unit,
        )
    )
    steps, limits = find_limits(construction, holes, tasks, fittings.assembly, unit)
    finished = find_finished(construction, subject.covering, fittings.hardware)
    return FitOut(
        holes=tuple(write_hole_sheet(placed, unit) for placed in holes),
        clashes=tuple(find_close_calls(construction, holes, fittings.clearances, unit)),
        steps=steps,
        limits=limits,
        fixings=fixings,
        goods=tuple(
            list_goods(
                construction,
                holes,
                fixings,
                fittings.hardware,
                cabinets=len(subject.letters),
                unit=unit,
            )
        ),
        wraps=tuple(_wrap(subject, fittings, unit)),
        room=find_room(construction, holes),
        mass=find_mass(construction, holes),
        finished=finished,
        ways=tuple(check_ways(finished, fittings.ways, unit)),
        checks=(
            *check_diagonals(construction, step, unit),
            *check_stacks(construction, step, unit),
        ),
        discs=tuple(measure_discs(holes, kerf=fittings.disc_kerf, pivot=fittings.pivot, unit=unit)),
        boards=tuple(find_port_boards(holes, construction, fittings.holes)),
        hazards=frozenset(_find_hazards(subject, fittings, holes)),
        warnings=(
            *notes,
            *find_hardware_warnings(construction, fittings.hardware, unit),
            *list_warnings(construction, fittings.assembly, subject.closings),
        ),
    )


def _wrap(subject: Subject, fittings: Fittings, unit: Unit) -> Iterator[WrapPlan]:
    if subject.covering is not None and fittings.roll is not None:
        yield plan_wrap(
            subject.construction,
            subject.covering,
            subject.closings,
            fittings.roll,
            letters=subject.letters,
            unit=unit,
        )
    if fittings.cloth is not None:
        yield plan_cloth(subject.construction, fittings.cloth, letters=subject.letters, unit=unit)


def _find_hazards(
    subject: Subject, fittings: Fittings, holes: tuple[PlacedHole, ...]
) -> Iterator[Hazard]:
    kinds = {placed.hole.kind for placed in holes}
    if HoleKind.HANDLE in kinds or fittings.hardware.handles:
        yield Hazard.HANGING
    if kinds & {HoleKind.CONNECTOR, HoleKind.CABLE} or fittings.assembly.wiring:
        yield Hazard.MAINS
    if any(placed.hole.cut_out for placed in holes):
        yield Hazard.CIRCLES
    if any(placed.hole.recess for placed in holes) or (
        fittings.screws and fittings.screws.round_over
    ):
        yield Hazard.ROUTER
    if subject.covering is not None:
        yield Hazard.SOLVENTS
