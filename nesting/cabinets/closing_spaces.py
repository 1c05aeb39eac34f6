"""The declared spaces of a box: its inside, and what baffle and back leave free."""

from collections.abc import Iterator

from nesting.cabinets.carcass import Carcass
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.closings import PlacedClosing
from nesting.cabinets.fillings import closing_spans, split_closing
from nesting.cabinets.panels import Space
from nesting.cabinets.space import Axis, Interval, box_along
from nesting.cabinets.sums import Span


def declare_spaces(carcass: Carcass) -> Iterator[Space]:
    """Yield the inside, then what is free before, round and behind each baffle and back."""
    across, upright = carcass.across, carcass.upright
    yield _space("inside", across.opening_interval, carcass.inside_depth, upright.opening_interval)
    for placed, closing in (
        (carcass.front, carcass.design.baffle),
        (carcass.rear, carcass.design.back),
    ):
        if closing is None or closing.fit is Fit.NONE:
            continue
        yield from _declare_layers(carcass, placed)
        yield from _declare_clearance(carcass, placed, closing)


def _declare_layers(carcass: Carcass, placed: PlacedClosing) -> Iterator[Space]:
    """Yield the recess before a panel, and the covering between it and the end of its rebate."""
    start, end = placed.through
    layers = [(f"recess before the {placed.name}", (0, start))]
    if placed.fit is Fit.REBATE:
        layers.append((f"covering behind the {placed.name}", (end, placed.seat[1])))
    let_in = placed.let_in if placed.fit is Fit.REBATE else 0
    width, height = (_widen(span, let_in) for span in (carcass.across, carcass.upright))
    for name, depth in layers:
        if depth[0] < depth[1]:
            yield _space(name, width, _from_front(carcass, placed, depth), height)


def _declare_clearance(
    carcass: Carcass, placed: PlacedClosing, closing: Closing
) -> Iterator[Space]:
    """Yield what a baffle or back leaves free in its layer: clearances and the gap of an open one.

    Beside each board there is a strip on the left and one on the right; strips over the whole width
    lie below the lowest board, between two of them and above the highest.
    """
    upright, across = closing_spans(carcass, placed)
    depth = _from_front(carcass, placed, placed.through)
    left, right = _widen(across, placed.let_in)
    low, high = _widen(upright, placed.let_in)
    begins = low
    for name, board in split_closing(placed.name, upright, closing):
        start, end = board.interval
        below = f"clearance of the {name}, bottom" if begins == low else f"gap in the {placed.name}"
        for what, width, height in (
            (f"clearance of the {name}, left", (left, across.interval[0]), (start, end)),
            (f"clearance of the {name}, right", (across.interval[1], right), (start, end)),
            (below, (left, right), (begins, start)),
        ):
            if width[0] < width[1] and height[0] < height[1]:
                yield _space(what, width, depth, height)
        begins = end
    if begins < high:
        yield _space(f"clearance of the {name}, top", (left, right), depth, (begins, high))


def _widen(opening: Span, by: int) -> Interval:
    low, high = opening.opening_interval
    return (low - by, high + by)


def _from_front(carcass: Carcass, placed: PlacedClosing, depth: Interval) -> Interval:
    return depth if placed is carcass.front else carcass.from_rear(depth)


def _space(name: str, width: Interval, depth: Interval, height: Interval) -> Space:
    box = box_along({Axis.WIDTH: width, Axis.DEPTH: depth, Axis.HEIGHT: height})
    return Space(name=name, box=box)
