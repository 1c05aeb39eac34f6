"""A line drawing of a cabinet: its front true to scale, its depth slanting away at half length."""

from collections.abc import Iterator
from itertools import pairwise
from math import cos, hypot, pi, sin, sqrt

from nesting.cabinets.space import Point
from nesting.lengths import NM_PER_MM, Length
from plans.pages.blocks import Block
from plans.pages.fonts import text_width
from plans.pages.hidden_lines import Body, Plane, Vector, dot, seen_pieces
from plans.pages.lettering import NOTE
from plans.pages.shapes import Anchor, Line, LineKind, Shape, Text
from plans.sections.picture import Mouth, Picture, Prism

SLANT = 0.5 * sqrt(0.5)  # half length at 45 degrees, to the right and up
EYE: Vector = (SLANT, -1.0, SLANT)
ROUND = 40  # pieces of a circle
ROOM_LEFT = 6.0
ROOM_BELOW = 6.5
BESIDE = 2.0  # white between the drawing and its depth in figures


def cabinet_picture(picture: Picture, width: float, height: float, x: float = 0.0) -> Block:
    """Return a drawing with the outside sizes, as large as fits.

    Args:
        picture: The solids.
        width: Room across.
        height: Room down.
        x: Where the drawing begins.
    """
    wide, deep, high = (_mm(side) for side in picture.outside)
    room = width - ROOM_LEFT
    depth_words = BESIDE + text_width(picture.texts[1], NOTE)
    scale = min(
        room / (wide + SLANT * deep),
        (room - depth_words) / (wide + SLANT * deep / 2),
        (height - ROOM_BELOW) / (high + SLANT * deep),
    )
    base = (high + SLANT * deep) * scale
    left = x + ROOM_LEFT

    def on_paper(point: Vector) -> tuple[float, float]:
        return (
            left + (point[0] + SLANT * point[1]) * scale,
            base - (point[2] + SLANT * point[1]) * scale,
        )

    lines = [
        Line(x1=a[0], y1=a[1], x2=b[0], y2=b[1], kind=LineKind.BOX)
        for start, end in _seen(picture)
        for a, b in [(on_paper(start), on_paper(end))]
        if hypot(a[0] - b[0], a[1] - b[1]) > 0.1  # noqa: PLR2004 - mm on paper, less is a dot
    ]
    return Block(
        height=base + ROOM_BELOW,
        shapes=(*lines, *_sizes(picture, left, base, scale)),
    )


def _sizes(picture: Picture, left: float, base: float, scale: float) -> Iterator[Shape]:
    """Yield width, height and depth beside the drawing."""
    wide, deep, high = (_mm(side) * scale for side in picture.outside)
    across, depth, up = picture.texts
    yield Text(
        x=left + wide / 2, y=base + 1.6 + NOTE, words=across, height=NOTE, anchor=Anchor.MIDDLE
    )
    yield Text(
        x=left - 1.8, y=base - high / 2, words=up, height=NOTE, anchor=Anchor.MIDDLE,
        is_upright=True,
    )  # fmt: skip
    yield Text(
        x=left + wide + SLANT * deep / 2 + BESIDE,
        y=base - SLANT * deep / 2 + NOTE + 1.5,
        words=depth,
        height=NOTE,
    )


def _seen(picture: Picture) -> Iterator[tuple[Vector, Vector]]:
    bodies = [_body(prism) for prism in picture.prisms]
    for body in bodies:
        others = [other for other in bodies if other is not body]
        for start, end in _edges(body):
            yield from _pieces(start, end, others)
    for mouth in picture.mouths:
        if dot(_outward(mouth, picture), EYE) > 0:
            for start, end in pairwise(_rim(mouth)):
                yield from _pieces(start, end, bodies)


def _pieces(start: Vector, end: Vector, hiding: list[Body]) -> Iterator[tuple[Vector, Vector]]:
    for low, high in seen_pieces(start, end, EYE, hiding):
        yield _between(start, end, low), _between(start, end, high)


def _between(start: Vector, end: Vector, share: float) -> Vector:
    return (
        start[0] + share * (end[0] - start[0]),
        start[1] + share * (end[1] - start[1]),
        start[2] + share * (end[2] - start[2]),
    )


def _edges(body: Body) -> Iterator[tuple[Vector, Vector]]:
    """Yield the edges of the faces that look towards the eye, each once."""
    known = set()
    for (normal, _), face in zip(body.planes, body.faces, strict=True):
        if dot(normal, EYE) <= 0:
            continue
        for start, end in pairwise((*face, face[0])):
            edge = frozenset((start, end))
            if edge not in known:
                known.add(edge)
                yield start, end


def _body(prism: Prism) -> Body:
    """Return a prism in millimetres, with its faces and their planes."""
    corners = [(_mm(u), _mm(v)) for u, v in prism.corners]
    low, high = (_mm(end) for end in prism.along)
    planes: list[Plane] = []
    faces: list[tuple[Vector, ...]] = []
    for (u, v), (next_u, next_v) in pairwise((*corners, corners[0])):
        length = hypot(next_u - u, next_v - v)
        normal = _spread(prism.axis, (next_v - v) / length, (u - next_u) / length, 0.0)
        face = (
            _spread(prism.axis, u, v, low),
            _spread(prism.axis, next_u, next_v, low),
            _spread(prism.axis, next_u, next_v, high),
            _spread(prism.axis, u, v, high),
        )
        planes.append((normal, dot(normal, face[0])))
        faces.append(face)
    for at, sign in ((low, -1.0), (high, 1.0)):
        normal = _spread(prism.axis, 0.0, 0.0, sign)
        planes.append((normal, sign * at))
        faces.append(tuple(_spread(prism.axis, u, v, at) for u, v in corners))
    return Body(planes=tuple(planes), faces=tuple(faces))


def _spread(axis: int, u: float, v: float, along: float) -> Vector:
    """Return a vector from its part along an axis and those along the two others in order."""
    values = [u, v]
    values.insert(axis, along)
    return values[0], values[1], values[2]


def _outward(mouth: Mouth, picture: Picture) -> Vector:
    """Return the direction that a hole opens to: away from the middle of the cabinet."""
    (a, b, c), (d, e, f) = _in_mm(mouth.across), _in_mm(mouth.up)
    normal = (b * f - c * e, c * d - a * f, a * e - b * d)
    middle = _in_mm(picture.outside)
    x, y, z = _in_mm(mouth.centre)
    away = (x - middle[0] / 2, y - middle[1] / 2, z - middle[2] / 2)
    if dot(normal, away) >= 0:
        return normal
    return -normal[0], -normal[1], -normal[2]


def _rim(mouth: Mouth) -> Iterator[Vector]:
    """Yield points round a hole, the first again at the end."""
    centre, across, up = map(_in_mm, (mouth.centre, mouth.across, mouth.up))
    shares = (
        [(cos(2 * pi * place / ROUND), sin(2 * pi * place / ROUND)) for place in range(ROUND + 1)]
        if mouth.is_round
        else [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0)]
    )
    for share, other in shares:
        x, y, z = (
            at + share * along + other * rise
            for at, along, rise in zip(centre, across, up, strict=True)
        )
        yield x, y, z


def _in_mm(point: Point) -> Vector:
    x, y, z = map(_mm, point)
    return x, y, z


def _mm(length: Length) -> float:
    return length / NM_PER_MM
