"""Volumes and masses against published examples."""

from decimal import Decimal
from fractions import Fraction
from math import pi

import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.box import lay_out_box
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import Battens, BoxDesign, Braces, Corners
from nesting.cabinets.fittings import Hardware
from nesting.cabinets.hole_bodies import NM3_PER_LITRE, find_boards, find_displaced, find_walls
from nesting.cabinets.hole_places import place_holes
from nesting.cabinets.holes import Fastener, Hole, HoleKind
from nesting.cabinets.volume import find_finished, find_mass, find_room
from nesting.lengths import NM_PER_INCH, Length, Unit, inch, mm
from tests.nesting.cabinets.designs import design, lay_out
from tests.nesting.cabinets.fit_samples import FRAMED, place, woofer

PLY = Board(material="plywood", thickness=inch("3/4"))


def litres(volume: int) -> float:
    return volume / NM3_PER_LITRE


def inch_box(height: str, width: str, depth: str) -> Construction:
    wanted = BoxDesign(
        name="Box",
        height=inch(height),
        width=inch(width),
        depth=inch(depth),
        board=PLY,
        baffle=Closing(fit=Fit.INSET),
        back=Closing(fit=Fit.INSET),
    )
    return lay_out_box(wanted, {}, step=inch("1/32"), unit=Unit.INCH)


@pytest.mark.parametrize(
    ("outside", "cubic_inches"),
    [(("14", "41", "14"), 6171.875), (("13.5", "13.5", "13.5"), 1728)],
)
def test_inside_volumes_agree_with_published_boxes(
    outside: tuple[str, str, str], cubic_inches: float
) -> None:
    """A driver maker's guide (14 x 41 x 14 in: 6171.88 cubic in, 3.57 cubic ft, 101.14 L) and a
    magazine's cube of 13 1/2 in (1 cubic ft = 28.3168 L), both of 3/4 in board."""
    gross = find_room(inch_box(*outside), ()).gross
    assert gross == Fraction(cubic_inches) * NM_PER_INCH**3
    assert litres(gross) == pytest.approx(
        {6171.875: 101.14, 1728: 28.3168}[cubic_inches], abs=0.005
    )


def slot(width: Length, opening: Length, depth: Length, wall: Length) -> Hole:
    return Hole(
        name="slot",
        kind=HoleKind.PORT,
        panel="baffle",
        window=(width, opening),
        places=(("bottom", opening // 2),),
        depth=depth,
        wall=wall,
    )


def test_a_slot_port_takes_its_own_board_and_not_the_baffles_thickness() -> None:
    """A loudspeaker-building FAQ, no. 11: opening 120, 500 wide, 380 deep, 18 mm board takes
    138 x 500 x 362 mm = 24.978 L. The slot runs out to the floor and both sides."""
    wanted = design(
        height=mm(700),
        width=mm(536),
        depth=mm(500),
        baffle=Closing(fit=Fit.INSET),
    )
    laid = lay_out(wanted, mm(18))
    (placed,) = place_holes(
        "Box", (slot(mm(500), mm(120), mm(380), mm(18)),), laid, mm(10), Unit.MM
    )
    assert find_walls(placed, laid) == ("top",)
    assert litres(find_displaced(placed, laid)) == 24.978


def test_a_narrow_slot_is_lined_on_three_sides() -> None:
    laid = lay_out(design())
    (placed,) = place(design(), slot(mm(300), mm(60), mm(200), mm(12)))
    assert find_walls(placed, laid) == ("left", "right", "top")


def test_a_box_for_100_litres_net_has_107_gross_with_an_18_inch_driver() -> None:
    """The same FAQ: such a driver takes about 7 L; before the port."""
    wanted = design(height=mm(536), width=mm(536), depth=mm(464), baffle=Closing(fit=Fit.INSET))
    laid = lay_out(wanted, mm(18))
    gross = find_room(laid, ()).gross
    assert litres(gross) == pytest.approx(107, abs=0.1)
    driver = woofer(litres=Decimal(7), places=())
    (placed,) = place_holes("Box", (driver,), laid, mm(10), Unit.MM)
    assert litres(find_room(laid, (placed,)).net) == pytest.approx(100, abs=0.1)


def test_a_round_port_displaces_a_cylinder_behind_the_baffle() -> None:
    port = Hole(name="port", kind=HoleKind.PORT, panel="baffle", cut_out=mm(100), depth=mm(200))
    (placed,) = place(design(), port)
    wanted = pi / 4 * 0.1**2 * (0.2 - 0.0177) * 1000
    assert litres(find_displaced(placed, lay_out(design()))) == pytest.approx(wanted, rel=1e-6)


def test_a_driver_takes_a_cone_and_a_magnet() -> None:
    """Frustum by the prismoid rule h/6 (A1 + 4 Am + A2), Kern and Bland 1948."""
    (placed,) = place(design(), woofer(recess=0, depth=mm(130), basket=mm(80)))
    areas = [pi / 4 * size**2 for size in (2.78, (2.78 + 1.6) / 2, 1.6)]
    cone = (0.80 - 0.177) / 6 * (areas[0] + 4 * areas[1] + areas[2])
    magnet = pi / 4 * 1.6**2 * 0.5
    assert litres(find_displaced(placed, lay_out(design()))) == pytest.approx(
        cone + magnet, rel=1e-6
    )


@pytest.mark.parametrize("corners", list(Corners))
def test_braces_and_battens_are_taken_off(corners: Corners) -> None:
    """Battens lie apart, so their wood is 2 x 2 lengths less the four shared corners."""
    wanted = design(
        baffle=Closing(fit=Fit.INSET),
        back=Closing(fit=Fit.INSET),
        battens=Battens(section=(mm(20), mm(30)), front=True, corners=corners),
        braces=Braces(depth=mm(100)),
    )
    room = find_room(lay_out(wanted), ())
    across, upright = mm("464.6"), mm("564.6")
    assert room.battens == mm(30) * mm(20) * (2 * across + 2 * upright - 4 * mm(20))
    assert room.braces == across * mm(100) * mm("17.7")
    assert room.net == room.gross - room.battens - room.braces


def test_the_mass_is_that_of_the_parts_with_the_drivers() -> None:
    """Acceptance: within 5 % of the sum of the parts. Birch plywood 18 mm: 685 kg/m3 in a maker's
    datasheet, by nominal thickness."""
    holes = place(FRAMED, woofer(mass_kg=Decimal("4.2")))
    mass = find_mass(lay_out(FRAMED), holes)
    area = 2 * 0.6 * 0.35 + 2 * 0.4646 * 0.35 + 2 * 0.5646 * 0.4646 - pi / 4 * 0.278**2
    assert float(mass.panels) == pytest.approx(area * 0.018 * 685, rel=1e-6)
    assert mass.fittings == Decimal("4.2")
    assert mass.whole == mass.panels + mass.battens + Fraction(42, 10)
    assert not mass.is_assumed


def test_a_board_of_no_known_density_is_said_to_be_assumed() -> None:
    assert find_mass(inch_box("14", "14", "14"), ()).is_assumed


def test_the_finished_size_has_covering_feet_and_handles() -> None:
    hardware = Hardware(feet=4, foot_height=mm(20), projection=mm(8))
    size = find_finished(lay_out(design()), Covering(thickness=mm(1)), hardware)
    assert size == (mm(500 + 2 + 16), mm(352), mm(600 + 2 + 20))


def test_a_flat_fitting_takes_no_room() -> None:
    (placed,) = place(design(), woofer(depth=0, magnet=0, fastener=Fastener.SCREWS))
    assert find_displaced(placed, lay_out(design())) == 0


def test_the_boards_of_a_slot_are_as_long_as_its_depth_behind_the_baffle() -> None:
    laid = lay_out(design())
    (placed,) = place(design(), slot(mm(300), mm(60), mm(200), mm(12)))
    behind = mm(200) - mm("17.7")
    assert find_boards(placed, laid) == (
        ("left", mm(60), behind),
        ("right", mm(60), behind),
        ("top", mm(324), behind),
    )


def test_the_boards_of_a_port_weigh_something_too() -> None:
    """Two of 60 and two of 236 mm, 132.3 deep, of 18 mm birch at 685 kg/m3; the window is out."""
    port = Hole(
        name="slot",
        kind=HoleKind.PORT,
        panel="baffle",
        window=(mm(200), mm(60)),
        wall=mm(18),
        depth=mm(150),
    )
    laid = lay_out(FRAMED)
    lined, without = (find_mass(laid, holes).panels for holes in (place(FRAMED, port), ()))
    boards = 2 * (0.06 + 0.236) * 0.1323 * 0.018 * 685
    assert float(lined - without) == pytest.approx(boards - 0.2 * 0.06 * 0.018 * 685, rel=1e-6)
