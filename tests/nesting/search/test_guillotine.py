import itertools
import random

from nesting.search.guillotine import Placed, find_tree
from nesting.search.problem import SIDE_BY_SIDE, STACKED


def make_placed(*rectangles: tuple[int, int, int, int]) -> list[Placed]:
    return [
        Placed(code=2 * number, x=x, y=y, length=length, width=width)
        for number, (x, y, length, width) in enumerate(rectangles)
    ]


def cut_randomly(dice: random.Random, x: int, y: int, length: int, width: int) -> list[Placed]:
    """Return a rectangle cut up edge to edge at random, some pieces left out."""
    if dice.random() < 0.3 or min(length, width) < 2:
        return make_placed((x, y, length, width)) if dice.random() < 0.8 else []
    if dice.random() < length / (length + width):
        at = dice.randint(1, length - 1)
        return [
            *cut_randomly(dice, x, y, at, width),
            *cut_randomly(dice, x + at, y, length - at, width),
        ]
    at = dice.randint(1, width - 1)
    return [
        *cut_randomly(dice, x, y, length, at),
        *cut_randomly(dice, x, y + at, length, width - at),
    ]


def measure(codes: tuple[int, ...], placed: list[Placed]) -> tuple[int, int]:
    """Return the least extents that a tree needs."""
    sizes = {item.code: (item.length, item.width) for item in placed}
    stack: list[tuple[int, int]] = []
    for code in codes:
        if code >= 0:
            stack.append(sizes[code])
            continue
        second, first = stack.pop(), stack.pop()
        if code == SIDE_BY_SIDE:
            stack.append((first[0] + second[0], max(first[1], second[1])))
        else:
            stack.append((max(first[0], second[0]), first[1] + second[1]))
    assert len(stack) == 1
    return stack[0]


def test_two_parts_side_by_side() -> None:
    assert find_tree(make_placed((0, 0, 5, 3), (5, 0, 2, 2))) == (0, 2, SIDE_BY_SIDE)


def test_a_row_on_top_of_a_part() -> None:
    tree = find_tree(make_placed((0, 0, 9, 3), (0, 3, 4, 2), (4, 3, 4, 3)))
    assert tree == (0, 2, 4, SIDE_BY_SIDE, STACKED)


def test_a_pinwheel_has_no_tree() -> None:
    pinwheel = make_placed((0, 0, 2, 1), (2, 0, 1, 2), (1, 2, 2, 1), (0, 1, 1, 2), (1, 1, 1, 1))
    assert find_tree(pinwheel) is None


def test_whatever_is_cut_edge_to_edge_is_found_again() -> None:
    dice = random.Random(5)  # noqa: S311 - a test, not a lock
    for _ in range(300):
        rectangles = cut_randomly(dice, 0, 0, 40, 30)
        placed = [
            Placed(code=2 * number, x=item.x, y=item.y, length=item.length, width=item.width)
            for number, item in zip(itertools.count(), rectangles, strict=False)
        ]
        if not placed:
            continue
        tree = find_tree(placed)
        assert tree is not None
        assert sorted(code for code in tree if code >= 0) == [item.code for item in placed]
        length, width = measure(tree, placed)
        assert length <= 40
        assert width <= 30
