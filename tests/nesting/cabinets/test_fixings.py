"""The fixing map: common practice, no source, but for the rule on lengths."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings

from nesting.cabinets.bodies import meet
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Battens, BoxDesign, Braces
from nesting.cabinets.families import Design
from nesting.cabinets.fittings import CarcassScrews, Screws
from nesting.cabinets.fixing_joints import list_solids
from nesting.cabinets.fixings import FAR_FACE, FixingRow, map_fixings
from nesting.cabinets.goods import find_glued
from nesting.cabinets.hole_places import PlacedHole, is_sloped, place_holes
from nesting.cabinets.holes import Hole, HoleKind
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.keep_outs import find_keep_outs
from nesting.cabinets.wedge import lay_out_wedge
from nesting.errors import InputError
from nesting.lengths import Length, Unit, mm
from tests.nesting.cabinets.designs import THICKNESSES, box_designs, design, lay_out
from tests.nesting.cabinets.fit_samples import FRAMED, place, woofer
from tests.nesting.cabinets.generated import DESIGNS, lay_out_or_skip
from tests.nesting.cabinets.test_wedge import WEDGE

ROUNDED = Screws(round_over=mm(12))


def rows_of(
    wanted: BoxDesign, screws: Screws = ROUNDED, holes: tuple[PlacedHole, ...] = ()
) -> tuple[FixingRow, ...]:
    return map_fixings("Stage box", lay_out(wanted), holes, screws, Unit.MM)[0]


def test_battens_and_closings_get_their_screws() -> None:
    rows = rows_of(FRAMED)
    assert [row.joint for row in rows[:4]] == [
        "front frame, bottom to bottom",
        "front frame, top to top",
        "front frame, left to left side",
        "front frame, right to right side",
    ]
    assert {row.through for row in rows[8:]} == {"baffle", "back"}


def test_screws_never_reach_the_far_face() -> None:
    """Acceptance: length < stack - 3 mm. A screw through a baffle or back never comes out."""
    for row in rows_of(FRAMED):
        assert row.length < row.stack - FAR_FACE
        assert {row.stack} <= {mm("37.7"), mm("47.7")}


@pytest.mark.parametrize(("length", "comes_near"), [("34.6", False), ("34.7", True)])
def test_a_screw_that_would_come_through_is_refused(length: str, comes_near: bool) -> None:  # noqa: FBT001
    """20 mm batten on 17.7 mm: less than 34.7 mm."""
    screws = replace(ROUNDED, battens=mm(length))
    if not comes_near:
        assert mm(length) in {row.length for row in rows_of(FRAMED, screws)}
        return
    with pytest.raises(InputError) as error:
        rows_of(FRAMED, screws)
    assert str(error.value).startswith(
        "cabinet 'Stage box', screws: 34.7 mm through the front frame, bottom into the bottom "
        "comes too near the far face: together they are 37.7 mm.\n"
        "Take screws shorter than 34.7 mm."
    )


def test_positions_are_measured_from_one_end_and_keep_from_both() -> None:
    row = rows_of(FRAMED)[0]
    assert row.end == "left"
    assert row.positions == (mm(50), mm(200), mm(350))
    assert row.positions == tuple(sorted(row.positions))


def check_bands(
    rows: tuple[FixingRow, ...], wanted: BoxDesign, holes: tuple[PlacedHole, ...], thickness: Length
) -> None:
    """No screw in a band, and none in another's way."""
    bands = find_keep_outs(lay_out(wanted, thickness), holes, ROUNDED.round_over)
    rods = [rod for row in rows for rod in row.rods]
    for rod in rods:
        assert not any(meet(rod, band, ROUNDED.margin) for _, band in bands)
    for number, rod in enumerate(rods):
        assert not any(meet(other, rod, ROUNDED.margin) for other in rods[:number])


def test_no_screw_stands_in_the_path_of_the_cutter() -> None:
    """Acceptance: no fixing in a band. The hole lies where a batten's screw would go."""
    port = Hole(
        name="port",
        kind=HoleKind.PORT,
        panel="left side",
        cut_out=mm(60),
        places=(("front", mm(42)), ("bottom", mm("217.7"))),
    )
    holes = place(FRAMED, port)
    check_bands(rows_of(FRAMED, holes=holes), FRAMED, holes, mm("17.7"))
    joint = "front frame, left to left side"
    without = {row.joint: row.positions for row in rows_of(FRAMED)}
    with_hole = {row.joint: row.positions for row in rows_of(FRAMED, holes=holes)}
    assert mm(200) in without[joint]
    assert with_hole[joint] != without[joint]
    assert (
        with_hole["front frame, right to right side"] == without["front frame, right to right side"]
    )


@pytest.mark.property
@settings(max_examples=40, deadline=None)
@given(box_designs(), THICKNESSES)
def test_no_screw_of_any_box_stands_in_a_band_or_comes_through(
    wanted: BoxDesign, thickness: Length
) -> None:
    laid = lay_out(wanted, thickness)
    rows, _ = map_fixings("Box", laid, (), ROUNDED, Unit.MM)
    check_bands(rows, wanted, (), thickness)
    solids = dict(list_solids(laid))
    for row in rows:
        for rod in row.rods:
            through, into = solids[row.through], solids[row.into]
            low = min(through.low[rod.axis.index], into.low[rod.axis.index])
            high = max(through.high[rod.axis.index], into.high[rod.axis.index])
            assert low <= rod.interval[0]
            assert rod.interval[1] <= high


def test_taking_a_brace_out_removes_its_screws() -> None:
    """Acceptance: deleting a brace removes its battens and screws."""
    braced = replace(FRAMED, braces=Braces(depth=mm(100)))
    with_brace, without = rows_of(braced), rows_of(FRAMED)
    gone = {row.joint for row in with_brace} - {row.joint for row in without}
    assert gone == {"left side to brace 1", "right side to brace 1"}
    difference = find_glued(lay_out(braced)) - find_glued(lay_out(FRAMED))
    assert difference == 2 * mm(100)


def test_a_rounded_edge_says_that_clamping_screws_come_out_first() -> None:
    """Common practice, no source."""
    _, notes = map_fixings("Box", lay_out(FRAMED), (), ROUNDED, Unit.MM)
    assert notes[-1].endswith("come out before its edges are rounded over.")
    assert not map_fixings("Box", lay_out(FRAMED), (), Screws(), Unit.MM)[1]


def test_screws_that_find_no_room_are_left_out_and_told_once_a_joint() -> None:
    slot = Hole(
        name="slot",
        kind=HoleKind.PORT,
        panel="baffle",
        window=(mm("464.6"), mm(60)),
        places=(("bottom", mm(30)),),
    )
    holes = place(FRAMED, slot)
    rows, notes = map_fixings("Box", lay_out(FRAMED), holes, Screws(), Unit.MM)
    assert "baffle to front frame, bottom" not in {row.joint for row in rows}
    (note,) = notes
    assert note == (
        "The joint baffle to front frame, bottom has no room for 3 of its 3 screws clear of "
        "cutters and other screws: glue it there."
    )


def test_battens_too_thin_for_a_screw_are_glued() -> None:
    thin = replace(FRAMED, battens=Battens(section=(mm(7), mm(7)), front=True, rear=True))
    rows, notes = map_fixings("Box", lay_out(thin), (), Screws(), Unit.MM)
    assert not rows
    assert notes[0] == (
        "The joint front frame, bottom to bottom is too narrow for screws: glue it."
    )


def test_the_glued_length_of_a_bare_carcass_is_that_of_its_joints() -> None:
    """Four joints along the depth; an inset baffle and back are not glued, planted ones are."""
    assert find_glued(lay_out(design())) == 4 * mm(350)
    planted = design(baffle=Closing(fit=Fit.PLANTED), back=Closing(fit=Fit.NONE))
    depth = mm(350) - mm("17.7")
    round_about = 2 * mm(600) + 2 * mm("464.6")
    assert find_glued(lay_out(planted)) == 4 * depth + round_about


BUTTED = design(baffle=Closing(fit=Fit.PLANTED), back=Closing(fit=Fit.NONE))


def carcass_rows(screws: Screws, wanted: BoxDesign = BUTTED) -> list[FixingRow]:
    return [row for row in rows_of(wanted, screws) if row.kind == "carcass"]


def test_a_carcass_that_is_glued_and_clamped_gets_no_screws() -> None:
    assert not carcass_rows(Screws())


def test_screws_of_a_butt_joint_go_through_the_panel_that_runs_through() -> None:
    """Through the middle of the edge of the panel that stands between, 17.7 / 2 from outside."""
    rows = carcass_rows(Screws(carcass=CarcassScrews.UNTIL_DRY))
    corners = [row for row in rows if row.through.endswith("side")]
    assert [row.joint for row in corners] == [
        f"{side} to {other}" for side in ("left side", "right side") for other in ("top", "bottom")
    ]
    assert {row.middle for row in corners} == {mm("8.85")}
    assert {row.length for row in corners} == {mm(50)}
    assert {row.joint for row in rows} - {row.joint for row in corners} == {
        f"baffle to {name}" for name in ("left side", "right side", "top", "bottom")
    }


def test_screws_that_stay_keep_clear_of_the_round_over_and_those_that_come_out_need_not() -> None:
    """A radius of 6 and a margin of 5 reach 11 mm in; the screw begins 6.85 mm in."""
    rounded = Screws(carcass=CarcassScrews.STAY, round_over=mm(6))
    assert not carcass_rows(rounded)
    rows, notes = map_fixings("Box", lay_out(BUTTED), (), rounded, Unit.MM)
    assert not rows
    assert sum("glue it there" in note for note in notes) == 8
    assert len(carcass_rows(replace(rounded, carcass=CarcassScrews.UNTIL_DRY))) == 8
    assert len(carcass_rows(replace(rounded, round_over=mm(1)))) == 8


def test_joints_that_are_no_butts_are_said_to_get_no_screws() -> None:
    wanted = replace(BUTTED, joint=Joint(kind=JointKind.MITRE), baffle=Closing(fit=Fit.NONE))
    screws = Screws(carcass=CarcassScrews.STAY)
    rows, notes = map_fixings("Box", lay_out(wanted), (), screws, Unit.MM)
    assert not rows
    assert notes == (
        "The corners of the carcass are mitre joints: they get no screws. Glue and clamp them.",
    )


def test_a_joint_too_thin_for_the_shortest_usual_screw_is_glued() -> None:
    """10 mm batten on 9 mm: 16 mm is not less than 19 - 3."""
    battens = Battens(section=(mm(10), mm(30)), front=True)
    wanted = replace(FRAMED, battens=battens)
    rows, notes = map_fixings("Box", lay_out(wanted, mm(9)), (), Screws(), Unit.MM)
    assert "battens" not in {row.kind for row in rows}
    assert notes[0] == "The joint front frame, bottom to bottom is too thin for screws: glue it."


def test_battens_along_a_slope_and_the_baffle_on_them_get_their_screws() -> None:
    """The hole keeps its screws off on a panel that leans as on any other."""
    wedge = replace(
        WEDGE, battens=Battens(section=(mm(20), mm(30)), front=True), baffle=Closing(fit=Fit.INSET)
    )
    laid = lay_out_wedge(wedge, {}, step=mm("0.5"), unit=Unit.MM)
    driver = woofer(places=(), cut_out=mm(200), bolt_circle=0, bolts=0, flange=mm(430), recess=0)
    found = {}
    for holes in ((), (driver,)):
        placed = place_holes("Wedge", holes, laid, 0, Unit.MM)
        rows = map_fixings("Wedge", laid, placed, Screws(), Unit.MM)[0]
        found[len(holes)] = {row.joint: row for row in rows}
    free, drilled = found[0], found[1]
    side = free["front frame, left to left side"]
    assert (side.end, side.middle, side.stack) == ("upper end", mm(15), mm(38))
    across = free["baffle to front frame, at the top"]
    assert (across.end, across.stack) == ("left", mm(48))
    assert all(row.length < row.stack - FAR_FACE for row in free.values())
    assert across.positions == (mm(50), mm(200), mm(350), mm(500))
    assert {row.into for row in free.values() if row.kind == "battens"} == {
        "left side",
        "right side",
    }
    assert not any("at the" in row.through for row in free.values())
    upright = "baffle to front frame, left"
    assert drilled[upright].positions == free[upright].positions


@pytest.mark.property
@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(DESIGNS, THICKNESSES)
def test_screws_of_every_family_and_joint_hold_and_keep_clear(
    wanted: Design, thickness: Length
) -> None:
    """Those that stay: out of every band, apart from each other, short of the far face."""
    laid = lay_out_or_skip(wanted, thickness)
    screws = Screws(carcass=CarcassScrews.STAY, round_over=mm(3))
    rows, _ = map_fixings("Box", laid, (), screws, Unit.MM)
    bands = find_keep_outs(laid, (), screws.round_over)
    leaning = {panel.name for panel in laid.panels if is_sloped(panel)}
    upright = [rod for row in rows if row.through not in leaning for rod in row.rods]
    for row in rows:
        assert row.length < row.stack - FAR_FACE
        assert row.positions == tuple(sorted(row.positions))
        assert row.positions[0] >= 0
    for number, rod in enumerate(upright):
        assert not any(meet(rod, band, screws.margin) for _, band in bands)
        assert not any(meet(other, rod, screws.margin) for other in upright[:number])
