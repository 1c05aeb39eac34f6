"""The car's opening seen from behind, and the boards of every trip as they lie in it."""

from collections.abc import Iterator, Sequence
from math import cos, pi, sin

from nesting.car import Lie
from nesting.lengths import NM_PER_MM, Length
from plans.pages.blocks import Block, moved
from plans.pages.lettering import NOTE
from plans.pages.shapes import Anchor, Line, LineKind, Rectangle, Shape, Text
from plans.sections.car import CarPage, CarPiece

MOST = 3  # trips that are drawn; more lie likewise
WIDEST = 52.0
TALLEST = 38.0
LEFT = 6.0  # for the height in figures
BELOW = 10.0  # for the width, and which trip it is
GAP = 5.0
TURNS = 360  # angles tried from lying to standing


def car_pictures(page: CarPage, width: float) -> Block:
    """Return the opening once for every trip, as many as stand beside each other."""
    trips = range(1, min(page.loads, MOST) + 1)
    each = min(WIDEST, (width - GAP * (MOST - 1)) / MOST)
    wide, high = map(_mm, page.sides)
    scale = min((each - LEFT) / wide, TALLEST / high)
    shapes: list[Shape] = []
    for trip in trips:
        load = [piece for piece in page.pieces if piece.load == trip]
        shapes += moved(tuple(_opening(page, load, scale)), (trip - 1) * (each + GAP), 1.0)
    return Block(height=high * scale + BELOW + 2.0 if trips else 0.0, shapes=tuple(shapes))


def _opening(page: CarPage, load: Sequence[CarPiece], scale: float) -> Iterator[Shape]:
    """Yield one opening with its sizes, what is free of it, and the boards in it."""
    wide, high = (_mm(side) * scale for side in page.sides)
    yield Rectangle(x=LEFT, y=0.0, width=wide, height=high, kind=LineKind.SHEET_EDGE)
    yield Line(x1=LEFT, y1=high, x2=LEFT + wide, y2=high, kind=LineKind.HEAVY_RULE)
    across, up = page.side_texts
    middle = LEFT + wide / 2
    yield Text(x=middle, y=high + NOTE + 1.6, words=across, height=NOTE, anchor=Anchor.MIDDLE)
    yield Text(
        x=LEFT - 1.8, y=high / 2, words=up, height=NOTE, anchor=Anchor.MIDDLE, is_upright=True
    )
    words = f"trip {load[0].load}, from behind" if page.loads > 1 else "from behind"
    yield Text(x=middle, y=high + 2 * NOTE + 3.6, words=words, height=NOTE, anchor=Anchor.MIDDLE)
    for x1, y1, x2, y2 in _boards(page, load):
        yield Line(
            x1=middle + x1 * scale,
            y1=high - y1 * scale,
            x2=middle + x2 * scale,
            y2=high - y2 * scale,
            kind=LineKind.CUT,
        )


def _boards(page: CarPage, load: Sequence[CarPiece]) -> Iterator[tuple[float, float, float, float]]:
    """Yield the middle line of every board, in millimetres from the middle of the floor.

    Flat ones lie on each other; the others lean together over them as one thick board.
    """
    room_across, room_up = map(_mm, page.room)
    lowest = (_mm(page.sides[1]) - room_up) / 2
    for piece in load:
        if piece.way is Lie.FLAT:
            thick, half = _mm(piece.thickness), _mm(piece.width) / 2
            yield -half, lowest + thick / 2, half, lowest + thick / 2
            lowest, room_up = lowest + thick, room_up - thick
    others = [piece for piece in load if piece.way is not Lie.FLAT]
    if not others:
        return
    long, thick = max(_mm(one.width) for one in others), sum(_mm(one.thickness) for one in others)
    stands = all(one.way is Lie.EDGE for one in others)
    angle = find_angle(long, thick, room_across, room_up, stands=stands)
    left, done = -(long * cos(angle) + thick * sin(angle)) / 2, 0.0
    for one in others:
        aside = done + _mm(one.thickness) / 2
        done += _mm(one.thickness)
        # the lower edge of the bundle begins at the left, and the boards lie above it
        x = left + (thick - aside) * sin(angle)
        y = lowest + aside * cos(angle)
        board = _mm(one.width)
        yield x, y, x + board * cos(angle), y + board * sin(angle)


def find_angle(long: float, thick: float, across: float, up: float, *, stands: bool) -> float:
    """Return the angle at which a board goes through an opening, the flattest or the steepest."""
    angles = [place * pi / 2 / TURNS for place in range(TURNS + 1)]
    fitting = [
        angle
        for angle in angles
        if long * cos(angle) + thick * sin(angle) <= across + 1e-6
        and long * sin(angle) + thick * cos(angle) <= up + 1e-6
    ]
    if not fitting:  # between two of the angles tried
        return min(angles, key=lambda angle: abs(long * cos(angle) + thick * sin(angle) - across))
    return fitting[-1] if stands else fitting[0]


def _mm(length: Length) -> float:
    return length / NM_PER_MM
