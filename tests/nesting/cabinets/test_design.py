import pytest

from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Along, Battens, Grains
from nesting.errors import InputError
from nesting.lengths import mm
from nesting.parts import Grain
from tests.nesting.cabinets.designs import build, design, part

FRONT_FRAME = Battens(section=(mm(20), mm(20)), front=True)


@pytest.mark.parametrize(
    ("changes", "messages"),
    [
        (
            {"height": 0, "count": 0},
            [
                (
                    "cabinet 'Stage box', height: its outside height must be more than 0.\n"
                    "Give the outside height of the bare box."
                ),
                (
                    "cabinet 'Stage box', count: it is 0.\n"
                    "Give a whole number of 1 or more, or take the cabinet out."
                ),
            ],
        ),
        (
            {"baffle": Closing(fit=Fit.PLANTED, set_back=mm(5))},
            [
                (
                    "cabinet 'Stage box', baffle: only an inset baffle, or one in a rebate or "
                    "groove, can be set back.\n"
                    "Make the baffle inset, or leave the set-back out."
                )
            ],
        ),
        (
            {"baffle": Closing(fit=Fit.NONE), "battens": FRONT_FRAME},
            [
                (
                    "cabinet 'Stage box', battens: a frame needs an inset baffle to carry, and "
                    "there is none.\nMake the baffle inset, or leave that frame out."
                )
            ],
        ),
        (
            {"grains": Grains(sides=Along.WIDTH)},
            [
                (
                    "cabinet 'Stage box', grain: the width runs through the thickness of "
                    "the sides.\nChoose one of: height, depth, any."
                )
            ],
        ),
    ],
)
def test_what_no_box_can_be_is_refused(changes: dict[str, object], messages: list[str]) -> None:
    with pytest.raises(InputError) as error:
        design(**changes)
    assert [str(fault) for fault in error.value.faults] == messages


def test_a_batten_section_gives_the_smaller_size_first() -> None:
    with pytest.raises(InputError, match="the smaller first"):
        Battens(section=(mm(30), mm(20)))


def test_a_negative_clearance_is_refused() -> None:
    with pytest.raises(InputError, match="its ease is negative"):
        Covering(thickness=mm(1), ease=-1)


def test_the_grain_of_each_panel_follows_its_longer_visible_direction() -> None:
    assert {each.name: each.grain for each in build(design()).parts} == {
        "Side": Grain.LENGTH,
        "Top or bottom": Grain.LENGTH,
        "Baffle": Grain.LENGTH,
        "Back": Grain.LENGTH,
    }


def test_the_grain_can_be_turned_panel_by_panel() -> None:
    grains = Grains(sides=Along.DEPTH, baffle=Along.WIDTH, back=Along.ANY)
    built = build(design(grains=grains))
    assert part(built, "Side").grain is Grain.WIDTH
    assert part(built, "Baffle").grain is Grain.WIDTH
    assert part(built, "Back").grain is Grain.ANY
