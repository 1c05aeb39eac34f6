"""A baffle or back in a rebate or groove: sums by hand, solids by the tiling check."""

from dataclasses import replace

import pytest

from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.closing_design import Closing, Covering, Fit, Fitted
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.fittings import AssemblyWishes, Fittings, LoadsFrom, Screws
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.panels import Panel
from nesting.cabinets.shelving import Shelves
from nesting.errors import InputError
from nesting.lengths import Length, mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import build, design, lay_out, part
from tests.nesting.cabinets.fit_samples import fit

REBATE = Closing(fit=Fit.REBATE, depth=mm(9), held_by="screws")
GROOVE = Closing(fit=Fit.GROOVE, depth=mm(6), set_back=mm(10), play=mm("0.5"))
COVERING = Covering(thickness=mm("1.2"), ease=mm(1))


def back(closing: Closing, **changes: object) -> tuple[Length, Length]:
    made = part(build(design(back=closing, **changes), step=mm("0.1")), "Back")
    return made.length, made.width


def panel(wanted: BoxDesign, name: str) -> Panel:
    return next(each for each in lay_out(wanted).panels if each.name == name)


def test_a_back_in_a_rebate_is_as_large_as_its_opening_and_both_rebates() -> None:
    """600 - 2 x 17.7 + 2 x 9 and 500 - 2 x 17.7 + 2 x 9."""
    assert back(REBATE) == (mm("582.6"), mm("482.6"))


def test_a_back_in_a_groove_leaves_play_at_the_bottom_of_the_groove() -> None:
    """600 - 2 x 17.7 + 2 x 6 - 2 x 0.5."""
    assert back(GROOVE) == (mm("575.6"), mm("475.6"))


def test_the_sum_names_the_depth_of_the_rebate() -> None:
    made = part(build(design(back=REBATE)), "Back")
    assert made.sums[1] == "482.5 = 500 - 17.7 - 17.7 + 9 + 9 (482.6, rounded down to 0.5)"


def test_the_covering_stack_is_taken_off_the_covered_rebate_on_each_side() -> None:
    """Opening and rebates 482.6, less twice: covering 1.2, its own covering 1.2, ease 1."""
    wrapped = replace(REBATE, wrapped=True)
    assert back(wrapped, covering=COVERING)[1] == mm("482.6") - 2 * (2 * mm("1.2") + mm(1))
    bare = replace(REBATE, wrapped=False)
    assert back(bare, covering=COVERING)[1] == mm("482.6") - 2 * (mm("1.2") + mm(1))
    early = replace(REBATE, fitted=Fitted.BEFORE_COVERING)
    assert back(early, covering=COVERING) == back(REBATE)


def test_a_covered_rebate_is_wide_enough_for_panel_and_layers() -> None:
    """Its own covering on the face, the panel, its covering turned over, that of the carcass."""
    wanted = design(back=replace(REBATE, wrapped=True), covering=COVERING)
    rebate, cover = panel(wanted, "top").to_do
    assert cover.startswith("cover with the whole carcass")
    assert rebate == (
        "rebate the inside rear edge for the back: 9 deep, 21.3 wide, from end to end "
        "(21.3 = 1.2 covering of the back + 17.7 back + 1.2 covering of the back turned over + "
        "1.2 covering on the end of the rebate)"
    )


@pytest.mark.parametrize("kind", list(JointKind))
@pytest.mark.parametrize("closing", [REBATE, GROOVE])
def test_seats_close_with_every_corner_joint(kind: JointKind, closing: Closing) -> None:
    """Acceptance: no overlap, no undeclared gap."""
    wanted = design(joint=Joint(kind=kind), back=closing, baffle=closing, covering=COVERING)
    assert not list(find_clashes(lay_out(wanted)))


def test_a_rebate_is_never_seen_at_the_end_of_a_panel_that_runs_through() -> None:
    side = panel(design(back=REBATE), "left side")
    (cut,) = side.cuts
    assert (cut.box.low[2], cut.box.high[2]) == (mm("8.7"), mm("591.3"))
    assert side.to_do == (
        (
            "rebate the inside rear edge for the back: 9 deep, 17.7 wide, stopped 8.7 before both "
            "ends, which are squared with a chisel"
        ),
    )
    mitred = panel(design(back=REBATE, joint=Joint(kind=JointKind.MITRE)), "left side")
    assert mitred.to_do[1].endswith("from end to end")


def test_what_drops_into_a_rebate_is_measured_first_and_what_slides_into_a_groove_is_not() -> None:
    assert part(build(design(back=REBATE)), "Back").status is Status.MEASURE_FIRST
    assert part(build(design(back=GROOVE)), "Back").status is Status.FINAL


def test_joints_are_cut_before_the_carcass_is_glued_and_a_grooved_back_goes_in_with_it() -> None:
    steps = [step.what for step in fit(design(back=GROOVE)).steps]
    assert steps[:2] == [
        (
            "Cut the groove for the back in left side, right side, top, bottom, and try it in a "
            "scrap first."
        ),
        (
            "Glue up the carcass: left side, right side, top, bottom, back in its groove. Check "
            "its diagonals."
        ),
    ]
    assert not any("Put the back in" in step for step in steps)


def test_a_cabinet_closed_by_its_grooves_is_filled_before_it_is_glued_up() -> None:
    wanted = design(back=GROOVE, baffle=GROOVE)
    found = fit(wanted, Fittings(assembly=AssemblyWishes(damping=True)))
    steps = [step.what for step in found.steps]
    glued = next(number for number, step in enumerate(steps) if step.startswith("Glue up"))
    assert steps.index("Fix the damping to the inside.") < glued
    assert found.steps[glued].closes == "back"


def test_a_case_with_a_grooved_back_is_still_open_in_front() -> None:
    """Shelves that stand free are fitted to the standing case, not glued up with it."""
    case = design(back=GROOVE, baffle=Closing(fit=Fit.NONE), shelves=Shelves(count=2))
    steps = [step.what for step in fit(case).steps]
    assert steps[-1] == "Fit shelf 1, shelf 2."


def test_a_rebate_across_fingers_is_one_joint_for_screws() -> None:
    wanted = design(back=REBATE, joint=Joint(kind=JointKind.FINGER))
    rows = fit(wanted, Fittings(screws=Screws())).fixings
    assert [row.into for row in rows] == ["left side", "right side", "top", "bottom"]


def test_screws_of_a_rebated_back_stand_in_the_middle_of_its_rest() -> None:
    rows = fit(design(back=REBATE), Fittings(screws=Screws())).fixings
    assert [row.joint for row in rows] == [
        f"back to {name}" for name in ("left side", "right side", "top", "bottom")
    ]
    left = rows[0]
    assert left.middle == mm("4.5")
    assert {rod.centre[0] for rod in left.rods} == {mm("17.7") - mm("4.5")}
    assert all(rod.interval[1] == mm(350) for rod in left.rods)


@pytest.mark.parametrize(
    ("changes", "what"),
    [
        ({"back": replace(GROOVE, set_back=0)}, "a groove at the very edge is no groove"),
        (
            {"back": replace(GROOVE, wrapped=True)},
            "a back in a groove goes in whole and bare, while the carcass is glued up",
        ),
        (
            {"back": Closing(fit=Fit.INSET, depth=mm(5))},
            "only a back in a rebate or groove has a depth and play",
        ),
        ({"back": replace(REBATE, depth=0)}, "its depth is not more than 0, or its play is "),
        (
            {
                "baffle": REBATE,
                "fittings": Fittings(assembly=AssemblyWishes(baffle_from=LoadsFrom.REAR)),
            },
            "only an inset baffle goes in from the rear",
        ),
        (
            {"back": replace(REBATE, play=mm(9))},
            "covering, clearance and play take 9 mm on one side of a rebate 9 mm deep: the back",
        ),
        (
            {"back": replace(REBATE, depth=mm(18))},
            "a rebate 18 mm deep leaves too little of the panels, which are 17.7 mm thick",
        ),
    ],
)
def test_seats_that_cannot_be_are_refused(changes: dict[str, object], what: str) -> None:
    with pytest.raises(InputError) as error:
        lay_out(design(**changes))
    assert error.value.faults[0].what.startswith(what)
