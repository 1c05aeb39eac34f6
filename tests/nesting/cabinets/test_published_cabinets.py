"""Cabinets whose plans or articles print the size of every part.

The outside sizes that are not printed are forced by the parts; the sources say which panel is
short of which.
"""

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Battens, BoxDesign, Braces, Corners, Through
from nesting.cabinets.expand import expand
from nesting.lengths import Length, Unit, inch, mm, parse_length

Sizes = dict[str, tuple[int, Length, Length]]


def sizes_of(design: BoxDesign, step: Length, unit: Unit) -> Sizes:
    built = expand(design, letters=("A",), measured={}, step=step, unit=unit)
    return {part.name: (part.count, part.length, part.width) for part in built.parts}


def written(unit: Unit, **parts: str) -> Sizes:
    """Read "2 600 x 420" as a count and two lengths."""
    found = {}
    for name, text in parts.items():
        count, size = text.split(" ", 1)
        length, width = (parse_length(side, unit) for side in size.split(" x "))
        found[name.replace("_", " ")] = (int(count), length, width)
    return found


def test_a_public_address_box_of_15_mm_plywood_has_its_seven_published_parts() -> None:
    """Hobby plan "DISCO PA 200", read in a stored copy.

    Sides 600 x 420 (2), top and bottom 450 x 420 (2), front and rear 450 x 570 (2), brace
    150 x 450 (1), front 30 mm back.
    """
    design = BoxDesign(
        name="Public address box",
        height=mm(600),
        width=mm(480),
        depth=mm(420),
        board=Board(material="plywood", thickness=mm(15)),
        baffle=Closing(fit=Fit.INSET, set_back=mm(30)),
        back=Closing(fit=Fit.INSET),
        braces=Braces(depth=mm(150)),
    )
    sizes = sizes_of(design, mm("0.5"), Unit.MM)
    assert sizes == written(
        Unit.MM,
        Side="2 600 x 420",
        Top_or_bottom="2 450 x 420",
        Baffle="1 570 x 450",
        Back="1 570 x 450",
        Brace="1 450 x 150",
    )
    area = sum(count * length * width for count, length, width in sizes.values())
    assert area == 1_462_500 * mm(1) ** 2


def test_a_closed_box_of_two_thicknesses_has_its_published_parts_and_cleats() -> None:
    """A bass cabinet in an open repository (misc_src/cab.md), read in a stored copy.

    Outside 25 x 15 5/8 x 11 1/4 in. Frame of 3/4: top and bottom 25 (2), sides 14 1/8 (2), all
    11 1/4 wide. Baffle and back of 5/8: 23 1/2 x 14 1/8 (2). Cleats 23 1/2 (4) and 14 1/8 (4), the
    front ones 1 in back, the rear ones 5/8. Each cleat is listed as long as its opening, as mitred
    ones are. The section of the cleats is not printed; 3/4 x 3/4 is ours and changes no length.
    """
    panel = Board(material="plywood", thickness=inch("5/8"))
    design = BoxDesign(
        name="Closed box",
        height=inch("15 5/8"),
        width=inch(25),
        depth=inch("11 1/4"),
        board=Board(material="plywood", thickness=inch("3/4")),
        through=Through.TOP_AND_BOTTOM,
        baffle=Closing(fit=Fit.INSET, board=panel, set_back=inch("3/8")),
        back=Closing(fit=Fit.INSET, board=panel),
        battens=Battens(
            section=(inch("3/4"), inch("3/4")), front=True, rear=True, corners=Corners.MITRED
        ),
    )
    assert sizes_of(design, inch("1/32"), Unit.INCH) == written(
        Unit.INCH,
        Side="2 14 1/8 x 11 1/4",
        Top_or_bottom="2 25 x 11 1/4",
        Baffle="1 14 1/8 x 23 1/2",
        Back="1 14 1/8 x 23 1/2",
    )
    built = expand(design, letters=("A",), measured={}, step=inch("1/32"), unit=Unit.INCH)
    cleats: dict[Length, int] = {}
    for batten in built.battens:
        cleats[batten.length] = cleats.get(batten.length, 0) + batten.count
    assert cleats == {inch("23 1/2"): 4, inch("14 1/8"): 4}
    set_backs = {batten.name.split(" ")[0]: batten.sums[1] for batten in built.battens}
    assert set_backs["front"] == "behind the front edge 1 = 3/8 set-back + 5/8 baffle"
    assert set_backs["rear"] == "behind the rear edge 5/8 = 5/8 back"
    outside = built.outside[0] * built.outside[1] * built.outside[2] / inch(1) ** 3
    assert round(outside, 2) == 4394.53


def test_a_cube_whose_panels_overlap_in_three_levels_has_its_published_parts() -> None:
    """Lowrider Magazine, "Box Building Basics", read in a stored copy.

    A 13 1/2 in cube of 3/4 board: 13 1/2 x 13 1/2 (2), 13 1/2 x 12 (2), 12 x 12 (2); inside 1 cubic
    foot.
    """
    design = BoxDesign(
        name="Cube",
        height=inch("13 1/2"),
        width=inch("13 1/2"),
        depth=inch("13 1/2"),
        board=Board(material="MDF", thickness=inch("3/4")),
        baffle=Closing(fit=Fit.PLANTED),
        back=Closing(fit=Fit.PLANTED),
    )
    assert sizes_of(design, inch("1/32"), Unit.INCH) == written(
        Unit.INCH,
        Baffle="1 13 1/2 x 13 1/2",
        Back="1 13 1/2 x 13 1/2",
        Side="2 13 1/2 x 12",
        Top_or_bottom="2 12 x 12",
    )
    built = expand(design, letters=("A",), measured={}, step=inch("1/32"), unit=Unit.INCH)
    assert built.spaces[0].name == "inside"
    assert built.spaces[0].box.volume == inch(12) ** 3
