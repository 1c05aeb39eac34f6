from dataclasses import replace

import pytest

from nesting.car import Car
from nesting.first_cuts.candidates import list_splits
from nesting.first_cuts.needs import gets_home
from nesting.layout import Direction, Rect, walk
from nesting.lengths import mm
from nesting.sheets import Sheet
from tests.nesting.first_cuts.samples import ESTATE, SHELVES, SMALL, YARD, with_car
from tests.nesting.hand_made import BIRCH

TALL = replace(BIRCH, length=BIRCH.width, width=BIRCH.length)


@pytest.mark.parametrize("sheet", [BIRCH, TALL], ids=["lying", "standing"])
@pytest.mark.parametrize("car", [ESTATE, SMALL], ids=["estate", "small"])
def test_every_piece_goes_in_even_where_the_yard_cuts_too_large(sheet: Sheet, car: Car) -> None:
    job = with_car(car=car, sheets=(sheet,))
    splits = list_splits(job, sheet, SHELVES)
    assert splits
    for split in splits:
        assert split.cuts <= YARD.max_cuts
        for piece in split.pieces:
            assert min(piece.rect.length, piece.rect.width) >= YARD.min_piece
            assert gets_home(
                job,
                sheet,
                piece.rect.length + piece.off_length,
                piece.rect.width + piece.off_width,
            )


def test_lengths_are_shortened_crosswise_first() -> None:
    for sheet, across in ((BIRCH, Direction.CROSSCUT), (TALL, Direction.RIP)):
        for split in list_splits(with_car(sheets=(sheet,)), sheet, SHELVES):
            assert getattr(split.root, "direction", None) is across


def test_the_fewest_cuts_come_first() -> None:
    cuts = [split.cuts for split in list_splits(with_car(), BIRCH, SHELVES)]
    assert cuts == sorted(cuts)
    assert cuts[0] == 1


def test_pieces_too_wide_for_the_car_are_divided_along() -> None:
    splits = list_splits(with_car(car=SMALL), BIRCH, SHELVES)
    assert splits[0].cuts == 2
    whole = Rect(x=0, y=0, length=BIRCH.length, width=BIRCH.width)
    directions = {getattr(place.node, "direction", None) for place in walk(splits[0].root, whole)}
    assert {Direction.CROSSCUT, Direction.RIP} <= directions


def test_a_sheet_that_goes_in_whole_is_left_whole() -> None:
    half = replace(BIRCH, length=mm(1220))
    splits = list_splits(with_car(sheets=(half,)), half, SHELVES)
    assert [split.cuts for split in splits] == [0]


def test_no_split_where_the_yard_may_not_cut_often_enough() -> None:
    job = with_car(car=SMALL, yard=replace(YARD, max_cuts=1))
    assert list_splits(job, BIRCH, SHELVES) == ()


def test_without_a_car_the_lift_limit_decides() -> None:
    job = with_car(car=None)
    for split in list_splits(job, BIRCH, SHELVES):
        for piece in split.pieces:
            # 685 kg/m3 for 18 mm birch, from a maker's datasheet
            area_m2 = piece.rect.length / 1e9 * piece.rect.width / 1e9
            assert area_m2 * 0.018 * 685 <= 20
