"""Planning again from the garage: nothing is lost, nothing bought in vain."""

import time
from collections import Counter
from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.checks import check_layout
from nesting.garage.events import Mark, PartRead, PieceSpoilt, SheetMissing, SheetRead
from nesting.garage.hand import list_finished, list_in_hand
from nesting.garage.marking import add_marks
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.garage.remaining import name_of
from nesting.job import Job
from nesting.layout import Layout, PartLeaf, Rect, Unplaced, walk
from nesting.lengths import mm
from nesting.parts import Grain
from nesting.replan import Replanned, replan
from nesting.replan.needs import find_needs
from nesting.sheets import Sheet
from nesting.solve import solve
from tests.nesting.garage.plans_read import after_cuts, document_of, planned
from tests.nesting.hand_made import BIRCH, job, part, two_cabinets


@pytest.fixture(scope="module")
def cabinets() -> tuple[Job, Planned]:
    made, layout = two_cabinets()
    return made, planned(made, layout)


@pytest.fixture(scope="module")
def sixty() -> tuple[Job, Planned]:
    """Sixty parts of twelve kinds, with grain, on sheets as the search lays them."""
    parts = [
        replace(
            part(f"Panel {number}", 260 + 47 * number % 331, 140 + 29 * number % 173, 5),
            grain=Grain.LENGTH if number % 3 else Grain.ANY,
        )
        for number in range(12)
    ]
    made = job(*parts)
    return made, planned(made, solve(made, effort=2).layout)


def count_everything(made: Job, plan: Planned, marks: Marks, again: Replanned) -> None:
    """Check that finished, placed and unplaced parts are what the job asks for, no more."""
    rest = again.remaining.job
    assert check_layout(rest, again.layout) == ()
    counts = Counter(part.name for part in list_finished(plan, marks))
    for sheet in again.layout.sheets:
        stock = rest.sheets[sheet.sheet]
        whole = Rect(x=0, y=0, length=stock.length, width=stock.width)
        for place in walk(sheet.root, whole):
            if isinstance(place.node, PartLeaf):
                counts[name_of(rest.parts[place.node.part])] += 1
    for gap in again.layout.unplaced:
        counts[name_of(rest.parts[gap.part])] += gap.count
    assert counts == Counter({name_of(each): each.count for each in made.parts})
    assert rest.earlier is not None
    codes = [code for kind in rest.earlier.codes for code in kind]
    assert len(codes) == len(set(codes))
    assert not set(codes) & {part.code for part in rest.earlier.finished}


def test_from_every_prefix_the_rest_is_planned_and_nothing_bought(
    cabinets: tuple[Job, Planned],
) -> None:
    made, plan = cabinets
    for number in range(plan.cut_count + 1):
        marks = after_cuts(plan, number)
        again = replan(made, plan, marks, effort=0)
        count_everything(made, plan, marks, again)
        assert not again.cost
        assert not again.needs
        assert not again.layout.unplaced
        document_of(again.remaining.job, again.layout)


@pytest.mark.parametrize("number", [0, 3, 6, 10])
def test_any_piece_may_turn_out_smaller(cabinets: tuple[Job, Planned], number: int) -> None:
    made, plan = cabinets
    marks = after_cuts(plan, number)
    for piece in list_in_hand(plan, marks):
        left = (piece.length * 2 // 3, piece.width * 2 // 3)
        spoilt = add_marks(plan, marks, (PieceSpoilt(code=piece.code, left=(left,)),))
        again = replan(made, plan, spoilt, effort=1)
        count_everything(made, plan, spoilt, again)
        assert again.layout.unplaced == ()
        assert bool(again.needs) is (again.cost > 0)
        document_of(again.remaining.job, again.layout)


def test_a_spoilt_part_comes_from_the_leftovers_where_it_can(
    cabinets: tuple[Job, Planned],
) -> None:
    made, plan = cabinets
    marks = after_cuts(plan, plan.cut_count, PieceSpoilt(code="A1"))
    again = replan(made, plan, marks, effort=1)
    count_everything(made, plan, marks, again)
    assert not again.cost
    assert not again.needs
    (sheet,) = again.layout.sheets
    assert again.remaining.job.sheets[sheet.sheet].name.startswith("L")


def test_codes_of_labels_stay_true(cabinets: tuple[Job, Planned]) -> None:
    made, plan = cabinets
    marks = after_cuts(plan, 8)
    again = replan(made, plan, marks, effort=0)
    document = document_of(again.remaining.job, again.layout)
    before = {p.code: p.part.name for _, p in plan.pieces() if p.part is not None}
    after = {p["code"]: p["name"] for sheet in document["sheets"] for p in sheet["parts"]}
    assert after
    assert all(before[code] == name for code, name in after.items())
    pieces = {p.code for _, p in plan.pieces() if p.code[0] in "PL"}
    new = {row["hold"] for sheet in document["sheets"] for row in sheet["printed"]["rows"]}
    assert not pieces & new


def lost_panel() -> tuple[Job, Planned, Marks]:
    """Return a sheet cut into two panels, nothing left over, and one of them spoilt."""
    stock = replace(BIRCH, length=mm(1000), width=mm(500), price=Decimal(30))
    made = job(
        replace(part("Panel", 486, 480, 2), grain=Grain.LENGTH),
        sheets=[stock],
    )
    plan = planned(made, solve(made, effort=0).layout)
    return made, plan, after_cuts(plan, plan.cut_count, PieceSpoilt(code="A1"))


def test_the_smallest_piece_that_would_do_is_the_smallest() -> None:
    made, plan, marks = lost_panel()
    again = replan(made, plan, marks, effort=1)
    assert (again.cost, len(again.layout.unplaced)) == (Decimal(30), 0)
    (need,) = again.needs
    (box,) = need.pieces
    assert need.between == (mm("17.5"), mm("17.9"))
    for length, width, helps in (
        (box.length, box.width, True),
        (box.length - mm(1), box.width, False),
        (box.length, box.width - mm(1), False),
    ):
        found = Sheet(
            name="found",
            material=BIRCH.material,
            thickness=BIRCH.thickness,
            length=length,
            width=width,
            count=1,
            owned=True,
        )
        with_it = replan(replace(made, sheets=(*made.sheets, found)), plan, marks, effort=1)
        assert (with_it.cost == 0, with_it.needs == ()) == (helps, helps)


def test_no_piece_is_asked_for_that_no_sheet_could_give() -> None:
    made = job(replace(part("Shelf", 1000, 300, 3), grain=Grain.LENGTH))
    layout = Layout(sheets=(), unplaced=(Unplaced(part=0, count=3, reason="no room"),))
    (need,) = find_needs(made, layout)
    sheets = [(sheet.length, sheet.width) for sheet in made.sheets]
    assert need.pieces  # 1000 x 904.8 and 2002.4 x 602.4, but not 3004.8 x 300
    assert all(
        any(box.length <= length and box.width <= width for length, width in sheets)
        for box in need.pieces
    )
    assert {box.length for box in need.pieces} == {mm(1000), mm("2002.4")}


def test_a_limited_stock_is_not_sold_twice() -> None:
    made, plan, marks = lost_panel()
    only = replace(made, sheets=(replace(made.sheets[0], count=1),))
    again = replan(only, plan, marks, effort=0)
    assert [gap.count for gap in again.layout.unplaced] == [1]
    assert again.needs


def test_a_missing_sheet_can_be_bought_again() -> None:
    made, plan, _ = lost_panel()
    only = replace(made, sheets=(replace(made.sheets[0], count=1),))
    marks = add_marks(plan, Marks(), (SheetMissing(sheet=1),))
    again = replan(only, plan, marks, effort=0)
    assert (again.cost, len(again.layout.unplaced)) == (Decimal(30), 0)


def test_a_measured_part_is_cut_to_its_reading(cabinets: tuple[Job, Planned]) -> None:
    made, plan = cabinets
    reading = (mm("401.5"), mm("300.5"))
    marks = after_cuts(plan, 0, PartRead(code="B2", size=reading))
    again = replan(made, plan, marks, effort=2)
    count_everything(made, plan, marks, again)
    document = document_of(again.remaining.job, again.layout)
    sizes = {p["code"]: p["finished"] for sheet in document["sheets"] for p in sheet["parts"]}
    assert sizes["B2"] == [401.5, 300.5]


def test_a_sheet_measured_smaller_is_planned_as_it_is(cabinets: tuple[Job, Planned]) -> None:
    made, plan = cabinets
    size, thick = (mm("2438.5"), mm(1219)), (mm("17.6"), mm("17.8"), mm("17.6"))
    marks = add_marks(plan, Marks(), (SheetRead(sheet=1, size=size, thickness=thick),))
    again = replan(made, plan, marks, effort=2)
    count_everything(made, plan, marks, again)
    (sheet,) = document_of(again.remaining.job, again.layout)["sheets"]
    assert (sheet["length"], sheet["width"], sheet["measured"]) == (2438.5, 1219, 17.7)


def test_planning_goes_on_more_than_once(cabinets: tuple[Job, Planned]) -> None:
    made, plan = cabinets
    first = replan(made, plan, after_cuts(plan, 6), effort=1)
    second_plan = planned(first.remaining.job, first.layout)
    finished = [part.code for part in second_plan.finished]
    marks = after_cuts(second_plan, second_plan.cut_count)
    last = replan(made, second_plan, marks, effort=0)
    assert last.remaining.job.parts == ()
    assert len(list_finished(second_plan, marks)) == 10
    if finished:
        spoilt = add_marks(second_plan, marks, (PieceSpoilt(code=finished[0]),))
        again = replan(made, second_plan, spoilt, effort=0)
        assert sum(each.count for each in again.remaining.job.parts) == 1


SPOILS: list[tuple[int, tuple[Mark, ...]]] = [
    (0, ()),
    (25, ()),
    (0, (PieceSpoilt(code="S1", left=((mm(1500), mm(1220)),)),)),
]


@pytest.mark.slow
@pytest.mark.parametrize(("number", "more"), SPOILS)
def test_sixty_parts_are_planned_again_within_a_minute(
    sixty: tuple[Job, Planned], number: int, more: tuple[Mark, ...]
) -> None:
    made, plan = sixty
    marks = after_cuts(plan, number, *more)
    start = time.monotonic()
    again = replan(made, plan, marks)
    assert time.monotonic() - start < 60
    count_everything(made, plan, marks, again)
    assert again.layout.unplaced == ()


@pytest.mark.slow
def test_sixty_parts_from_any_prefix_and_any_piece_made_smaller(
    sixty: tuple[Job, Planned],
) -> None:
    made, plan = sixty
    for number in range(0, plan.cut_count, 7):
        marks = after_cuts(plan, number)
        pieces = [piece for piece in list_in_hand(plan, marks) if piece.origin is not None]
        piece = pieces[number % len(pieces)]
        left = (piece.length * 3 // 4, piece.width * 3 // 4)
        spoilt = add_marks(plan, marks, (PieceSpoilt(code=piece.code, left=(left,)),))
        again = replan(made, plan, spoilt, effort=1)
        count_everything(made, plan, spoilt, again)
        assert again.layout.unplaced == ()
        document_of(again.remaining.job, again.layout)
