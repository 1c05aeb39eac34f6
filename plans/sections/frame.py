"""How a cabinet goes together: corners, set-backs, screws and the order of assembly."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.fixings import FixingRow
from nesting.cabinets.from_holes import offer_from_holes
from nesting.job import Job
from nesting.lengths import Unit
from plans.sections.corners import CornerPicture, make_corners
from plans.sections.numbers import show, show_with_unit


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingText:
    """Joints that are screwed alike.

    Attributes:
        joints: What is screwed to what.
        screws: Which screws, and where across the joint.
        positions: From which end, and the figures.
    """

    joints: tuple[str, ...]
    screws: str
    positions: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StepText:
    """One step of assembly: its number, what is done, and what cannot be done any more after it."""

    number: str
    what: str
    impossible: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The frame and joints of one design.

    Attributes:
        name: Name of the design.
        letters: Its cabinets.
        runs_through: For every panel that owns edges a line that names them.
        corners: Pictures of corners.
        set_backs: Where battens stand, as sums.
        fixings: The screws.
        advice: How to cut so that joints line up, what holes would give, which sizes moved.
        steps: The order of assembly.
    """

    name: str
    letters: str
    runs_through: tuple[str, ...]
    corners: tuple[CornerPicture, ...]
    set_backs: tuple[str, ...]
    fixings: tuple[FixingText, ...]
    advice: tuple[str, ...]
    steps: tuple[StepText, ...]


def make_frames(job: Job) -> tuple[Frame, ...]:
    """Return how every design goes together."""
    return tuple(_frame(job, build) for build in job.cabinets if build.panels)


def _frame(job: Job, build: CabinetBuild) -> Frame:
    fit, unit = build.fit_out, job.unit
    return Frame(
        name=build.name,
        letters=", ".join(build.letters),
        runs_through=tuple(_run_through(build)),
        corners=make_corners(build),
        set_backs=tuple(_set_backs(build)),
        fixings=tuple(_fixings(fit.fixings, unit)) if fit else (),
        advice=tuple(_advise(job, build)),
        steps=tuple(
            StepText(number=str(step.number), what=step.what, impossible=", ".join(step.impossible))
            for step in (fit.steps if fit else ())
        ),
    )


def _advise(job: Job, build: CabinetBuild) -> Iterator[str]:
    """Yield what helps at the saw and the bench, and which sizes the readings have moved."""
    yield from build.advice
    yield from offer_from_holes(build, job.parts, job.unit)
    if build.changes:
        yield (
            "Sizes moved by the measured thickness, from those at the nominal one: "
            f"{'; '.join(build.changes)}."
        )


def _run_through(build: CabinetBuild) -> Iterator[str]:
    """Yield a line for each panel that runs through: at an edge its neighbour butts against it."""
    owned: dict[str, list[str]] = {}
    for edge in build.edges:
        joint = f" ({edge.joint})" if edge.joint else ""
        owner = edge.owner or "no panel"
        owned.setdefault(owner, []).append(f"{_name_edge(edge.name, owner)}{joint}")
    for owner, names in owned.items():
        yield f"{owner}: {', '.join(names)}"


def _name_edge(name: str, owner: str) -> str:
    """Return the name of an edge; one named after its two panels by the other of them.

    >>> _name_edge("bottom and back", "bottom"), _name_edge("top left", "left side")
    ('at the back', 'top left')
    """
    panels = name.split(" and ")
    if owner not in panels:
        return name
    (other,) = (panel for panel in panels if panel != owner)
    return f"at the {other}"


def _set_backs(build: CabinetBuild) -> Iterator[str]:
    """Yield where battens stand, those that stand alike on one line."""
    alike: dict[str, list[str]] = {}
    for bar in build.bars:
        if bar.set_back:
            alike.setdefault(bar.set_back, []).append(bar.name)
    for text, names in alike.items():
        yield f"{_shorten(names)}: {text}"


def _shorten(names: list[str]) -> str:
    """Return names with what they begin with said once, such as "front frame, left, right"."""
    first, comma, _ = names[0].partition(", ")
    if comma and all(name.startswith(f"{first}, ") for name in names):
        return f"{first} ({', '.join(name.removeprefix(f'{first}, ') for name in names)})"
    return ", ".join(names)


def _fixings(rows: tuple[FixingRow, ...], unit: Unit) -> Iterator[FixingText]:
    """Yield the screws, joints with the same figures together."""
    alike: dict[tuple[object, ...], list[FixingRow]] = {}
    for row in rows:
        alike.setdefault((row.positions, row.end, row.middle, row.length), []).append(row)
    for group in alike.values():
        row = group[0]
        figures = ", ".join(show(position, unit) for position in row.positions)
        yield FixingText(
            joints=tuple(f"{each.through} \N{RIGHTWARDS ARROW} {each.into}" for each in group),
            screws=f"{len(row.positions)} × {show_with_unit(row.length, unit)}, "
            f"{show(row.middle, unit)} from the edge of the joint",
            positions=f"from the {row.end}: {figures}",
        )
