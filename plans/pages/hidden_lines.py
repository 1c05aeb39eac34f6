"""Which parts of an edge are seen: nothing is painted over, so hidden lines must be left out.

Solids are convex. Seen along one direction, a solid hides the points of an edge from which a ray
towards the eye passes through it. Along the edge that is an interval, found by cutting the strip of
(place on the edge, way along the ray) with the solid's half-spaces.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

Vector: TypeAlias = tuple[float, float, float]
Plane: TypeAlias = tuple[Vector, float]

SKIN = 0.05  # millimetres: what a solid only touches it does not hide
FAR = 1e5
LEAST = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A convex solid.

    Attributes:
        planes: Outward normals of length 1 and distances: a point is inside where it lies below
            all of them.
        faces: The corners of each face, in order; one for each plane.
    """

    planes: tuple[Plane, ...]
    faces: tuple[tuple[Vector, ...], ...]


def dot(first: Vector, second: Vector) -> float:
    """Return the inner product."""
    return first[0] * second[0] + first[1] * second[1] + first[2] * second[2]


def seen_pieces(
    start: Vector, end: Vector, eye: Vector, hiding: Iterable[Body]
) -> list[tuple[float, float]]:
    """Return the parts of an edge that no body hides, as fractions of its length.

    Args:
        start: Its start.
        end: Its end.
        eye: The direction towards the eye.
        hiding: The bodies that may stand before it.
    """
    along = (end[0] - start[0], end[1] - start[1], end[2] - start[2])
    hidden = sorted(
        span for body in hiding if (span := _hidden_span(start, along, eye, body)) is not None
    )
    pieces, done = [], 0.0
    for low, high in [*hidden, (1.0, 1.0)]:
        if low > done + LEAST:
            pieces.append((done, low))
        done = max(done, high)
    return pieces


def _hidden_span(
    start: Vector, along: Vector, eye: Vector, body: Body
) -> tuple[float, float] | None:
    area: Sequence[tuple[float, float]] = [(0.0, SKIN), (1.0, SKIN), (1.0, FAR), (0.0, FAR)]
    for normal, distance in body.planes:
        area = _cut(
            area, dot(normal, along), dot(normal, eye), distance - SKIN - dot(normal, start)
        )
        if not area:
            return None
    places = [place for place, _ in area]
    return min(places), max(places)


def _cut(
    area: Sequence[tuple[float, float]], a: float, b: float, most: float
) -> list[tuple[float, float]]:
    """Return what is left of a convex area where a x + b y is no more than a limit."""
    left = []
    for place, (x, y) in enumerate(area):
        last_x, last_y = area[place - 1]
        here, before = a * x + b * y - most, a * last_x + b * last_y - most
        if (here <= 0) is not (before <= 0):
            share = before / (before - here)
            left.append((last_x + share * (x - last_x), last_y + share * (y - last_y)))
        if here <= 0:
            left.append((x, y))
    return left
