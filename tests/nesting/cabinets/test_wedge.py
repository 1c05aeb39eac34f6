"""The wedge: bevels printed on both faces, sums, edges, volume."""

import re
from dataclasses import replace
from math import radians, tan

import pytest

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Battens, Braces, Corners
from nesting.cabinets.expand import expand
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.profiles import Profile
from nesting.cabinets.volume import find_mass, find_room, find_volume
from nesting.cabinets.wedge import lay_out_wedge
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.errors import InputError
from nesting.lengths import Length, Unit, inch, mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import ANSWERS, BIRCH, part

HELD = Closing(fit=Fit.INSET, held_by="glue and blocks")
WEDGE = WedgeDesign(
    name="Stage wedge",
    height=mm(400),
    width=mm(600),
    depth=mm(450),
    top=mm(150),
    front=mm(60),
    board=BIRCH,
    baffle=HELD,
    back=HELD,
    answers=ANSWERS,
)
STEP = mm("0.5")
THIN = mm("17.7")


def build(wanted: WedgeDesign, thickness: Length = THIN, step: Length = STEP) -> CabinetBuild:
    return expand(wanted, letters=("A",), measured={BIRCH: thickness}, step=step, unit=Unit.MM)


def test_parts_have_the_sizes_of_their_outside_faces() -> None:
    sizes = {each.name: (each.length, each.width) for each in build(WEDGE, mm(18)).parts}
    assert sizes == {
        "Side, left": (mm(400), mm(450)),
        "Side, right": (mm(400), mm(450)),
        "Bottom": (mm(450), mm(564)),
        "Back": (mm(364), mm(564)),
        "Top": (mm(150), mm(564)),
        "Baffle": (mm(453), mm(564)),  # 300 across and 340 up: 453.43, rounded down
        "Front": (mm(42), mm(564)),
    }


def test_every_bevelled_edge_prints_outside_and_inside_size_that_differ_by_t_tan() -> None:
    """Acceptance: outside and inside size of each edge differ by t x tan(angle) to 0.1."""
    lines = [line for each in build(WEDGE).parts for line in each.to_do if ": bevel " in line]
    assert len(lines) == 4  # top and baffle, baffle and front
    for line in lines:
        figures = re.fullmatch(
            r"edge at the \w+: bevel ([\d.]+)°, outside face ([\d.]+), inside face ([\d.]+) = "
            r"[\d.]+ - 17\.7 × tan [\d.]+°",
            line,
        )
        assert figures is not None, line
        angle, outside, inside = map(float, figures.groups())
        assert abs(outside - inside - 17.7 * tan(radians(angle))) < 0.1, line


def test_bevelled_parts_demand_the_guide_offset_again_and_have_larger_blanks() -> None:
    top = part(build(WEDGE), "Top")
    assert "measure the guide offset again at that tilt" in top.to_do[-1]
    assert (top.blank_length - top.length, top.blank_width - top.width) == (mm(3), 0)
    assert top.status is Status.OVERSIZE


def test_left_and_right_side_are_parts_of_their_own() -> None:
    left, right = build(WEDGE).parts[:2]
    assert (left.name, right.name) == ("Side, left", "Side, right")
    assert left.note == "handed: mirror image of Side, right"
    assert "from 60 above the bottom on the front edge to 150 before the rear edge" in left.to_do[0]


def test_every_corner_and_every_edge_of_a_side_has_one_owner() -> None:
    edges = build(WEDGE).edges
    assert {edge.name: (edge.owner, edge.joint) for edge in edges[:5]} == {
        "bottom and back": ("bottom", ""),
        "back and top": ("top", ""),
        "top and baffle": ("baffle", "mitre"),
        "baffle and front": ("baffle", "mitre"),
        "front and bottom": ("bottom", ""),
    }
    assert {edge.owner for edge in edges[5:]} == {"left side", "right side"}


def test_thickness_leaves_the_outside_alone() -> None:
    thick, thin = build(WEDGE, mm(18), mm("0.1")), build(WEDGE, mm("17.7"), mm("0.1"))
    assert thick.outside == thin.outside
    assert part(thin, "Bottom").width - part(thick, "Bottom").width == mm("0.6")
    assert part(thin, "Back").length - part(thick, "Back").length == mm("0.6")
    assert part(thin, "Top").length == part(thick, "Top").length
    assert "Bottom: width 564 → 564.6" in thin.changes


def test_sums_close_the_wedge() -> None:
    assert build(WEDGE).sums == (
        "600 = 17.7 + 564.6 + 17.7 (width: left side, inside, right side)",
        "400 = 17.7 + 364.6 + 17.7 (height: bottom, inside, top)",
        "450 = 17.7 + 414.6 + 17.7 (depth: front, inside, back)",
    )


def test_the_inside_agrees_with_the_prismoid_rule() -> None:
    """V = h/6 (A1 + 4 Am + A2): Wolfram MathWorld, "Prismatoid", citing Kern and Bland 1948.

    The inside of a wedge without a front, taken as layers from the floor up to the top: below the
    top the depth grows evenly less, so the rule is exact between floor and top.
    """
    bare = replace(WEDGE, front=0)
    laid = lay_out_wedge(bare, {BIRCH: mm(18)}, step=STEP, unit=Unit.MM)
    inside = laid.spaces[0]
    assert inside.profile is not None
    corners = inside.profile.corners
    low, high = (
        sorted(corner[0] for corner in corners if corner[1] == height)
        for height in (min(y for _, y in corners), max(y for _, y in corners))
    )
    depths = [low[1] - low[0], (low[1] - low[0] + high[1] - high[0]) / 2, high[1] - high[0]]
    width = inside.box.size(inside.profile.axis)
    tall = max(y for _, y in corners) - min(y for _, y in corners)
    rule = tall / 6 * width * (depths[0] + 4 * depths[1] + depths[2])
    found = inside.profile.area_twice * width / 2
    assert abs(found - rule) < 1e-7 * rule


def test_a_baffle_that_goes_into_a_covered_opening_is_smaller_on_all_four_edges() -> None:
    covered = replace(
        WEDGE,
        covering=Covering(thickness=mm("1.2"), ease=mm(1)),
        baffle=replace(HELD, wrapped=True),
    )
    bare, small = (part(build(each, step=mm("0.1")), "Baffle") for each in (WEDGE, covered))
    assert bare.width - small.width == 2 * (2 * mm("1.2") + mm(1))
    assert bare.length - small.length == 2 * (2 * mm("1.2") + mm(1))


def test_without_a_baffle_the_inside_of_the_top_reaches_further_and_its_blank_with_it() -> None:
    """The end lies in the plane of the slope, so the long point is on the inside face."""
    top = part(build(replace(WEDGE, baffle=Closing(fit=Fit.NONE))), "Top")
    line = next(line for line in top.to_do if ": bevel " in line)
    assert "inside face 165.6 = 150 + 17.7 × tan 41.4°" in line
    taken = mm(3) + round(mm("17.7") * 300 / 340)
    assert top.blank_length - top.length == -(-taken // STEP) * STEP


def test_a_bevel_steeper_than_saws_tilt_is_named() -> None:
    warnings = build(replace(WEDGE, baffle=Closing(fit=Fit.NONE))).warnings
    assert any("a bevel of 48.6° is more than the 45°" in warning for warning in warnings)


def test_a_wedge_whose_baffle_is_too_low_is_found() -> None:
    laid = lay_out_wedge(WEDGE, {BIRCH: mm(18)}, step=STEP, unit=Unit.MM)
    baffle = next(panel for panel in laid.shell if panel.name == "baffle")
    assert baffle.profile is not None
    lower = tuple((x + mm("0.1"), y) for x, y in baffle.profile.corners)
    moved = replace(baffle, profile=Profile(axis=baffle.profile.axis, corners=lower))
    shell = tuple(moved if panel is baffle else panel for panel in laid.shell)
    problems = list(find_clashes(replace(laid, shell=shell)))
    assert "the baffle and the inside overlap" in problems


def test_a_wedge_in_inches_is_the_wedge_in_millimetres() -> None:
    wanted = replace(
        WEDGE, height=inch(16), width=inch(24), depth=inch(18), top=inch(6), front=inch("2 1/2")
    )
    built = {
        unit: expand(
            wanted, letters=("A",), measured={BIRCH: inch("23/32")}, step=inch("1/32"), unit=unit
        )
        for unit in Unit
    }
    sizes = {
        unit: [(each.name, each.length, each.width) for each in build.parts]
        for unit, build in built.items()
    }
    assert sizes[Unit.MM] == sizes[Unit.INCH]


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        ({"top": mm(450)}, "it is not less than the outside depth"),
        ({"front": mm(10)}, "the boards it meets leave nothing of the front"),
        ({"top": mm(20)}, "the boards it meets leave nothing of the top"),
        ({"width": mm(30)}, "the two sides leave no inside"),
        (
            {"baffle": Closing(fit=Fit.REBATE)},
            "the baffle of a wedge sits in no rebate or groove: its sides have none",
        ),
    ],
)
def test_a_wedge_that_cannot_be_built_is_refused(changed: dict[str, object], message: str) -> None:
    with pytest.raises(InputError) as error:
        build(replace(WEDGE, **changed))  # type: ignore[arg-type]
    assert error.value.faults[0].what == message


def test_a_wedge_of_which_nothing_is_said_asks() -> None:
    asked = build(replace(WEDGE, baffle=None, back=None, answers=())).questions
    assert asked[0] == (
        "Nothing is said about the baffle. Is the cabinet open at the front? Write baffle = "
        '"inset", "planted" or "none". It is left out until then.'
    )
    assert any("feet" in question for question in asked)


PLANTED = Closing(fit=Fit.PLANTED)
SET_BACK = replace(HELD, set_back=mm(20))
SLOPED = replace(WEDGE, height=mm(400), depth=mm(450), top=mm(150), front=0)
"""The slope goes 300 back and 400 up: 3-4-5, so the baffle is 500 long."""


def test_a_planted_baffle_covers_the_edges_and_what_it_lies_on_loses_its_thickness() -> None:
    """Along the top 18 mm of baffle take 18 x 5/4; along the floor they take 18 x 5/4 too."""
    built = build(replace(SLOPED, baffle=PLANTED), mm(18))
    baffle, top, side = (part(built, name) for name in ("Baffle", "Top", "Side, left"))
    assert (baffle.length, baffle.width) == (mm(500), mm(600))
    assert top.length == mm(150) - mm("22.5")
    assert (side.length, side.width) == (mm(400), mm(450) - mm("22.5"))
    assert "to 127.5 before the rear edge on the top edge" in side.to_do[0]
    owners = {edge.name: edge.owner for edge in built.edges}
    assert owners["baffle and left side"] == "baffle"
    assert owners["top and baffle"] == "baffle"


def test_a_planted_back_shortens_sides_top_and_bottom() -> None:
    built = build(replace(WEDGE, back=PLANTED), mm(18))
    assert (part(built, "Back").length, part(built, "Back").width) == (mm(400), mm(600))
    assert part(built, "Side, left").width == mm(432)
    assert part(built, "Bottom").length == mm(432)
    assert part(built, "Top").length == mm(132)


def test_a_baffle_that_is_set_back_goes_between_its_neighbours() -> None:
    """Between the inside of the top and that of the bottom, 20 behind the slope of 3-4-5.

    The level faces are 364 apart: along the slope 364 x 5/4, whatever the set-back.
    """
    built = build(replace(SLOPED, baffle=SET_BACK), mm(18))
    baffle = part(built, "Baffle")
    assert baffle.length == mm(455)
    assert baffle.sums[0] == "455 = between top and bottom, 20 behind the edges"
    assert not list(find_clashes(lay_out_wedge(SLOPED, {}, step=STEP, unit=Unit.MM)))
    assert part(built, "Top").length == mm(150)


def test_a_frame_behind_the_slope_stands_square_to_it_and_clear_of_its_neighbours() -> None:
    """At the top the bound is 18 + 18 behind the slope, where the blunt corner is narrowest.

    From the slope's end on the top's inside face: the layer from 18 to 48 behind the slope between
    levels 364 apart. Along the slope the near end at the top lies 13.5 before the far one.
    """
    framed = replace(SLOPED, battens=Battens(section=(mm(20), mm(30)), front=True, rear=True))
    built = build(framed, mm(18))
    lengths = {batten.name: batten.length for batten in built.battens}
    run = mm(455) - mm("22.5")  # 364 x 5/4, less the slant of 30 x 3/4 at one end
    assert lengths["front frame, upright"] == (run - 2 * mm(20)) // STEP * STEP
    assert lengths["front frame, across"] == mm(564)
    assert lengths["rear frame, upright"] == mm(364) - 2 * mm(20)
    assert built.battens[2].sums[1] == "behind the slope 18 = 18 baffle"


def test_a_brace_stands_in_the_middle_of_the_depth_at_its_own_height() -> None:
    braced = replace(SLOPED, braces=Braces(depth=mm(60)))
    laid = lay_out_wedge(braced, {BIRCH: mm(18)}, step=STEP, unit=Unit.MM)
    (brace,) = laid.inner
    assert brace.through == (mm(191), mm(209))
    # The inside of the slope at 209: 209 x 3/4 + 18 x 5/4; the back stands at 450 - 18.
    begins, ends = mm(209) * 3 // 4 + mm("22.5"), mm(432)
    middle = sum(brace.width.interval) // 2
    assert abs(middle - (begins + ends) // 2) < mm("0.001")


def test_battens_and_braces_of_a_wedge_count_in_volume_and_mass() -> None:
    bare, filled = (
        lay_out_wedge(wanted, {BIRCH: mm(18)}, step=STEP, unit=Unit.MM)
        for wanted in (
            SLOPED,
            replace(
                SLOPED,
                battens=Battens(section=(mm(20), mm(30)), front=True),
                braces=Braces(depth=mm(60)),
            ),
        )
    )
    rooms = [find_room(each, ()) for each in (bare, filled)]
    assert rooms[0].gross == rooms[1].gross
    across, upright = 2 * mm(564), 2 * (mm("432.5") - mm(40))
    wanted = mm(20) * mm(30) * (across + upright)
    assert abs(rooms[1].battens - wanted) < wanted // 10**6
    assert rooms[1].braces == mm(564) * mm(60) * mm(18)
    assert find_mass(filled, ()).battens > 0


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        (
            {"battens": Battens(section=(mm(20), mm(30)), front=True, corners=Corners.MITRED)},
            "the battens of a wedge are not mitred",
        ),
        (
            {"baffle": PLANTED, "battens": Battens(section=(mm(20), mm(30)), front=True)},
            "a frame needs an inset baffle to carry, and there is none",
        ),
        (
            {"battens": Battens(section=(mm(20), mm(400)), front=True)},
            "a frame behind the baffle finds no room",
        ),
        (
            {"top": 0, "battens": Battens(section=(mm(20), mm(120)), front=True, rear=True)},
            "the rear frame, at the baffle and the front frame, at the back would meet",
        ),
        ({"braces": Braces(depth=mm(400))}, "at the height of brace 1 there are only "),
    ],
)
def test_fillings_that_find_no_room_in_a_wedge_are_refused(
    changed: dict[str, object], message: str
) -> None:
    with pytest.raises(InputError) as error:
        build(replace(SLOPED, **changed))  # type: ignore[arg-type]
    assert error.value.faults[0].what.startswith(message)


REBATED = replace(SLOPED, joint=Joint(kind=JointKind.REBATE, depth=mm(8)))


def test_boards_let_into_rebates_of_the_sides_are_longer_by_both_depths() -> None:
    """600 - 2 x 18 + 2 x 8; baffle and back still go into the opening."""
    built = build(REBATED, mm(18))
    widths = {each.name: each.width for each in built.parts}
    assert (widths["Bottom"], widths["Top"]) == (mm(580), mm(580))
    assert (widths["Baffle"], widths["Back"]) == (mm(564), mm(564))
    assert (
        part(built, "Side, left")
        .to_do[1]
        .startswith("rebate the inside face along the edges at the bottom, top: 18 wide and 8 deep")
    )
    joints = {edge.name: edge.joint for edge in built.edges}
    assert (joints["top and left side"], joints["baffle and left side"]) == ("rebate", "")


def test_the_wood_of_a_rebated_side_goes_to_the_board_that_is_let_in() -> None:
    plain, rebated = (
        lay_out_wedge(wanted, {BIRCH: mm(18)}, step=STEP, unit=Unit.MM)
        for wanted in (SLOPED, REBATED)
    )
    assert not list(find_clashes(rebated))
    assert sum(map(find_volume, plain.shell)) == sum(map(find_volume, rebated.shell))


@pytest.mark.parametrize(
    ("joint", "message"),
    [
        (Joint(kind=JointKind.FINGER), "the sides of a wedge have no finger joints"),
        (
            Joint(kind=JointKind.REBATE, depth=mm(18)),
            "its depth leaves nothing of the sides, which are 17.7 mm thick",
        ),
    ],
)
def test_joints_that_a_wedge_cannot_have_are_refused(joint: Joint, message: str) -> None:
    with pytest.raises(InputError) as error:
        build(replace(SLOPED, joint=joint))
    assert error.value.faults[0].what == message
