"""The shopping list, and how near to the cheapest the plan is."""

from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.cabinets.build import CabinetBuild
from nesting.layout import Layout, Unplaced
from nesting.lengths import Unit, mm
from nesting.parts import Batten
from nesting.sheets import Sheet, SheetGrain
from plans.sections.bound import Bound, say_bound
from plans.sections.shopping import make_shopping
from plans.sections.worked import Worked
from tests.nesting.hand_made import BIRCH, two_cabinets
from tests.plans.sections.helpers import worked_out


def worked(sheet: Sheet = BIRCH, copies: int = 1, unplaced: int = 0) -> Worked:
    made, layout = two_cabinets()
    double = tuple(replace(kind, count=kind.count * copies) for kind in made.parts)
    gaps = (Unplaced(part=0, count=unplaced, reason="too long"),) if unplaced else ()
    return worked_out(
        replace(made, parts=double, sheets=(sheet,)),
        Layout(sheets=layout.sheets * copies, unplaced=gaps),
    )


def test_a_line_of_sheets() -> None:
    shopping = make_shopping(worked(copies=2), Bound())
    line = shopping.sheets[0]
    assert (line.count, line.stock, line.each, line.total) == (2, "birch 18", "62.00", "124.00")
    assert (line.material, line.size) == ("birch plywood 18 mm", "2440 × 1220 mm")
    assert (line.mass, line.grain_text) == ("36.7", "GRAIN RUNS ALONG THE 2440")
    assert shopping.cost == "124.00"


def test_owned_sheets_cost_nothing_and_stand_last() -> None:
    made = worked()
    owned = replace(BIRCH, name="old birch", owned=True, price=Decimal(0))
    both = worked_out(
        replace(made.job, sheets=(owned, BIRCH), parts=worked(copies=2).job.parts),
        Layout(sheets=(made.layout.sheets[0], replace(made.layout.sheets[0], sheet=1))),
    )
    lines = make_shopping(both, Bound()).sheets
    assert [(line.stock, line.each, line.total) for line in lines] == [
        ("birch 18", "62.00", "62.00"),
        ("old birch", "owned", ""),
    ]


def test_a_square_sheet_cannot_give_its_grain_by_a_number() -> None:
    square = replace(BIRCH, length=mm(2440), width=mm(2440), grain=SheetGrain.WIDTH)
    line = make_shopping(worked(square), Bound()).sheets[0]
    assert line.grain_text == "GRAIN: look which 2440 it runs along, and mark it"


@pytest.mark.parametrize(
    ("bound", "sentence"),
    [
        (Bound(cost=Decimal(124)), "Proven cheapest: no plan can cost less than 124.00."),
        (
            Bound(cost=Decimal(62), sheets=1),
            (
                "At most 1 sheet above the bound: no plan can cost less than 62.00 or use fewer "
                "than 1 sheet."
            ),
        ),
        (
            Bound(cost=Decimal("100.009"), sheets=2),
            "At most 23.99 above the bound: no plan can cost less than 100.00.",
        ),
    ],
)
def test_the_bound_is_stated(bound: Bound, sentence: str) -> None:
    assert say_bound(worked(copies=2), bound) == sentence
    assert make_shopping(worked(copies=2), bound).bound_text == sentence


def test_the_bound_of_owned_and_of_unpriced_sheets() -> None:
    owned = replace(BIRCH, owned=True, price=Decimal(0))
    assert say_bound(worked(owned, copies=2), Bound(sheets=2)) == (
        "Nothing has to be bought; no plan can use fewer than 2 sheets."
    )
    unpriced = replace(BIRCH, price=Decimal(0))
    assert say_bound(worked(unpriced, copies=3), Bound(sheets=2)) == (
        "The sheets bear no price; at most 1 sheet above the bound: no plan can use fewer than "
        "2 sheets."
    )
    assert say_bound(worked(unpriced), Bound()) == "The sheets bear no price."


def test_the_bound_of_an_incomplete_plan_speaks_of_the_parts_placed() -> None:
    assert say_bound(worked(unplaced=1), Bound(cost=Decimal(62))) == (
        "Proven cheapest: no plan for the parts placed can cost less than 62.00."
    )


def test_the_bound_where_nothing_is_placed() -> None:
    made, _ = two_cabinets()
    gap = Unplaced(part=0, count=4, reason="too long")
    nothing = worked_out(made, Layout(sheets=(), unplaced=(gap,)))
    assert say_bound(nothing, Bound()) == "No sheet is used."


def test_battens_are_listed_by_section_with_their_lengths() -> None:
    made, layout = two_cabinets()
    battens = (
        Batten(name="rear frame, long", length=mm(464), section=(mm(18), mm(18)), count=2),
        Batten(name="rear frame, short", length=mm(300), section=(mm(18), mm(18)), cabinet="A"),
    )
    build = CabinetBuild(
        name="Box",
        letters=("A",),
        outside=(mm(500), mm(400), mm(300)),
        parts=(),
        battens=battens,
    )
    lines = make_shopping(worked_out(replace(made, cabinets=(build,)), layout), Bound()).others
    assert [(line.amount, line.purpose) for line in lines] == [
        ("1228 mm", "2 × 464: rear frame, long (2); 1 × 300: rear frame, short (1 in A)")
    ]
    assert "18 × 18 mm" in lines[0].what


def test_the_card_speaks_one_unit() -> None:
    made, layout = two_cabinets()
    assert any("50 mm" in line for line in make_shopping(worked(), Bound()).card)
    inches = worked_out(replace(made, unit=Unit.INCH), layout)
    assert not any("mm" in line.split() for line in make_shopping(inches, Bound()).card)


def test_the_card_asks_for_all_that_goes_wrong_in_the_shop() -> None:
    text = " ".join(make_shopping(worked(), Bound()).card).lower()
    for word in ("thickness", "diagonals", "flat", "edges", "both faces", "corners", "same stack"):
        assert word in text
