"""Test pieces from what a plan leaves over."""

from dataclasses import replace

from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, Node, PartLeaf, RestLeaf, SheetLayout
from nesting.lengths import mm
from nesting.sheets import Trim
from plans.sections.coupons import Coupon, make_coupons
from tests.nesting.hand_made import BIRCH, job, part
from tests.plans.sections.helpers import worked_out

KERF = mm("2.4")


def with_rest(length: str, width: str, *, is_offcut: bool = False) -> tuple[Job, Layout]:
    """Return a sheet of one part, with one leftover of the size given beside it."""
    sheet = replace(
        BIRCH, length=mm(500) + KERF + mm(length), width=mm(width), trim=Trim(), measured=()
    )
    made = job(part("Panel", 500, width), sheets=[sheet])
    root: Node = Cut(
        direction=Direction.CROSSCUT,
        at=mm(500),
        removed=KERF,
        first=PartLeaf(part=0, copy=0),
        second=RestLeaf(is_offcut=is_offcut),
    )
    return made, Layout(sheets=(SheetLayout(sheet=0, root=root),))


def test_waste_of_just_the_size_gives_a_test_piece_either_way_round() -> None:
    expected = Coupon(
        mark="TEST S1",
        sheet="1",
        stock="birch 18",
        size="250 × 80",
        source="waste",
        source_size="80 × 250",
        cut="1",
    )
    assert make_coupons(worked_out(*with_rest("80", "250"))) == (expected,)
    assert make_coupons(worked_out(*with_rest("250", "80"))) == (
        replace(expected, source_size="250 × 80"),
    )


def test_waste_that_is_too_small_gives_none() -> None:
    assert make_coupons(worked_out(*with_rest("79.9", "250"))) == ()
    assert make_coupons(worked_out(*with_rest("80", "249.9"))) == ()


def test_without_waste_the_offcut_is_named() -> None:
    (coupon,) = make_coupons(worked_out(*with_rest("400", "300", is_offcut=True)))
    assert (coupon.source, coupon.source_size) == ("L1", "400 × 300")


def test_raw_edges_do_not_count() -> None:
    made, layout = with_rest("80", "250")
    raw = replace(made.sheets[0], trim=Trim(right=mm(1)))
    assert make_coupons(worked_out(replace(made, sheets=(raw,)), layout)) == ()
