"""What shows of a finished cabinet. Common practice, no source."""

from dataclasses import replace

import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import BoxDesign, Braces
from nesting.cabinets.expand import construct
from nesting.cabinets.showing import find_hidden_kinds
from nesting.lengths import Unit, mm

CLOSED = BoxDesign(
    name="box",
    height=mm(600),
    width=mm(400),
    depth=mm(350),
    board=Board(material="birch plywood", thickness=mm(18)),
    baffle=Closing(fit=Fit.INSET, wrapped=False),
    back=Closing(fit=Fit.INSET, wrapped=True),
    braces=Braces(depth=mm(80)),
    covering=Covering(thickness=mm(1)),
)


def hidden(design: BoxDesign) -> frozenset[str]:
    return find_hidden_kinds(design, construct(design, {}, step=mm("0.5"), unit=Unit.MM))


def test_in_a_covered_and_closed_cabinet_only_a_bare_baffle_shows() -> None:
    assert hidden(CLOSED) == {"Side", "Top or bottom", "Back", "Brace"}


def test_of_a_bare_cabinet_only_what_is_inside_is_hidden() -> None:
    bare = replace(CLOSED, covering=None, back=Closing(fit=Fit.INSET))
    assert hidden(bare) == {"Brace"}


@pytest.mark.parametrize(
    "back", [None, Closing(fit=Fit.NONE), Closing(fit=Fit.INSET, gap=mm(100), wrapped=True)]
)
def test_nothing_is_hidden_in_a_cabinet_that_one_can_look_into(back: Closing | None) -> None:
    assert hidden(replace(CLOSED, back=back)) == frozenset()
