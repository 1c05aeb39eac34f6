import pytest

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign, Through
from nesting.cabinets.edges import find_edges
from tests.nesting.cabinets.designs import design, lay_out

PLANTED = Closing(fit=Fit.PLANTED)
OPEN = Closing(fit=Fit.NONE)
CORNERS = ("bottom left", "bottom right", "top left", "top right")
FRONT = ("front left", "front right", "front bottom", "front top")
REAR = ("rear left", "rear right", "rear bottom", "rear top")


def owners(wanted: BoxDesign) -> dict[str, str]:
    laid = lay_out(wanted)
    return {edge.name: edge.owner for edge in find_edges(laid.shell, laid.box)}


def test_there_are_twelve_edges_with_one_owner_each() -> None:
    assert set(owners(design())) == {*CORNERS, *FRONT, *REAR}


@pytest.mark.parametrize(
    ("through", "expected"),
    [
        (Through.SIDES, ["left side", "right side", "left side", "right side"]),
        (Through.TOP_AND_BOTTOM, ["bottom", "bottom", "top", "top"]),
    ],
)
def test_the_pair_that_runs_through_owns_the_four_corners(
    through: Through, expected: list[str]
) -> None:
    found = owners(design(through=through))
    assert [found[name] for name in CORNERS] == expected


@pytest.mark.parametrize("baffle", [None, OPEN, Closing(fit=Fit.INSET)])
def test_round_an_inset_or_missing_baffle_the_carcass_owns_the_front_edges(
    baffle: Closing | None,
) -> None:
    found = owners(design(baffle=baffle))
    assert [found[name] for name in FRONT] == ["left side", "right side", "bottom", "top"]


def test_a_planted_panel_owns_the_edges_of_its_end() -> None:
    found = owners(design(baffle=PLANTED, back=PLANTED))
    assert [found[name] for name in (*FRONT, *REAR)] == ["baffle"] * 4 + ["back"] * 4
