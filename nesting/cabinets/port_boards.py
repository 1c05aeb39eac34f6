"""Boards that line a rectangular port where no panel of the cabinet does: parts of their own."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import groupby

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.construction import Construction
from nesting.cabinets.hole_bodies import find_boards
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Hole
from nesting.lengths import Length, Unit, format_length, round_to
from nesting.parts import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class PortBoard:
    """One board of a port.

    Attributes:
        hole: Name of the port.
        side: The side of the port that it stands on, such as "left".
        opening: The side of the window that it lines.
        length: That side, with the boards that it reaches over.
        width: How far it reaches in from the panel.
        board: What it is cut from: the material of the port's panel.
    """

    hole: str
    side: str
    opening: Length
    length: Length
    width: Length
    board: Board


def take_real_walls(
    holes: Iterable[Hole], construction: Construction, measured: Mapping[Board, Length]
) -> tuple[Hole, ...]:
    """Return the holes, the walls of ports as thick as their boards were measured."""
    materials = {panel.name: panel.board.material for panel in construction.panels}
    return tuple(
        replace(
            hole,
            wall=real_thickness(
                Board(material=materials[hole.panel], thickness=hole.wall), measured
            ),
        )
        if hole.wall and hole.panel in materials
        else hole
        for hole in holes
    )


def find_port_boards(
    holes: Iterable[PlacedHole], construction: Construction, nominal: Iterable[Hole]
) -> Iterator[PortBoard]:
    """Yield the boards of every port.

    Args:
        holes: The holes on their panels, walls as thick as they really are.
        construction: The cabinet in space.
        nominal: The same holes as the builder gives them.
    """
    walls = {hole.name: hole.wall for hole in nominal}
    for placed in holes:
        for side, length, width in find_boards(placed, construction):
            assert placed.hole.window is not None, "only a window has boards"
            is_first = side in placed.axes[1].ends
            yield PortBoard(
                hole=placed.hole.name,
                side=side,
                opening=placed.hole.window[0 if is_first else 1],
                length=length,
                width=width,
                board=Board(
                    material=placed.panel.board.material, thickness=walls[placed.hole.name]
                ),
            )


def list_port_boards(
    boards: Iterable[PortBoard], letter: str, *, step: Length, unit: Unit
) -> Iterator[Part]:
    """Yield the parts of one cabinet, boards that are alike as one part with a count."""
    alike = sorted(boards, key=lambda each: (each.hole, -each.length, each.side))
    for (hole, length, _), group in groupby(
        alike, key=lambda each: (each.hole, each.length, each.width)
    ):
        members = list(group)
        first = members[0]
        opening = f"{format_length(first.opening, unit)} of the slot"
        over = length - first.opening
        beyond = f" + {format_length(over, unit)} over the boards at its ends" if over else ""
        yield Part(
            name=f"Board of the {hole}, {' or '.join(each.side for each in members)}",
            length=round_to(length, step),
            width=round_to(first.width, step),
            count=len(members),
            material=first.board.material,
            thickness=first.board.thickness,
            cabinet=letter,
            sums=(
                _say_sum(length, f"{opening}{beyond}", step, unit),
                _say_sum(first.width, "from the panel to the end of the slot", step, unit),
            ),
            to_do=(f"glue it in where it lines the {hole}",),
            note="interchangeable" if len(members) > 1 else "",
            is_hidden=True,
        )


def _say_sum(size: Length, terms: str, step: Length, unit: Unit) -> str:
    rounded = round_to(size, step)
    exact, nearest = format_length(size, unit), format_length(step, unit)
    note = "" if rounded == size else f" ({exact}, to the nearest {nearest})"
    return f"{format_length(rounded, unit)} = {terms}{note}"
