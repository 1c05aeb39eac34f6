"""Lots are exchanged without a cut, and the best exchange is compared with trying them all."""

import random
from collections import Counter
from dataclasses import replace
from itertools import product

import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.expand import expand
from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, PartLeaf, SheetLayout
from nesting.lengths import Unit, mm
from nesting.lots import find_mixed_joints, prefer_one_lot
from nesting.sheets import Sheet
from tests.nesting.hand_made import BIRCH, job

THIN = replace(BIRCH, name="thin lot", measured=(mm("17.5"),), count=2)
THICK = replace(BIRCH, name="thick lot", measured=(mm("17.8"),), count=2)


def boxes(letters: tuple[str, ...], *sheets: Sheet) -> Job:
    design = BoxDesign(
        name="Box",
        count=len(letters),
        height=mm(600),
        width=mm(400),
        depth=mm(300),
        board=Board(material=BIRCH.material, thickness=BIRCH.thickness),
        baffle=Closing(fit=Fit.INSET),
        back=Closing(fit=Fit.INSET),
    )
    build = expand(design, letters=letters, measured={}, step=mm("0.5"), unit=Unit.MM)
    return replace(job(*build.parts, sheets=sheets), cabinets=(build,))


def laid(made: Job, trees: list[list[int]], kinds: list[int]) -> Layout:
    """Return a layout that has some parts on each sheet; how they lie does not matter here."""
    sheets = []
    for parts, kind in zip(trees, kinds, strict=True):
        root: PartLeaf | Cut = PartLeaf(part=parts[0], copy=0)
        for part in parts[1:]:
            leaf = PartLeaf(part=part, copy=0)
            root = Cut(direction=Direction.RIP, at=1, removed=1, first=leaf, second=root)
        sheets.append(SheetLayout(sheet=kind, root=root))
    assert made.parts
    return Layout(sheets=tuple(sheets))


def mixed(made: Job, layout: Layout) -> int:
    return len({(joint.cabinet, joint.parts) for joint in find_mixed_joints(made, layout)})


def test_two_cabinets_on_two_sheets_each_get_a_lot_each() -> None:
    made = boxes(("A", "B"), THIN, THICK)
    half = len(made.parts) // 2
    trees = [[0, 1], list(range(2, half)), [half, half + 1], list(range(half + 2, 2 * half))]
    crossed = laid(made, trees, [0, 1, 0, 1])
    assert mixed(made, crossed)
    better = prefer_one_lot(made, crossed)
    assert mixed(made, better) == 0
    assert [tree.root for tree in better.sheets] == [tree.root for tree in crossed.sheets]
    assert Counter(tree.sheet for tree in better.sheets) == {0: 2, 1: 2}


def test_no_sheet_is_taken_that_costs_more() -> None:
    dear = replace(THIN, price=BIRCH.price + 1, count=None)
    made = boxes(("A",), dear, replace(THICK, count=None))
    split = laid(made, [[0, 1], [2, 3]], [0, 1])
    assert prefer_one_lot(made, split) == split


def test_a_spare_sheet_of_the_same_price_is_taken() -> None:
    made = boxes(("A",), THIN, replace(THICK, count=None))
    split = laid(made, [[0, 1], [2, 3]], [0, 1])
    assert len({tree.sheet for tree in prefer_one_lot(made, split).sheets}) == 1


@pytest.mark.parametrize("seed", range(12))
def test_no_other_exchange_is_better(seed: int) -> None:
    """So it was for all of 60 seeds."""
    chance = random.Random(seed)  # noqa: S311
    made = boxes(("A", "B", "C"), replace(THIN, count=3), replace(THICK, count=3))
    order = list(range(len(made.parts)))
    chance.shuffle(order)
    trees = [order[number::5] for number in range(5)]
    start = laid(made, trees, [chance.randrange(2) for _ in trees])
    if max(Counter(tree.sheet for tree in start.sheets).values()) > 3:
        start = laid(made, trees, [0, 1, 0, 1, 0])
    ended = mixed(made, prefer_one_lot(made, start))
    best = min(
        mixed(made, laid(made, trees, list(kinds)))
        for kinds in product((0, 1), repeat=5)
        if max(Counter(kinds).values()) <= 3
    )
    assert ended == best
