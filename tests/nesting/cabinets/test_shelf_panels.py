"""Shelves and dividers: spread, let in, and refused where they find no room."""

from dataclasses import replace

import pytest

from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.shelving import Dividers, Shelves
from nesting.errors import InputError
from nesting.lengths import mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import build, design, lay_out, part
from tests.nesting.cabinets.fit_samples import fit

OPEN = Closing(fit=Fit.NONE)


def test_a_shelf_lies_between_the_sides_and_is_as_deep_as_the_inside() -> None:
    shelf = part(build(design(baffle=OPEN, shelves=Shelves(count=3, set_back=mm(20)))), "Shelf")
    assert shelf.count == 3
    assert shelf.sums == (
        "464.5 = 500 - 17.7 - 17.7 (464.6, rounded down to 0.5)",
        "312 = 350 - 20 - 17.7 (312.3, rounded down to 0.5)",
    )
    assert shelf.status is Status.MEASURE_FIRST


def test_shelves_are_spread_evenly_or_placed_by_the_clear_height_below_them() -> None:
    for shelves, gaps in (
        (Shelves(count=2), [mm("176.4")] * 3),
        (Shelves(count=2, clear=(mm(100), mm(150))), [mm(100), mm(150), mm("279.2")]),
    ):
        laid = lay_out(design(baffle=OPEN, shelves=shelves))
        inside = laid.spaces[0].box
        faces = [
            inside.low[2],
            *(face for shelf in laid.inner for face in shelf.through),
            inside.high[2],
        ]
        found = [high - low for low, high in zip(faces[::2], faces[1::2], strict=True)]
        assert all(abs(a - b) <= 2 for a, b in zip(found, gaps, strict=True)), found


def test_a_grooved_shelf_is_longer_by_twice_the_groove_and_waits_for_nothing() -> None:
    """What is let in must be there when the carcass is glued."""
    built = build(design(baffle=OPEN, shelves=Shelves(clear=(mm(200),), groove=mm(6))))
    shelf = part(built, "Shelf")
    assert shelf.sums[0] == "476.5 = 500 - 17.7 - 17.7 + 6 + 6 (476.6, rounded down to 0.5)"
    assert shelf.status is Status.FINAL
    assert part(built, "Side, left").to_do == (
        (
            "groove across for shelf 1: 17.7 wide, 6 deep, its near edge 217.7 from the bottom "
            "end, ending 17.7 from the rear edge"
        ),
    )


def test_a_divider_that_holds_shelves_in_grooves_is_glued_up_with_them() -> None:
    wanted = design(baffle=OPEN, dividers=Dividers(), shelves=Shelves(groove=mm(6)))
    assert part(build(wanted), "Divider").status is Status.FINAL
    glued = next(step.what for step in fit(wanted).steps if step.what.startswith("Glue up"))
    assert "divider 1, shelf 1, shelf 2" in glued


def test_dividers_make_bays_and_their_shelves_fit_between_them() -> None:
    built = build(
        design(
            baffle=OPEN,
            dividers=Dividers(count=2, groove=mm(5)),
            shelves=Shelves(count=2, groove=mm(4)),
        ),
        thickness=mm(18),
        step=mm("0.1"),
    )
    assert part(built, "Divider").length == mm(564 + 10)
    shelf = part(built, "Shelf")
    assert shelf.count == 6
    assert shelf.length == mm("150.6")  # (464 - 2 x 18) / 3 = 142.67, and 4 at either end
    assert shelf.sums[0].startswith("150.6 = (464 - 2 × 18) / 3 + 4 + 4")


def test_grooves_that_are_missing_are_found() -> None:
    laid = lay_out(design(baffle=OPEN, shelves=Shelves(groove=mm(6))))
    assert not list(find_clashes(laid))

    bare = tuple(replace(panel, cuts=()) for panel in laid.shell)
    problems = list(find_clashes(replace(laid, shell=bare)))
    assert "the shelf 1 does not stand in the inside" in problems


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        ({"shelves": Shelves(count=40)}, "they need 728 mm of the inside height"),
        ({"dividers": Dividers(count=30)}, "30 of them fill the inside width"),
        ({"shelves": Shelves(set_back=mm(340))}, "their set-back leaves nothing of them"),
        (
            {"shelves": Shelves(groove=mm(9)), "dividers": Dividers()},
            "grooves from both sides meet inside a divider",
        ),
        ({"shelves": Shelves(groove=mm(18))}, "their grooves go through the panels"),
    ],
)
def test_what_finds_no_room_is_refused(changed: dict[str, object], message: str) -> None:
    with pytest.raises(InputError) as error:
        build(design(baffle=OPEN, **changed))
    assert error.value.faults[0].what.startswith(message)


def test_clear_heights_must_place_every_shelf() -> None:
    with pytest.raises(InputError, match="do not place 3 of them"):
        Shelves(count=3, clear=(mm(100),))
