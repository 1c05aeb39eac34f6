"""Leaders: a label beside what has no room for it, and the line that leads back to it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, hypot, pi, sin
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from plans.pages.boxes import Box, text_box
from plans.pages.lettering import centred
from plans.pages.shapes import Line, LineKind, Shape, Solid, Text

FloatArray: TypeAlias = NDArray[np.float64]
BoolArray: TypeAlias = NDArray[np.bool_]

CLEAR = 0.8
APART = 1.0  # more white to other texts, so that no two are read as one
REACH = 60
SHORT = 14
# A very short leader is hard to see: better than none.
STAGES = ((SHORT, range(4, SHORT)), (REACH, (*range(SHORT, REACH), 3, 2)))
OUTWARDS = np.array([-1.0, -1.0, 1.0, 1.0])
DOT = 0.8
# Always slanted, so that a leader is never taken for a cut.
WAYS = tuple((cos(turn * pi / 8), sin(turn * pi / 8)) for turn in range(16) if turn % 4)


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A text in the drawing.

    Attributes:
        text: The text.
        taken: Where nothing else may stand; the text's own box first.
        others: The leader and its dot, where there is one.
        is_open: True where lines are interrupted round the text.
    """

    text: Text
    taken: tuple[Box, ...]
    others: tuple[Shape, ...] = ()
    is_open: bool = False


def find_leader(
    text: Text,
    starts: Sequence[tuple[float, float]],
    within: Box,
    taken: Sequence[Box],
    lines: Sequence[Box],
    areas: Sequence[Box] = (),
) -> Label | None:
    """Return a text at the end of the shortest leader that crosses no other text.

    Args:
        text: The text; its own place is forgotten.
        starts: Points from which a leader may start.
        within: The room to look in.
        taken: Where something stands: neither the text nor the leader may meet it.
        lines: Thin boxes that the text may not meet, but the leader may cross.
        areas: Where the text may not stand.
    """
    at_origin = centred(0.0, 0.0, text)
    size = text_box(at_origin).grown(CLEAR)
    points = np.repeat(np.array(starts), len(WAYS), axis=0)
    ways = np.tile(np.array(WAYS), (len(starts), 1))
    # The leader ends on the rim of the text's box, from where this reaches its middle.
    rims = np.min(np.array([size.width / 2, size.height / 2]) / np.abs(ways), axis=1)
    stands = _array(taken)
    blocks = np.vstack([stands + APART * OUTWARDS, _array([*lines, *areas])])
    around = np.hstack([points.min(axis=0), points.max(axis=0)])
    beyond = float(rims.max()) + max(size.width, size.height)
    for reach, distances in STAGES:
        # What lies farther off than a leader and its text reach is in no one's way.
        met = _near(stands + DOT * OUTWARDS, around + reach * OUTWARDS)
        free = _free_runs(points, ways, met, reach)
        near = _near(blocks, around + (reach + beyond) * OUTWARDS)
        for distance in distances:
            places = np.flatnonzero(free >= distance)
            middles = points[places] + ways[places] * (distance + rims[places, None])
            boxes = np.hstack([middles, middles]) + np.array(
                [size.left, size.top, size.right, size.bottom]
            )
            clear = _inside(boxes, within)
            clear[clear] = ~_meet_any(boxes[clear], near)
            if clear.any():
                first = int(np.flatnonzero(clear)[0])
                start, way = points[places[first]], ways[places[first]]
                end = start + way * distance
                return _label(at_origin, boxes[first], middles[first], start, end)
    return None


def _near(boxes: FloatArray, around: FloatArray) -> FloatArray:
    """Return the boxes that are not clear of another one. Shape (n, 4)."""
    is_near = (boxes[:, 0:2] <= around[2:4]).all(axis=1)
    return boxes[is_near & (boxes[:, 2:4] >= around[0:2]).all(axis=1)]


def _array(boxes: Sequence[Box]) -> FloatArray:
    """Return boxes as rows of left, top, right, bottom. Shape (n, 4)."""
    rows = [(box.left, box.top, box.right, box.bottom) for box in boxes]
    return np.array(rows, dtype=np.float64).reshape(-1, 4)


def _free_runs(points: FloatArray, ways: FloatArray, taken: FloatArray, reach: float) -> FloatArray:
    """Return how far each leader runs before it meets something that stands.

    Args:
        points: Starts. Shape (m, 2).
        ways: Directions, no part of which is 0. Shape (m, 2).
        taken: Boxes. Shape (n, 4).
        reach: How far to look.

    Returns:
        Distances, at most the reach. Shape (m,).
    """
    if not len(taken):
        return np.full(len(points), float(reach))
    enters = np.zeros((len(points), len(taken)))
    leaves = np.full(enters.shape, float(reach))
    for axis in (0, 1):
        from_start = taken.T[[axis, axis + 2], None, :] - points[:, axis, None]
        one, other = from_start / ways[:, axis, None]
        np.maximum(enters, np.minimum(one, other), out=enters)
        np.minimum(leaves, np.maximum(one, other), out=leaves)
    return np.asarray(np.where(enters < leaves, enters, reach).min(axis=1))


def _inside(boxes: FloatArray, within: Box) -> BoolArray:
    return np.asarray(
        (boxes[:, 0] >= within.left)
        & (boxes[:, 1] >= within.top)
        & (boxes[:, 2] <= within.right)
        & (boxes[:, 3] <= within.bottom)
    )


def _meet_any(boxes: FloatArray, blocks: FloatArray) -> BoolArray:
    """Return for each box whether it meets any block. Shape (m,)."""
    return np.asarray(
        (
            (boxes[:, None, 0] < blocks[None, :, 2])
            & (blocks[None, :, 0] < boxes[:, None, 2])
            & (boxes[:, None, 1] < blocks[None, :, 3])
            & (blocks[None, :, 1] < boxes[:, None, 3])
        ).any(axis=1)
    )


def _label(
    text: Text, box: FloatArray, middle: FloatArray, start: FloatArray, end: FloatArray
) -> Label:
    """Return a text moved from the origin to the end of its leader."""
    left, top, right, bottom = box.tolist()
    (over, down), (x, y), (far_x, far_y) = middle.tolist(), start.tolist(), end.tolist()
    return Label(
        text=replace(text, x=text.x + over, y=text.y + down),
        taken=(Box(left, top, right, bottom), *_steps((x, y), (far_x, far_y))),
        others=_leader((x, y), (far_x, far_y)),
        is_open=True,
    )


def _steps(start: tuple[float, float], end: tuple[float, float]) -> Iterator[Box]:
    """Yield small boxes along a leader, so that what comes later keeps off it."""
    (x, y), (far_x, far_y) = start, end
    count = max(1, round(hypot(far_x - x, far_y - y)))
    for step in range(count + 1):
        share = step / count
        at_x, at_y = x + share * (far_x - x), y + share * (far_y - y)
        yield Box(at_x, at_y, at_x, at_y).grown(DOT)


def _leader(start: tuple[float, float], end: tuple[float, float]) -> tuple[Shape, ...]:
    x, y = start
    return (
        Line(x1=x, y1=y, x2=end[0], y2=end[1], kind=LineKind.LEADER),
        Solid(points=((x - DOT, y), (x, y - DOT), (x + DOT, y), (x, y + DOT))),
    )
