"""The declared spaces of a wedge: its inside, and what baffle and back leave free."""

from collections.abc import Iterator

from nesting.cabinets.panels import Space
from nesting.cabinets.profiles import Corner, Profile, box_of
from nesting.cabinets.ring_shapes import find_recess, shorten
from nesting.cabinets.space import Axis, Interval
from nesting.cabinets.sums import add
from nesting.cabinets.wedge_measures import Wedge


def declare_spaces(wedge: Wedge) -> Iterator[Space]:
    """Yield the inside, then the recess before and the clearance round baffle and back."""
    opening = wedge.across.opening_interval
    yield _space("inside", wedge.inside, opening)
    for board in wedge.standing:
        placed = wedge.closings.get(board.name)
        if placed is not None and placed.before:
            corners = find_recess(wedge.ring, board.name)
            yield _space(f"recess before the {board.name}", corners, opening)
        clear = add(wedge.clear(board.name))
        if not clear:
            continue
        left, right = opening
        name = f"clearance of the {board.name}"
        yield _space(f"{name}, left", board.corners, (left, left + clear))
        yield _space(f"{name}, right", board.corners, (right - clear, right))
        out_low, out_high, in_high, in_low = board.corners
        new_low, new_high, inner_high, inner_low = shorten(board, clear)
        between = (left + clear, right - clear)
        low, high = board.low.neighbour, board.high.neighbour
        yield _space(f"{name}, at the {low}", (out_low, new_low, inner_low, in_low), between)
        yield _space(f"{name}, at the {high}", (new_high, out_high, in_high, inner_high), between)


def _space(name: str, corners: tuple[Corner, ...], along: Interval) -> Space:
    profile = Profile(axis=Axis.WIDTH, corners=corners)
    return Space(name=name, box=box_of(profile, along), profile=profile)
