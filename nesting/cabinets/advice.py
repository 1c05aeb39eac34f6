"""Questions that a design leaves open, and what should be looked at before anything is bought."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import chain, combinations, product

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit, Fitted
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.families import Design
from nesting.cabinets.hidden_parts import ask_for_hidden_parts
from nesting.cabinets.joints import JointKind
from nesting.cabinets.space import Axis
from nesting.lengths import Length, Unit, format_length, mm
from nesting.parts import Part, Status

LOOK_ALIKE = mm(15)
MOST_SPREAD = mm("0.2")
"""Readings that differ by more misfit in grooves and rebates. Judgement, no source."""
MOST_TILT_DEG = 45.0
THIN = mm(11)
"""Common practice, no source: screws into the edge of a thinner board split it."""


def find_questions(design: Design) -> Iterator[str]:
    """Yield what the builder must still answer. Nothing is assumed in silence."""
    frames = design.battens
    for name, closing, end, has_frame in (
        ("baffle", design.baffle, "front", frames is not None and frames.front),
        ("back", design.back, "rear", frames is not None and frames.rear),
    ):
        if closing is None:
            is_box = isinstance(design, BoxDesign)
            fits = '"inset", "rebate", "groove", "planted"' if is_box else '"inset", "planted"'
            yield (
                f"Nothing is said about the {name}. Is the cabinet open at the {end}? Write "
                f'{name} = {fits} or "none". It is left out until then.'
            )
        elif closing.fit.is_late:
            yield from _ask_about_late(design, name, closing, end, has_frame=has_frame)
    yield from ask_for_hidden_parts(design)


def _ask_about_late(
    design: Design, name: str, closing: Closing, end: str, *, has_frame: bool
) -> Iterator[str]:
    is_screwed = design.fittings.screws is not None
    if closing.fit is Fit.REBATE and not (closing.held_by or is_screwed):
        yield (
            f"What holds the {name} in its rebate? Plan screws, [cabinet.screws], or say in a few "
            "words what it is held by."
        )
    elif closing.fit is Fit.INSET and not has_frame and not closing.held_by:
        yield (
            f"What holds the inset {name}? Give it a {end} frame of battens, or say in a few words "
            "what it is held by."
        )
    is_late = closing.fitted is Fitted.AFTER_COVERING
    if design.covering is not None and is_late and closing.wrapped is None:
        yield (
            f"Is the {name} covered itself, on its face and edges? Until that is said, its size "
            "leaves room for the covering of the carcass only."
        )


def find_warnings(
    design: Design,
    construction: Construction,
    measured: Mapping[Board, Length],
    parts: tuple[Part, ...],
    unit: Unit,
    *,
    spreads: Mapping[Board, Length],
) -> Iterator[str]:
    """Yield what the builder should look at.

    Args:
        design: The design.
        construction: What became of it.
        measured: Measured thicknesses.
        parts: The parts of one of its cabinets.
        unit: The unit to write in.
        spreads: By how much the readings of each measured board differ.
    """
    for axis, given in (
        (Axis.HEIGHT, design.height),
        (Axis.WIDTH, design.width),
        (Axis.DEPTH, design.depth),
    ):
        rounded = construction.whole(axis)
        if rounded != given:
            yield (
                f"The outside {axis.value} {format_length(given, unit)} is rounded to "
                f"{format_length(rounded, unit)}. Give a size that is a multiple of the step, "
                "or a finer step."
            )
    for board in dict.fromkeys(panel.board for panel in construction.panels):
        yield from _warn_about_board(design, construction, board, measured, spreads, unit)
    yield from _find_steep_bevels(construction)
    yield from find_look_alikes(parts, unit)


def _warn_about_board(
    design: Design,
    construction: Construction,
    board: Board,
    measured: Mapping[Board, Length],
    spreads: Mapping[Board, Length],
    unit: Unit,
) -> Iterator[str]:
    name = f"{board.material} {format_length(board.thickness, unit)} {unit.value}"
    if board not in measured:
        yield (
            f"{name} is not measured: the sizes take it to be exactly as thick as it is "
            "called. Measure the sheets before the first cut and give the readings."
        )
    spread = spreads.get(board, 0)
    if spread > MOST_SPREAD:
        members = [panel.name for panel in construction.shell if panel.board == board]
        yield (
            f"The readings of {name} differ by {format_length(spread, unit)}. Cut what meets in "
            f"one joint from one sheet ({', '.join(members)}), or measure each sheet and cut "
            "grooves and rebates to the piece that goes in."
        )
    is_butt = not isinstance(design, BoxDesign) or design.joint.kind is JointKind.BUTT
    if board.thickness < THIN and is_butt:
        yield f"{name} is thin for butt joints. Glue corner battens behind them."


def _find_steep_bevels(construction: Construction) -> Iterator[str]:
    for panel in construction.panels:
        for bevel in panel.bevels:
            if bevel.angle_deg > MOST_TILT_DEG:
                yield (
                    f"{panel.name}, {bevel.edge}: a bevel of {bevel.angle_deg:.1f}° is more than "
                    f"the {MOST_TILT_DEG:.0f}° that most saws tilt. Cut it square and plane it, "
                    "or change the slope."
                )


def find_look_alikes(
    parts: Iterable[Part], unit: Unit, others: Iterable[Part] = ()
) -> Iterator[str]:
    """Yield pairs of parts that differ, but by too little to be told apart at a glance.

    Args:
        parts: The parts that are compared with each other.
        unit: The unit to write in.
        others: Parts that each of these is compared with too.
    """
    listed = tuple(parts)
    for first, second in chain(combinations(listed, 2), product(listed, others)):
        sizes = [_sides(part) for part in (first, second)]
        differences = [abs(a - b) for a, b in zip(*sizes, strict=True)]
        if max(differences) > LOOK_ALIKE or _are_alike(first, second):
            continue
        shown = " and ".join(
            f"{first_or_second.name} ({_size(first_or_second, unit)})"
            for first_or_second in (first, second)
        )
        yield (
            f"{shown} look alike. Name each before it is cut free, or make them the same size"
            f"{_suggest_merging(first, second, unit) or ', with a [[merge]] where it is free'}."
        )


def _suggest_merging(first: Part, second: Part, unit: Unit) -> str:
    """Return the size that both could have, where both go into an opening: the smaller one."""
    if Status.MEASURE_FIRST not in (first.status, second.status):
        return ""
    if first.status is not second.status or first.thickness != second.thickness:
        return ""
    small = [min(pair) for pair in zip(*(_sides(part) for part in (first, second)), strict=True)]
    return f": {' × '.join(format_length(side, unit) for side in reversed(small))} goes into both"


def _sides(part: Part) -> list[Length]:
    return sorted((part.length, part.width))


def _are_alike(first: Part, second: Part) -> bool:
    """Return whether two parts could take each other's place as they come from the saw."""
    return all(
        getattr(first, name) == getattr(second, name)
        for name in ("length", "width", "grain", "material", "thickness", "status", "oversize")
    )


def _size(part: Part, unit: Unit) -> str:
    sides = (part.length, part.width, part.thickness)
    return " × ".join(format_length(side, unit) for side in sides)
