from dataclasses import replace
from decimal import Decimal

from nesting.car import Car
from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.lengths import mm
from plans.plan import make_plan
from plans.sections.car import CarPage
from tests.nesting.first_cuts.samples import ESTATE, with_car
from tests.nesting.hand_made import BIRCH, part
from tests.plans.yard_plans import half_sheets, narrow_pieces


def page_of(job: Job) -> CarPage:
    page = make_plan(job, solve_with_yard(job, effort=0)).car
    assert page is not None
    return page


def test_a_plan_without_a_car_has_no_page_for_it() -> None:
    job = with_car(car=None)
    assert make_plan(job, solve_with_yard(job, effort=0)).car is None


def test_every_piece_is_listed_with_its_code_size_and_mass() -> None:
    _, _, plan = narrow_pieces()
    page = plan.car
    assert page is not None
    codes = {code for piece in plan.yard[0].patterns[0].pieces for code in piece.codes}
    assert {piece.code for piece in page.pieces} == codes - {"WASTE"}
    for piece in page.pieces:
        # 685 kg/m3 for 18 mm birch, from a maker's datasheet
        mass = piece.length / 1e9 * piece.width / 1e9 * 0.018 * 685
        assert abs(float(piece.mass) - mass) <= 0.05 + 1e-9
        assert piece.people == (2 if mass > 20 else 1)


def test_flat_pieces_go_in_first_the_largest_at_the_bottom() -> None:
    page = narrow_pieces()[2].car
    assert page is not None
    flat = [piece for piece in page.pieces if piece.lie.startswith("flat")]
    assert list(page.pieces[: len(flat)]) == flat
    areas = [piece.length * piece.width for piece in flat]
    assert areas == sorted(areas, reverse=True)
    assert [piece.number for piece in page.pieces] == list(range(1, len(page.pieces) + 1))


def test_the_check_names_the_room_that_a_piece_passes() -> None:
    page = half_sheets()[2].car
    assert page is not None
    for piece in page.pieces:
        assert "of 1600 along" in piece.check  # 1620 less 10 at both ends
    assert page.opening == "opening 1080 × 760 mm, wide × high"
    assert page.clearance == "10 mm kept free on every side of a piece"


def test_more_than_goes_in_at_once_makes_trips() -> None:
    low = Car(
        opening_width=mm(1300),
        opening_height=mm(70),
        floor_length=mm(1300),
        arch_width=mm(1300),
        clearance=mm(5),
    )
    half = replace(BIRCH, length=mm(1220), width=mm(1220))
    # 60 high takes three sheets of 18, not four.
    page = page_of(with_car(part("Board", 1190, 1190, 4), car=low, sheets=(half,)))
    assert [piece.load for piece in page.pieces] == [1, 1, 1, 2]
    assert page.total == "4 pieces, 73.4 kg in all, 2 trips"


def test_sheets_that_stay_outside_are_told() -> None:
    page = page_of(with_car(yard=None))
    assert page.pieces == ()
    assert page.does_not_fit == ("birch 18, 2440 × 1220 mm, does not go in: have it delivered.",)


def test_what_is_at_home_is_not_driven() -> None:
    owned = replace(BIRCH, price=Decimal(0), owned=True, count=1)
    job = with_car(sheets=(owned,), car=ESTATE)
    assert make_plan(job, solve_with_yard(job, effort=0)).car is None


def test_the_law_and_the_manuals_decide_what_sticks_out() -> None:
    page = half_sheets()[2].car
    assert page is not None
    assert any("local traffic law" in note for note in page.notes)
    assert any("until the tailgate is shut" in note for note in page.notes)
    assert not any("safe" in note for note in page.notes)
