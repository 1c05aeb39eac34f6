from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Battens
from nesting.cabinets.expand import expand
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import BIRCH, build, design

INSET = Closing(fit=Fit.INSET)


def test_a_design_that_says_everything_leaves_no_question() -> None:
    assert build(design()).questions == ()


def test_a_box_without_a_back_asks_for_it() -> None:
    assert build(design(back=None)).questions == (
        (
            "Nothing is said about the back. Is the cabinet open at the rear? Write back = "
            '"inset", "rebate", "groove", "planted" or "none". It is left out until then.'
        ),
    )


def test_a_box_that_is_open_on_purpose_asks_nothing() -> None:
    assert build(design(back=Closing(fit=Fit.NONE))).questions == ()


def test_an_inset_baffle_without_support_asks_for_it() -> None:
    assert build(design(baffle=INSET)).questions == (
        (
            "What holds the inset baffle? Give it a front frame of battens, or say in a few words "
            "what it is held by."
        ),
    )


def test_a_frame_answers_what_holds_the_baffle() -> None:
    frame = Battens(section=(mm(20), mm(20)), front=True)
    assert build(design(baffle=INSET, battens=frame)).questions == ()


def test_a_covered_box_asks_whether_the_back_is_covered_itself() -> None:
    covered = design(covering=Covering(thickness=mm(1)), baffle=Closing(fit=Fit.PLANTED))
    assert build(covered).questions == (
        (
            "Is the back covered itself, on its face and edges? Until that is said, its size "
            "leaves room for the covering of the carcass only."
        ),
    )


def test_parts_that_differ_by_little_are_named() -> None:
    covered = design(
        covering=Covering(thickness=mm("1.2")),
        baffle=Closing(fit=Fit.INSET, wrapped=False),
        back=Closing(fit=Fit.INSET, wrapped=True),
    )
    assert build(covered).warnings == (
        (
            "Baffle (560 × 460 × 18) and Back (557.5 × 457.5 × 18) look alike. Name each before it "
            "is cut free, or make them the same size: 557.5 × 457.5 goes into both."
        ),
    )


def test_parts_that_are_the_same_until_they_are_drilled_are_not_warned_about() -> None:
    assert build(design()).warnings == ()


def test_parts_that_differ_by_more_than_15_mm_in_one_size_are_not_warned_about() -> None:
    """The limit of 15 mm in both sizes is ours (a judgement)."""
    near, far = (
        design(
            height=mm(height),
            width=mm(500),
            depth=mm(height),
            baffle=Closing(fit=Fit.NONE),
            back=Closing(fit=Fit.NONE),
        )
        for height in (479, 480)
    )
    assert len(build(near, thickness=mm(18)).warnings) == 1
    assert build(far, thickness=mm(18)).warnings == ()


def test_a_board_that_was_not_measured_is_named() -> None:
    oak = Board(material="oak plywood", thickness=mm(20))
    assert build(design(board=oak)).warnings == (
        (
            "oak plywood 20 mm is not measured: the sizes take it to be exactly as thick as it is "
            "called. Measure the sheets before the first cut and give the readings."
        ),
    )


def test_a_thin_wall_is_named() -> None:
    """Common practice, no source: screws into the edge of a thin board split it."""
    thin = Board(material="birch plywood", thickness=mm(9))
    assert build(design(board=thin)).warnings[-1] == (
        "birch plywood 9 mm is thin for butt joints. Glue corner battens behind them."
    )


def test_an_outside_size_off_the_step_is_named() -> None:
    assert build(design(height=mm("600.2"))).warnings == (
        (
            "The outside height 600.2 is rounded to 600. Give a size that is a multiple of the "
            "step, or a finer step."
        ),
    )


def test_readings_that_differ_by_more_than_a_fifth_of_a_millimetre_name_what_meets() -> None:
    """The limit of 0.2 mm is ours (a judgement)."""
    for spread, is_named in (("0.2", False), ("0.3", True)):
        built = expand(
            design(),
            letters=("A",),
            measured={BIRCH: mm("17.7")},
            step=mm("0.5"),
            unit=Unit.MM,
            spreads={BIRCH: mm(spread)},
        )
        said = [warning for warning in built.warnings if "The readings of" in warning]
        assert bool(said) is is_named
    assert said == [
        (
            "The readings of birch plywood 18 mm differ by 0.3. Cut what meets in one joint from "
            "one sheet (left side, right side, top, bottom, baffle, back), or measure each sheet "
            "and cut grooves and rebates to the piece that goes in."
        )
    ]
