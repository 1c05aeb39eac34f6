"""Strips: parts one behind the other from one piece, in the layout that the search finds."""

from dataclasses import replace
from itertools import pairwise

import pytest

from nesting.cabinets.boards import measure_boards
from nesting.cabinets.design import BoxDesign, GrainRound
from nesting.cabinets.expand import expand
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.space import Axis
from nesting.checks import check_layout
from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.layout import By, Cut, Layout, PartLeaf, Rect, walk
from nesting.lengths import Unit, mm
from nesting.saw import Face, Saw
from nesting.sheets import Sheet, SheetGrain
from nesting.solve import solve
from nesting.yard import Yard
from tests.nesting.cabinets.designs import design
from tests.nesting.hand_made import BIRCH, job

KERF = mm("2.4")
ROUND = ["Bottom", "Side, left", "Top", "Side, right"]
ACROSS = replace(BIRCH, grain=SheetGrain.WIDTH, length=mm(1220), width=mm(2440))


def box_job(wanted: BoxDesign, *sheets: Sheet, letters: str = "A") -> Job:
    build = expand(
        replace(wanted, count=len(letters)),
        letters=tuple(letters),
        measured=measure_boards(sheets),
        step=mm("0.5"),
        unit=Unit.MM,
        kerf=KERF,
    )
    return replace(job(sheets=sheets), parts=build.parts, cabinets=(build,))


def list_places(of: Job, layout: Layout) -> list[tuple[str, str, int, Rect]]:
    """Return cabinet, name, number of the sheet and place of every part."""
    return [
        (part.cabinet, part.name, number, place.rect)
        for number, sheet in enumerate(layout.sheets)
        for place in walk(
            sheet.root,
            Rect(
                x=0,
                y=0,
                length=of.sheets[sheet.sheet].length,
                width=of.sheets[sheet.sheet].width,
            ),
        )
        if isinstance(place.node, PartLeaf)
        for part in [of.parts[place.node.part]]
    ]


def list_remarks(layout: Layout) -> list[str]:
    nowhere = Rect(x=0, y=0, length=0, width=0)
    return [
        place.node.remark
        for sheet in layout.sheets
        for place in walk(sheet.root, nowhere)
        if isinstance(place.node, Cut) and place.node.remark
    ]


@pytest.mark.parametrize("joint", [JointKind.BUTT, JointKind.MITRE])
@pytest.mark.parametrize("sheet", [BIRCH, ACROSS])
def test_the_parts_of_a_loop_lie_in_order_with_a_kerf_between_them(
    joint: JointKind, sheet: Sheet
) -> None:
    """Acceptance: in order in one strip with kerf only between, whichever way the grain lies."""
    wanted = design(grain_round=GrainRound.ALL, joint=Joint(kind=joint))
    made = box_job(wanted, sheet, letters="AB")
    layout = solve(made, effort=1).layout
    assert check_layout(made, layout) == ()
    places = list_places(made, layout)
    for letter in "AB":
        strip = [place for place in places if place[0] == letter and place[1] in ROUND]
        assert [name for _, name, _, _ in strip] == ROUND
        for (_, _, first, one), (_, _, second, other) in pairwise(strip):
            assert first == second
            if sheet is BIRCH:
                assert (other.x, other.y) == (one.x + one.length + KERF, one.y)
            else:
                assert (other.x, other.y) == (one.x, one.y + one.width + KERF)


def test_a_mitred_loop_is_cut_to_the_long_point() -> None:
    """Acceptance: mitred loops keep the long-point rule: outside size and what an end has spare."""
    wanted = design(
        grain_round=GrainRound.ALL, joint=Joint(kind=JointKind.MITRE), bevel_allowance=mm(2)
    )
    made = box_job(wanted, BIRCH)
    lengths = [
        rect.length
        for _, name, _, rect in list_places(made, solve(made, effort=0).layout)
        if name in ROUND
    ]
    assert lengths == [wanted.width + mm(4), wanted.height + mm(4)] * 2


def test_what_the_front_edge_is_as_drawn_follows_from_the_face_and_the_grain() -> None:
    """Unrolled to the right, outside up, the front edge is the lower one; from behind the upper."""
    wanted = design(grain_round=GrainRound.OVER_TOP)
    for sheet, face, edge in (
        (BIRCH, Face.BACK, "top"),
        (BIRCH, Face.FRONT, "bottom"),
        (ACROSS, Face.BACK, "right"),
        (ACROSS, Face.FRONT, "right"),
    ):
        made = replace(box_job(wanted, sheet), saw=Saw(marked_face=face))
        (remark,) = list_remarks(solve(made, effort=0).layout)
        assert remark.endswith(f"the front edge of all is the {edge} edge as drawn")


def test_a_loop_too_long_for_the_sheets_is_named_with_what_to_do() -> None:
    made = box_job(design(height=mm(900), grain_round=GrainRound.ALL), BIRCH)
    gaps = solve(made, effort=0).layout.unplaced
    assert [made.parts[gap.part].name for gap in gaps] == [
        "Side, left", "Side, right", "Top", "Bottom",
    ]  # fmt: skip
    # 2 * 900 + 2 * 464.5 of top and bottom between the sides, and three kerfs.
    assert gaps[0].reason == (
        "grain round, 4 parts in one strip: 2736.2 mm × 350 mm is 316.2 mm too long for the usable "
        "2420 mm of 'birch 18'; with the same trims it needs a sheet of at least 2756.2 mm × "
        '1220 mm. Write grain_round = "over the top", which leaves the bottom out, or take it out.'
    )
    assert {gap.reason for gap in gaps[1:]} == {"grain round, in one strip with Side, left"}
    over = box_job(design(height=mm(900), grain_round=GrainRound.OVER_TOP), BIRCH)
    assert solve(over, effort=0).layout.unplaced == ()


def test_a_mirrored_pair_with_a_joint_across_comes_from_one_blank() -> None:
    """Acceptance: a blank of 2w + kerf; the halves lie side by side, ends level."""
    wanted = design(joint=Joint(kind=JointKind.REBATE), joint_first=True)
    made = box_job(wanted, BIRCH)
    layout = solve(made, effort=0).layout
    assert check_layout(made, layout) == ()
    first, second = (rect for _, name, _, rect in list_places(made, layout) if name == "Side")
    assert (second.x, second.length) == (first.x, first.length)
    assert second.y == first.y + first.width + KERF
    assert list_remarks(layout) == [
        "STOP: make the grooves and rebates across this piece first, then rip it"
    ]


def test_the_halves_of_a_wide_blank_have_their_joints_at_the_same_heights() -> None:
    """Acceptance: both halves' features equal to 0."""
    wanted = design(joint=Joint(kind=JointKind.REBATE), joint_first=True)
    (build,) = box_job(wanted, BIRCH).cabinets
    heights = [
        [(cut.box.low[Axis.HEIGHT.index], cut.box.high[Axis.HEIGHT.index]) for cut in panel.cuts]
        for panel in build.panels
        if panel.name in ("left side", "right side")
    ]
    assert heights[0] == heights[1] != []


def test_the_yard_cuts_through_no_strip() -> None:
    made = replace(
        box_job(design(height=mm(400), grain_round=GrainRound.OVER_TOP), BIRCH, letters="AB"),
        yard=Yard(),
    )
    layout = solve_with_yard(made, effort=0).layout
    assert check_layout(made, layout) == ()
    nowhere = Rect(x=0, y=0, length=0, width=0)
    assert any(
        isinstance(place.node, Cut) and place.node.by is By.YARD
        for sheet in layout.sheets
        for place in walk(sheet.root, nowhere)
    )
    assert len(list_remarks(layout)) == 2


def test_a_part_measured_anew_leaves_its_strip() -> None:
    made = box_job(design(grain_round=GrainRound.OVER_TOP), BIRCH)
    parts = tuple(
        replace(part, width=part.width - mm(1)) if part.name == "Top" else part
        for part in made.parts
    )
    layout = solve(replace(made, parts=parts), effort=0).layout
    assert check_layout(replace(made, parts=parts), layout) == ()
    assert layout.unplaced == ()
