from dataclasses import replace

import pytest
from shapely import box, union_all

from nesting.checks import check_layout
from nesting.defects.leftovers import mark_leftovers
from nesting.defects.ways_round import WayRound, list_ways_round
from nesting.layout import Layout, SheetLayout
from nesting.lengths import Length, mm
from nesting.saw import Saw
from nesting.sheets import Defect, Sheet, Trim
from tests.nesting.defects.defect_jobs import KNOT, unsound
from tests.nesting.hand_made import job

KERF = mm("2.4")
CORNER = Defect(x=mm(2370), y=mm(1160), length=mm(70), width=mm(60))
SECOND = replace(KNOT, x=mm(1700), y=mm(800))


def areas(way: WayRound) -> list[Length]:
    return sorted((piece.rect.length * piece.rect.width for piece in way.pieces), reverse=True)


@pytest.mark.parametrize("defects", [(KNOT,), (CORNER,), (KNOT, SECOND), (KNOT, CORNER, SECOND)])
def test_pieces_are_sound_and_apart_and_leave_little(defects: tuple[Defect, ...]) -> None:
    sheet = unsound(*defects)
    spoilt = union_all(
        [box(each.x, each.y, each.x + each.length, each.y + each.width) for each in defects]
    )
    for way in list_ways_round(sheet, defects, KERF):
        rects = [piece.rect for piece in way.pieces]
        shapes = [box(r.x, r.y, r.x + r.length, r.y + r.width) for r in rects]
        assert all(shape.intersection(spoilt).area == 0 for shape in shapes)
        assert union_all(shapes).area == pytest.approx(sum(shape.area for shape in shapes))
        # Beside the defects only kerfs and trims are lost: some 4 x 2440 x 2.4 mm a defect.
        lost = sheet.length * sheet.width - union_all(shapes).area - spoilt.area
        assert lost < 0.06 * sheet.length * sheet.width


def test_round_one_defect_either_side_may_keep_the_long_piece() -> None:
    ways = list_ways_round(unsound(KNOT), (KNOT,), KERF)
    sizes = {max((p.rect.length, p.rect.width) for p in way.pieces) for way in ways}
    full_length, full_width = mm(2430), mm(1210)
    assert any(length == full_length for length, _ in sizes)
    assert any(width == full_width for _, width in sizes)
    assert len(ways) > 4


def test_a_crushed_corner_costs_one_cut_beside_the_trims() -> None:
    best = list_ways_round(unsound(CORNER), (CORNER,), KERF)[0]
    assert len(best.pieces) == 2
    assert areas(best)[0] > mm(2430) * mm(1140)


def test_a_sheet_without_trims_is_taken_apart_too() -> None:
    sheet: Sheet = replace(unsound(KNOT), trim=Trim())
    assert list_ways_round(sheet, (KNOT,), KERF)[0].pieces[0].trim == Trim()


NAIL = replace(KNOT, length=mm(2), width=mm(2))


@pytest.mark.parametrize(
    "defects",
    [
        (replace(NAIL, x=mm(2438)),),
        (replace(NAIL, y=mm(1218)),),
        (replace(NAIL, x=mm(2438), y=mm(1218)), NAIL),
        # The cuts round the first leave a hair of the second at the edge of a piece.
        (KNOT, replace(KNOT, x=mm(679), y=mm(700)), replace(KNOT, x=mm(521), y=mm(900))),
        (replace(NAIL, x=mm(1200)), replace(KNOT, x=mm(1201), y=mm(700))),
    ],
)
@pytest.mark.parametrize("kerf", [0, mm("2.4"), mm(3)])
def test_cuts_beside_slender_defects_can_be_made(defects: tuple[Defect, ...], kerf: Length) -> None:
    sheet = replace(unsound(*defects), trim=Trim())
    made = job(sheets=[sheet], saw=Saw(kerf=kerf))
    for way in list_ways_round(sheet, defects, kerf):
        root = mark_leftovers(way.root, sheet, made.keep, kerf)
        assert not check_layout(made, Layout(sheets=(SheetLayout(sheet=0, root=root),)))
