"""The boards of a rectangular port are parts: cut from sheets like all others."""

from dataclasses import replace

from nesting.cabinets.boards import Board
from nesting.cabinets.expand import expand
from nesting.cabinets.fittings import Fittings
from nesting.cabinets.holes import Hole, HoleKind
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import BIRCH, part
from tests.nesting.cabinets.fit_samples import FRAMED

SLOT = Hole(
    name="slot",
    kind=HoleKind.PORT,
    panel="baffle",
    window=(mm(200), mm(60)),
    wall=mm(12),
    depth=mm(150),
)
THIN = Board(material=BIRCH.material, thickness=mm(12))


def test_the_boards_of_a_slot_are_cut_from_sheet_as_thick_as_it_was_measured() -> None:
    """A window of 200 x 60 in a baffle of 17.7: boards reach 150 - 17.7 in; those below and above
    go over the ends of the two others, 11.7 each."""
    built = expand(
        replace(FRAMED, fittings=Fittings(holes=(SLOT,))),
        letters=("A",),
        measured={BIRCH: mm("17.7"), THIN: mm("11.7")},
        step=mm("0.1"),
        unit=Unit.MM,
    )
    sides = part(built, "Board of the slot, left or right")
    assert (sides.length, sides.width, sides.count) == (mm(60), mm("132.3"), 2)
    assert (sides.material, sides.thickness, sides.is_hidden) == (BIRCH.material, mm(12), True)
    level = part(built, "Board of the slot, bottom or top")
    assert (level.length, level.width, level.count) == (mm("223.4"), mm("132.3"), 2)
    assert level.sums == (
        "223.4 = 200 of the slot + 23.4 over the boards at its ends",
        "132.3 = from the panel to the end of the slot",
    )
    assert not any("Board of the slot" in change for change in built.changes)


def test_a_slot_along_the_floor_needs_one_board() -> None:
    """It runs out to both sides and the bottom, where panels stand already."""
    low = replace(SLOT, window=(mm("464.6"), mm(60)), places=(("bottom", mm(30)),), wall=mm(18))
    bare = replace(FRAMED, battens=None, covering=None, fittings=Fittings(holes=(low,)))
    built = expand(bare, letters=("A",), measured={BIRCH: mm("17.7")}, step=mm("0.1"), unit=Unit.MM)
    (board,) = [each for each in built.parts if each.name.startswith("Board")]
    assert (board.name, board.length) == ("Board of the slot, top", mm("464.6"))
