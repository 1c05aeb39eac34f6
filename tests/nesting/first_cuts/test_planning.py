from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.car import Car, find_way_in
from nesting.checks import check_layout
from nesting.first_cuts import solve_with_yard
from nesting.first_cuts.split import clean_up
from nesting.job import Job
from nesting.layout import By, Cut, Layout, PartLeaf, Place, Rect, SheetLayout, walk
from nesting.lengths import mm
from nesting.solve import solve
from tests.nesting.defects.defect_jobs import KNOT, unsound
from tests.nesting.first_cuts.samples import ESTATE, SMALL, YARD, with_car
from tests.nesting.garage.plans_read import document_of
from tests.nesting.hand_made import BIRCH, part

EFFORT = 1


def places(job: Job, sheet: SheetLayout) -> list[Place]:
    stock = job.sheets[sheet.sheet]
    return list(walk(sheet.root, Rect(x=0, y=0, length=stock.length, width=stock.width)))


def is_yard(place: Place) -> bool:
    return isinstance(place.node, Cut) and place.node.by is By.YARD


def yard_pieces(job: Job, sheet: SheetLayout) -> list[Place]:
    """Return what the yard hands over, found apart from the planning."""
    found = {place.path: place for place in places(job, sheet)}
    return [
        place
        for path, place in found.items()
        if not is_yard(place) and all(is_yard(found[path[:end]]) for end in range(len(path)))
    ]


def check_first_cuts(job: Job, layout: Layout) -> None:
    """Hold a layout to what the yard and the car allow, and to every other rule."""
    assert check_layout(job, layout) == ()
    assert job.yard is not None
    assert job.car is not None
    for sheet in layout.sheets:
        stock = job.sheets[sheet.sheet]
        cuts = sum(is_yard(place) for place in places(job, sheet))
        assert cuts <= job.yard.max_cuts
        for piece in yard_pieces(job, sheet):
            rect = piece.rect
            if not stock.owned:
                assert find_way_in(job.car, rect.length, rect.width, stock.thickness)
            if cuts:
                assert min(rect.length, rect.width) >= job.yard.min_piece
            check_edges(job, sheet, piece)


def check_edges(job: Job, sheet: SheetLayout, piece: Place) -> None:
    """See that no part reaches a yard edge: room to be off and to be trimmed again lies between."""
    assert job.yard is not None
    rect, stock = piece.rect, job.sheets[sheet.sheet]
    clean = clean_up(job.yard, job.saw.kerf)
    for place in places(job, sheet):
        if not isinstance(place.node, PartLeaf) or place.path[: len(piece.path)] != piece.path:
            continue
        inner = place.rect
        if rect.x > 0:
            assert inner.x - rect.x >= clean
        if rect.x + rect.length < stock.length:
            assert rect.x + rect.length - inner.x - inner.length >= clean + job.yard.rough
        if rect.y > 0:
            assert inner.y - rect.y >= clean
        if rect.y + rect.width < stock.width:
            assert rect.y + rect.width - inner.y - inner.width >= clean + job.yard.rough


def test_a_job_without_yard_and_car_is_solved_as_ever() -> None:
    job = with_car(yard=None, car=None)
    assert solve_with_yard(job, effort=EFFORT) == solve(job, effort=EFFORT)


@pytest.mark.parametrize("car", [ESTATE, SMALL], ids=["estate", "small"])
def test_what_is_bought_goes_into_the_car_and_all_parts_come_out(car: Car) -> None:
    job = replace(with_car(), car=car)
    result = solve_with_yard(job, effort=EFFORT)
    check_first_cuts(job, result.layout)
    assert result.layout.unplaced == ()
    assert result.cost == BIRCH.price
    assert result.layout.notes == ()


def test_few_cuts_are_asked_for() -> None:
    result = solve_with_yard(with_car(), effort=EFFORT)
    assert sum(is_yard(place) for place in places(with_car(), result.layout.sheets[0])) == 1


def test_several_sheets_and_both_kerfs_add_up() -> None:
    job = with_car(
        part("Deck", 1000, 500, 8), part("Rail", 700, 160, 10), yard=replace(YARD, kerf=mm(5))
    )
    result = solve_with_yard(job, effort=EFFORT)
    check_first_cuts(job, result.layout)
    assert {
        place.node.removed
        for sheet in result.layout.sheets
        for place in places(job, sheet)
        if isinstance(place.node, Cut) and is_yard(place)
    } == {mm(5)}
    assert result.cost >= result.bound


def test_the_car_never_costs_a_sheet_in_silence() -> None:
    # Two parts of 1205 x 1190 fill a sheet to within 10 mm of its length; no cut leaves 2 pieces
    # with room for rough edges, so that each of them needs a sheet of its own.
    job = with_car(part("Board", 1205, 1190, 2))
    assert solve(job, effort=EFFORT).cost == BIRCH.price
    result = solve_with_yard(job, effort=EFFORT)
    check_first_cuts(job, result.layout)
    assert result.cost == 2 * BIRCH.price
    assert result.layout.notes == (
        (
            "The car costs 1 sheet more of birch plywood, 62.00 in all: with delivery 1 sheet for "
            "62.00 would do."
        ),
    )


def test_half_sheets_that_go_in_whole_stand_in_where_they_cost_less() -> None:
    half = replace(BIRCH, name="half", length=mm(1220), price=Decimal(40))
    job = with_car(part("Board", 1190, 1190, 2), sheets=(BIRCH, half))
    result = solve_with_yard(job, effort=EFFORT)
    check_first_cuts(job, result.layout)
    # One whole sheet and a cut for 2 is 64, less than two halves for 80.
    assert result.cost == BIRCH.price
    dear = replace(job, yard=replace(YARD, price_per_cut=Decimal(30)))
    result = solve_with_yard(dear, effort=EFFORT)
    assert [dear.sheets[sheet.sheet].name for sheet in result.layout.sheets] == ["half", "half"]


def test_what_is_at_home_already_is_neither_cut_at_the_yard_nor_driven() -> None:
    owned = replace(BIRCH, name="own", price=Decimal(0), owned=True, count=1)
    job = with_car(sheets=(owned,))
    result = solve_with_yard(job, effort=EFFORT)
    assert result.layout.notes == ()
    assert not any(is_yard(place) for place in places(job, result.layout.sheets[0]))


def test_without_a_yard_it_is_said_which_sheets_stay_outside() -> None:
    job = with_car(yard=None)
    result = solve_with_yard(job, effort=EFFORT)
    assert result.layout.sheets == solve(job, effort=EFFORT).layout.sheets
    assert result.layout.notes == (
        (
            "birch 18, 2440 × 1220 mm, does not go into the car. Have it delivered, or add a "
            "[yard] table so that its first cuts are planned."
        ),
    )


def test_a_part_that_no_car_takes_is_named() -> None:
    job = with_car(part("Counter", 2000, 600))
    result = solve_with_yard(job, effort=EFFORT)
    assert result.layout.notes == (
        (
            "Counter, 2000 × 600 mm, lies in no piece that goes into the car and that the yard may "
            "cut. No first cuts are planned for its sheets: have it delivered."
        ),
    )
    assert check_layout(job, result.layout) == ()


def test_a_yard_that_may_not_cut_often_enough_is_told() -> None:
    job = with_car(car=SMALL, yard=replace(YARD, max_cuts=1))
    result = solve_with_yard(job, effort=EFFORT)
    assert len(result.layout.notes) == 1
    assert "no first cuts within the yard's limits were found" in result.layout.notes[0]


def test_without_a_car_heavy_sheets_are_made_light_and_no_sheet_more_is_bought() -> None:
    job = with_car(car=None)
    result = solve_with_yard(job, effort=EFFORT)
    assert check_layout(job, result.layout) == ()
    assert result.cost == BIRCH.price
    assert len(yard_pieces(job, result.layout.sheets[0])) >= 2


def test_the_same_seed_gives_the_same_first_cuts() -> None:
    job = with_car()
    assert solve_with_yard(job, effort=EFFORT) == solve_with_yard(job, effort=EFFORT)


@pytest.mark.parametrize("car", [None, ESTATE])
def test_what_defects_cost_is_said_with_a_yard_too(car: Car | None) -> None:
    ruined = replace(KNOT, x=mm(20), y=mm(20), length=mm(2300), width=mm(1100))
    job = with_car(car=car, sheets=(unsound(ruined), BIRCH))
    result = solve_with_yard(job, effort=EFFORT)
    assert result.cost == BIRCH.price
    assert any("The defects of birch plywood cost more" in note for note in result.layout.notes)


def test_a_leftover_is_not_cut_from_an_edge_that_is_still_raw() -> None:
    """A piece of the yard that is not used keeps its defect: no edge of it is straight."""
    far = replace(KNOT, x=mm(1600), y=mm(1100))
    sheet = replace(unsound(KNOT, far), owned=False, price=BIRCH.price)
    job = with_car(part("Shelf", 500, 300), sheets=(sheet,))
    layout = solve_with_yard(job, effort=EFFORT).layout
    assert any(is_yard(place) for place in places(job, layout.sheets[0]))
    assert check_layout(job, layout) == ()
    assert document_of(job, layout)


def test_what_has_no_place_at_all_is_told_as_ever() -> None:
    job = with_car(part("Shelf", 700, 300, 4), part("Boat", 3000, 300))
    result = solve_with_yard(job, effort=EFFORT)
    check_first_cuts(job, result.layout)
    assert [(gap.part, gap.count) for gap in result.layout.unplaced] == [(1, 1)]
    assert result.layout.unplaced == solve(job, effort=EFFORT).layout.unplaced


def test_a_yard_cut_with_another_kerf_or_without_a_yard_is_no_layout() -> None:
    job = with_car()
    layout = solve_with_yard(job, effort=0).layout
    other = replace(job, yard=replace(YARD, kerf=mm(4)))
    assert any(
        "removes 3200000, and the kerf is 4000000" in fault for fault in check_layout(other, layout)
    )
    assert any(
        "left to the yard, and there is none" in fault
        for fault in check_layout(replace(job, yard=None), layout)
    )
