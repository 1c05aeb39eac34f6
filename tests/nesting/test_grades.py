"""Grades: what is hidden may come from cheaper stock, what shows never does."""

from dataclasses import replace
from decimal import Decimal
from functools import partial

from nesting.cabinets.boards import measure_boards
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import BoxDesign, Braces
from nesting.cabinets.expand import expand
from nesting.grades import Cheaper, find_cheaper, list_swaps, swap_materials
from nesting.job import Job
from nesting.lengths import Unit, mm
from nesting.solve import solve_cheapest
from tests.nesting.cabinets.designs import design
from tests.nesting.hand_made import BIRCH, job, part

POPLAR = replace(
    BIRCH,
    name="poplar 18",
    material="poplar plywood",
    measured=(mm("18.2"),),
    price=Decimal("30.00"),
)
CLOSED = design(
    baffle=Closing(fit=Fit.INSET, wrapped=False, held_by="glue"),
    back=Closing(fit=Fit.INSET, wrapped=True, held_by="glue"),
    braces=Braces(depth=mm(100)),
)
COVERED = replace(CLOSED, covering=Covering(thickness=mm(1)))


def box_job(wanted: BoxDesign) -> Job:
    sheets = (BIRCH, POPLAR)
    build = expand(
        wanted,
        letters=("A",),
        measured=measure_boards(sheets),
        step=mm("0.1"),
        unit=Unit.MM,
    )
    return replace(job(sheets=sheets), step=mm("0.1"), parts=build.parts, cabinets=(build,))


def find(of: Job) -> tuple[Cheaper, ...]:
    search = partial(solve_cheapest, effort=0, seed=1)
    return find_cheaper(of, search(of), first_look=search, solve=search)


def test_only_what_shows_nowhere_may_be_swapped() -> None:
    """Bare, the carcass shows and the brace alone is hidden; covered, all but the baffle is."""
    unwrapped = Closing(fit=Fit.INSET, wrapped=False, held_by="glue")
    plain = replace(CLOSED, back=unwrapped)
    bare = {swap.what: swap.parts for swap in list_swaps(box_job(plain))}
    assert bare == {"braces": ("Brace",)}
    covered = {swap.what: swap.parts for swap in list_swaps(box_job(COVERED))}
    assert covered == {
        "carcass": ("Side", "Top or bottom"),
        "back": ("Back",),
        "braces": ("Brace",),
    }


def test_a_cheaper_purchase_is_found_and_no_show_part_is_of_low_grade() -> None:
    """Acceptance: mixed-grade purchase offered when cheaper; no show part on low grade."""
    wanted = box_job(replace(COVERED, height=mm(1000), width=mm(900)))
    found = find(wanted)
    assert found
    assert [each.cost for each in found] == sorted((each.cost for each in found), reverse=True)
    for each in found:
        assert each.cost < each.cost_before == 2 * BIRCH.price
        changed = swap_materials(wanted, each.swaps)
        assert changed is not None
        low = [made for made in changed.parts if made.material == POPLAR.material]
        assert low
        assert all(made.is_hidden for made in low)


def test_swapped_parts_are_worked_out_anew_from_the_other_thickness() -> None:
    """Sides of 18.2 instead of 17.7: a brace between them is 1 mm shorter."""
    wanted = box_job(COVERED)
    (carcass,) = [swap for swap in list_swaps(wanted) if swap.what == "carcass"]
    changed = swap_materials(wanted, [carcass])
    assert changed is not None
    lengths = [
        next(made.length for made in each.parts if made.name == "Brace")
        for each in (wanted, changed)
    ]
    assert lengths[0] - lengths[1] == mm(1)
    brace = next(made for made in changed.parts if made.name == "Brace")
    assert brace.material == BIRCH.material


def test_a_plain_part_is_swapped_where_it_is_said_to_be_hidden() -> None:
    shelf = part("Shelf", 1200, 600, 4)
    hidden = replace(shelf, name="Plinth", is_hidden=True)
    wanted = job(shelf, hidden, sheets=(BIRCH, POPLAR))
    (cheaper,) = find(wanted)
    assert [(swap.of, swap.material) for swap in cheaper.swaps] == [("Plinth", "poplar plywood")]
    assert (cheaper.cost_before, cheaper.cost) == (Decimal("124.00"), Decimal("92.00"))


def test_dearer_stock_is_not_offered() -> None:
    shelf = replace(part("Shelf", 1200, 600, 4), is_hidden=True)
    dear = replace(POPLAR, price=Decimal(90))
    assert find(job(shelf, sheets=(BIRCH, dear))) == ()
