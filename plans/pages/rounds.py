"""Round and slanting outlines as straight lines, and lines cut off at the edge of a box."""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import acos, ceil, cos, pi, sin

from plans.pages.boxes import Box
from plans.pages.shapes import Line, LineKind

SAGITTA = 0.02  # how far a straight piece of a circle may lie inside it, in millimetres
FEWEST = 24


def circle_points(x: float, y: float, radius: float) -> tuple[tuple[float, float], ...]:
    """Return points round a circle, the first again at the end."""
    count = max(FEWEST, ceil(pi / acos(1 - min(SAGITTA / radius, 0.5))))
    angles = (2 * pi * place / count for place in range(count + 1))
    return tuple((x + radius * cos(angle), y + radius * sin(angle)) for angle in angles)


def circle(x: float, y: float, radius: float, kind: LineKind, within: Box) -> tuple[Line, ...]:
    """Return a circle as lines, as far as it lies in a box."""
    return path(circle_points(x, y, radius), kind, within)


def path(points: Iterable[tuple[float, float]], kind: LineKind, within: Box) -> tuple[Line, ...]:
    """Return lines from point to point, as far as they lie in a box."""
    lines = (Line(x1=a[0], y1=a[1], x2=b[0], y2=b[1], kind=kind) for a, b in pairwise(points))
    return tuple(inside(lines, within))


def inside(lines: Iterable[Line], box: Box) -> Iterator[Line]:
    """Yield what is left of lines in a box (Liang and Barsky)."""
    for line in lines:
        along_x, along_y = line.x2 - line.x1, line.y2 - line.y1
        start, end = 0.0, 1.0
        for origin, along, low, high in (
            (line.x1, along_x, box.left, box.right),
            (line.y1, along_y, box.top, box.bottom),
        ):
            if along == 0:
                if not low <= origin <= high:
                    start, end = 1.0, 0.0
                continue
            near, far = sorted(((low - origin) / along, (high - origin) / along))
            start, end = max(start, near), min(end, far)
        if start < end:
            yield Line(
                x1=line.x1 + start * along_x,
                y1=line.y1 + start * along_y,
                x2=line.x1 + end * along_x,
                y2=line.y1 + end * along_y,
                kind=line.kind,
            )
