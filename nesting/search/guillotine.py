"""From placed rectangles to a tree of cuts."""

from dataclasses import dataclass

from nesting.search.problem import SIDE_BY_SIDE, STACKED, Codes


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A placed rectangle.

    Attributes:
        code: Its code in a postfix tree.
        x: Left edge.
        y: Low edge.
        length: Extent along x.
        width: Extent along y.
    """

    code: int
    x: int
    y: int
    length: int
    width: int


def find_tree(rectangles: list[Placed]) -> Codes | None:
    """Return a tree of cuts that frees every rectangle, or None where edge to edge cuts cannot.

    Cuts at every line that no rectangle crosses, first across x, then across y, and so on. Cutting
    wherever it is possible never spoils a later cut, so None is the truth.
    """
    tree: list[int] = []
    waiting: list[tuple[list[Placed], int, bool] | int] = [(rectangles, SIDE_BY_SIDE, False)]
    while waiting:
        step = waiting.pop()
        if isinstance(step, int):
            tree.append(step)
            continue
        group, join, was_stuck = step
        if len(group) == 1:
            tree.append(group[0].code)
            continue
        bands = _split(group, join)
        if len(bands) == 1 and was_stuck:
            return None
        other = STACKED if join == SIDE_BY_SIDE else SIDE_BY_SIDE
        for number, band in reversed(list(enumerate(bands))):
            if number:
                waiting.append(join)
            waiting.append((band, other, len(bands) == 1))
    return tuple(tree)


def _split(group: list[Placed], join: int) -> list[list[Placed]]:
    """Return the bands between the lines that no rectangle of the group crosses."""
    spans = sorted(
        (_low(item, join), _high(item, join), number) for number, item in enumerate(group)
    )
    bands: list[list[Placed]] = []
    reach = spans[0][0]
    for low, high, number in spans:
        if not bands or low >= reach:
            bands.append([])
        bands[-1].append(group[number])
        reach = max(reach, high)
    return bands


def _low(item: Placed, join: int) -> int:
    return item.x if join == SIDE_BY_SIDE else item.y


def _high(item: Placed, join: int) -> int:
    return item.x + item.length if join == SIDE_BY_SIDE else item.y + item.width
