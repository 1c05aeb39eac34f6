from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Battens, Corners
from nesting.cabinets.panels import Bar
from nesting.lengths import mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import build, design, lay_out

SECTION = (mm(20), mm(30))


def lengths(corners: Corners) -> dict[str, tuple[int, int]]:
    frames = Battens(section=SECTION, front=True, corners=corners)
    built = build(design(battens=frames), thickness=mm(18))
    return {batten.name: (batten.count, batten.length) for batten in built.battens}


def test_across_battens_run_through_and_the_uprights_stand_between() -> None:
    assert lengths(Corners.ACROSS) == {
        "front frame, across": (2, mm(464)),
        "front frame, upright": (2, mm(564 - 40)),
    }


def test_upright_battens_run_through_and_the_others_lie_between() -> None:
    assert lengths(Corners.UPRIGHT) == {
        "front frame, across": (2, mm(464 - 40)),
        "front frame, upright": (2, mm(564)),
    }


def test_mitred_battens_are_as_long_as_the_opening() -> None:
    assert lengths(Corners.MITRED) == {
        "front frame, across, ends mitred": (2, mm(464)),
        "front frame, upright, ends mitred": (2, mm(564)),
    }


def test_lengths_come_with_their_sums_and_wait_for_the_carcass() -> None:
    batten = build(design(battens=Battens(section=SECTION, front=True))).battens[1]
    assert batten.sums == (
        "524.5 = 600 - 17.7 - 20 - 17.7 - 20 (524.6, rounded down to 0.5)",
        "behind the front edge 17.7 = 17.7 baffle",
    )
    assert (batten.status, batten.oversize) == (Status.MEASURE_FIRST, mm(3))


def test_the_rear_frame_stands_behind_the_back_and_every_layer_of_covering() -> None:
    """A covered back ends flush: its face, its turned-over edge and the frame carry a layer."""
    covered = design(
        battens=Battens(section=SECTION, rear=True),
        back=Closing(fit=Fit.INSET, wrapped=True),
        covering=Covering(thickness=mm("1.2")),
    )
    assert build(covered).battens[0].sums[1] == (
        "behind the rear edge 21.3 = 1.2 covering of the back + 17.7 back + "
        "1.2 covering of the back turned over + 1.2 covering on the frame"
    )


def test_the_wider_side_of_a_batten_lies_on_the_carcass() -> None:
    bars = lay_out(design(battens=Battens(section=SECTION, front=True))).bars

    def extents(bar: Bar) -> tuple[int, ...]:
        return tuple(high - low for low, high in zip(bar.box.low, bar.box.high, strict=True))

    assert extents(bars[0])[1:] == (mm(30), mm(20))
    assert extents(bars[2])[:2] == (mm(20), mm(30))
