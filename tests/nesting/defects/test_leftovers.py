from nesting.defects.leftovers import make_leftover, mark_leftovers
from nesting.layout import Cut, Direction, Rect, RestLeaf, walk
from nesting.lengths import mm
from nesting.saw import Keep
from nesting.search.realise import trim_home_edges
from tests.nesting.defects.defect_jobs import KNOT, unsound

KEEP = Keep()
KERF = mm("2.4")


def test_a_leftover_is_cut_beside_a_defect_where_the_rest_is_worth_keeping() -> None:
    sheet = unsound(KNOT)
    node = make_leftover(
        Rect(x=mm(500), y=mm(200), length=mm(1500), width=mm(300)), sheet, KEEP, KERF
    )
    assert isinstance(node, Cut)
    # The knot ends at 680: from there to the end of the leftover all is sound.
    assert (node.direction, node.at) == (Direction.CROSSCUT, mm(180) - KERF)
    assert node.second == RestLeaf(is_offcut=True)


def test_a_small_leftover_with_a_defect_is_waste() -> None:
    rect = Rect(x=mm(550), y=mm(250), length=mm(320), width=mm(150))
    assert make_leftover(rect, unsound(KNOT), KEEP, KERF) == RestLeaf()


def test_a_sheet_with_raw_edges_is_not_cut_for_an_offcut() -> None:
    assert mark_leftovers(RestLeaf(is_offcut=True), unsound(KNOT), KEEP, KERF) == RestLeaf()


def test_no_offcut_of_a_trimmed_sheet_has_a_defect() -> None:
    sheet = unsound(KNOT)
    trimmed = trim_home_edges(sheet, RestLeaf(is_offcut=True), KERF)
    root = mark_leftovers(trimmed, sheet, KEEP, KERF)
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    offcuts = [
        place.rect
        for place in walk(root, whole)
        if isinstance(place.node, RestLeaf) and place.node.is_offcut
    ]
    assert offcuts
    for rect in offcuts:
        assert (
            rect.x + rect.length <= KNOT.x
            or KNOT.x + KNOT.length <= rect.x
            or rect.y + rect.width <= KNOT.y
            or KNOT.y + KNOT.width <= rect.y
        )
