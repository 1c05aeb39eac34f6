from decimal import Decimal
from pathlib import Path

import pytest

from nesting.cabinets.fit_out import Hazard
from nesting.cabinets.fittings import (
    AssemblyWishes,
    BandFace,
    CarcassScrews,
    Clearances,
    Fittings,
    Hardware,
    InsideItem,
    LoadsFrom,
    Pattern,
    Roll,
    Screws,
    Way,
    WayKind,
)
from nesting.cabinets.holes import Fastener, Hole, HoleKind, Mounted
from nesting.lengths import Unit, inch, mm, parse_length
from nesting.reading.fitting_tables import read_fittings
from tests.nesting.reading.job_files import SHEET, message, read, said, table

BOX = """[[cabinet]]
name = "Stage box"
height = 600
width = 500
depth = 350
baffle = "inset"
back = "inset"
battens = { section = [20, 30] }
"""
WOOFER = """[[cabinet.hole]]
name = "woofer"
from_bottom = 250
cut_out = 278
bolt_circle = 305
bolts = 8
flange = 320
recess = 6
depth = 130
magnet = 160
"""


def read_text(text: str, unit: Unit = Unit.MM) -> Fittings:
    whole = table(text, unit)
    fittings = read_fittings(whole)
    whole.finish()
    assert not said(whole)
    return fittings


def test_a_cabinet_without_fittings_has_none() -> None:
    assert read_text("") == Fittings()


def test_what_an_inch_job_leaves_out_is_on_an_inch_rule_and_on_the_safe_side() -> None:
    metric, inches = Fittings(), read_text("", Unit.INCH)
    for least, used in (
        (metric.clearances.inside, inches.clearances.inside),
        (metric.clearances.prongs, inches.clearances.prongs),
        (metric.clearances.edge, inches.clearances.edge),
        (metric.assembly.hand, inches.assembly.hand),
        (metric.hardware.foot, inches.hardware.foot),
        (metric.hardware.corner_reach, inches.hardware.corner_reach),
        (metric.disc_kerf, inches.disc_kerf),
        (metric.pivot, inches.pivot),
    ):
        assert least <= used <= least + inch("1/8")
        assert used % inch("1/16") == 0
    # A shorter reach is the safe one; where feet stand has no safe side.
    assert inches.assembly.reach == inch("19 1/2") < metric.assembly.reach
    assert inches.hardware.foot_inset == inch("2 3/4")


def test_the_defaults_of_an_inch_job_are_printed_as_the_fractions_that_are_used(
    tmp_path: Path,
) -> None:
    text = (
        '[job]\nunits = "in"\n'
        + SHEET.replace("= 18", '= "3/4"').replace("= 2440", "= 96").replace("= 1220", "= 48")
        + BOX.replace("600", "24").replace("500", "20").replace("350", "14")
        + WOOFER
    ).replace("[20, 30]", '["3/4", "1 1/4"]')
    for metric, inches in (("250", "10"), ("278", "11"), ("305", "12"), ("320", '"12 5/8"')):
        text = text.replace(f"= {metric}\n", f"= {inches}\n")
    for metric, inches in (("6", '"1/4"'), ("130", "5"), ("160", '"6 1/4"')):
        text = text.replace(f"= {metric}\n", f"= {inches}\n")
    job = read(tmp_path, text)
    printed = {each.name.removeprefix("Stage box: "): each.value for each in job.assumptions}
    used = read_text("", Unit.INCH)
    for name, lengths in (
        ("kept between fittings and all else inside", (used.clearances.inside,)),
        ("kept between prongs of T-nuts and the edge of the hole", (used.clearances.prongs,)),
        ("kept between fittings and the edge of their panel", (used.clearances.edge,)),
        (
            "a hand passes an opening, and reaches in",
            (used.assembly.hand, used.assembly.reach),
        ),
    ):
        assert tuple(map(inch_text, printed[name].split(", "))) == lengths
        assert "." not in printed[name]
    assert "2 in from the edges" in next(
        each.check for each in job.assumptions if each.name.startswith("thickness")
    )


def inch_text(words: str) -> int:
    """Return the length that a printed value means."""
    assert words.endswith(" in")
    return parse_length(words, Unit.INCH)


def test_a_hole_needs_few_keys() -> None:
    (hole,) = read_text("[[hole]]\ncut_out = 278\n").holes
    assert hole == Hole(name="driver 1", kind=HoleKind.DRIVER, panel="baffle", cut_out=mm(278))


def test_a_driver_with_bolts_gets_t_nuts_and_a_handle_screws() -> None:
    text = "[[hole]]\ncut_out = 278\nbolts = 8\nbolt_circle = 305\n"
    text += '[[hole]]\nkind = "handle"\npanel = "left side"\nwindow = [200, 100]\nbolts = 6\n'
    assert [hole.fastener for hole in read_text(text).holes] == [
        Fastener.T_NUTS,
        Fastener.SCREWS,
    ]


def test_every_key_of_a_hole_is_read() -> None:
    text = """[[hole]]
name = "woofer"
kind = "driver"
panel = "back"
from_right = 200
from_top = 210
cut_out = "11 1/8 in"
nominal = "12 in"
confirmed = true
bolt_circle = 298
bolts = 8
bolt_hole = 6
start_angle = 22.5
flange = 312
recess = 5
mounted = "inside"
fastener = "screws"
prongs = 20
depth = 130
magnet = 160
basket = 70
wall = 12
mass_kg = 4.2
litres = 3.5
"""
    assert read_text(text).holes == (
        Hole(
            name="woofer",
            kind=HoleKind.DRIVER,
            panel="back",
            places=(("right", mm(200)), ("top", mm(210))),
            cut_out=inch("11 1/8"),
            nominal=inch(12),
            confirmed=True,
            bolt_circle=mm(298),
            bolts=8,
            bolt_hole=mm(6),
            start_deg=Decimal("22.5"),
            flange=mm(312),
            recess=mm(5),
            mounted=Mounted.INSIDE,
            fastener=Fastener.SCREWS,
            prongs=mm(20),
            depth=mm(130),
            magnet=mm(160),
            basket=mm(70),
            wall=mm(12),
            mass_kg=Decimal("4.2"),
            litres=Decimal("3.5"),
        ),
    )


def test_every_other_key_is_read() -> None:
    text = """[clearances]
inside = 8
prongs = 4
edge = 15
[[way_out]]
name = "Cellar door"
width = 700
height = 1900
[[way_out]]
name = "Stair"
kind = "corner"
width = 800
length = 750
[assembly]
baffle_from = "rear"
damping = true
wiring = true
hand = 110
reach = 450
[[assembly.item]]
name = "crossover"
size = [150, 60]
[roll]
width = 1370
sold_by = 250
pattern = "along"
overlap = 20
turn_in = 40
spare = 50
no_seam = ["bottom", "left side"]
[cloth]
width = 1400
[screws]
battens = 30
closings = 35
carcass = "until dry"
carcass_length = 45
diameter = 5
spacing = 120
first = 40
margin = 4
round_over = 12
[hardware]
feet = 4
foot = 38
foot_inset = 80
foot_height = 20
corners = 8
corner_reach = 50
handles = 2
projection = 12
[discs]
kerf = 6
pivot = 8
"""
    assert read_text(text) == Fittings(
        clearances=Clearances(inside=mm(8), prongs=mm(4), edge=mm(15)),
        ways=(
            Way(name="Cellar door", width=mm(700), height=mm(1900)),
            Way(name="Stair", kind=WayKind.CORNER, width=mm(800), length=mm(750)),
        ),
        assembly=AssemblyWishes(
            baffle_from=LoadsFrom.REAR,
            damping=True,
            wiring=True,
            items=(InsideItem(name="crossover", size=(mm(150), mm(60))),),
            hand=mm(110),
            reach=mm(450),
        ),
        roll=Roll(
            width=mm(1370),
            sold_by=mm(250),
            pattern=Pattern.ALONG,
            overlap=mm(20),
            turn_in=mm(40),
            spare=mm(50),
            no_seam=(BandFace.BOTTOM, BandFace.LEFT),
        ),
        cloth=Roll(width=mm(1400)),
        screws=Screws(
            battens=mm(30),
            closings=mm(35),
            carcass=CarcassScrews.UNTIL_DRY,
            carcass_length=mm(45),
            diameter=mm(5),
            spacing=mm(120),
            first=mm(40),
            margin=mm(4),
            round_over=mm(12),
        ),
        hardware=Hardware(
            feet=4,
            foot=mm(38),
            foot_inset=mm(80),
            foot_height=mm(20),
            corners=8,
            corner_reach=mm(50),
            handles=2,
            projection=mm(12),
        ),
        disc_kerf=mm(6),
        pivot=mm(8),
    )


def test_an_inch_job_has_defaults_that_are_on_its_rule() -> None:
    fittings = read_text('[roll]\nwidth = 54\n[screws]\n[[hole]]\ncut_out = "11 1/8"\n', Unit.INCH)
    assert fittings.roll is not None
    assert fittings.screws is not None
    assert (fittings.roll.sold_by, fittings.screws.spacing) == (inch(18), inch(6))
    assert fittings.holes[0].bolt_hole == inch("3/16")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "[[hole]]\ncut_out = 305\nbolt_circle = 298\n",
            (
                "job.toml, line 2, [[hole]] 1, key 'cut_out': the cut-out is not smaller than the "
                "bolt circle.\n"
                "    cut_out = 305\n"
                "              ^^^\n"
                "From the inside out a driver has cut-out, bolt circle and flange. Check which is "
                "which on its data sheet.\n"
                "job.toml, line 2, [[hole]] 1, key 'cut_out': the cut-out is as large as the size "
                "that such drivers are called by, which is never a dimension.\n"
                "    cut_out = 305\n"
                "              ^^^\n"
                "Measure the driver or take the cut-out from its data sheet; if it really is this "
                "size, add confirmed = true."
            ),
        ),
        (
            "[[hole]]\ncut_out = 100\nfrom_botom = 20\n",
            "job.toml, line 3, [[hole]] 1: 'from_botom' is not known here.\n",
        ),
        (
            '[[hole]]\nkind = "handle"\nwindow = [100]\ncut_out = 50\n',
            "job.toml, line 3, [[hole]] 1, key 'window': two sizes are needed.\n",
        ),
        (
            '[[hole]]\nname = "a"\ncut_out = 50\n[[hole]]\nname = "a"\ncut_out = 50\n',
            "job.toml, line 5, [[hole]] 2 'a', key 'name': the name 'a' is taken already.\n",
        ),
        (
            '[[way_out]]\nname = "Car"\nkind = "car"\nwidth = 900\nheight = 700\n',
            "job.toml, line 1, [[way_out]] 1 'Car': 'length' is missing.\n",
        ),
        (
            '[[assembly.item]]\nname = "board"\n',
            "job.toml, line 1, [assembly], item 1 'board': 'size' is missing.\n",
        ),
        (
            '[roll]\nwidth = 1370\nno_seam = ["back"]\n',
            "job.toml, line 3, [roll], key 'no_seam': 'back' is not one of the choices.\n",
        ),
    ],
)
def test_what_will_not_do_is_quoted_with_a_remedy(text: str, expected: str) -> None:
    whole = table(text)
    read_fittings(whole)
    assert said(whole).startswith(expected)


def test_the_fit_out_comes_with_the_cabinet(tmp_path: Path) -> None:
    job = read(tmp_path, SHEET + "measured = 17.7\n" + BOX + WOOFER)
    found = job.cabinets[0].fit_out
    assert found is not None
    assert [sheet.name for sheet in found.holes] == ["woofer"]
    assert not found.clashes
    assert {line.name for line in found.goods} == {
        "T-nuts",
        "bolts for the drivers",
        "drivers",
        "glue",
    }
    assert found.hazards == {Hazard.CIRCLES, Hazard.ROUTER}
    assert found.room.net < found.room.gross


def test_a_hole_that_does_not_stay_in_its_panel_is_told_at_its_cabinet(tmp_path: Path) -> None:
    text = SHEET + BOX + WOOFER.replace("from_bottom = 250", "from_bottom = 100")
    assert message(tmp_path, text).startswith(
        "job.toml, line 8, [[cabinet]] 1 'Stage box', key 'hole': hole 'woofer': its outline "
        "runs 60 mm over the bottom edge of the baffle.\nMove it, or keep less"
    )


def test_a_hole_in_one_side_makes_the_sides_a_pair(tmp_path: Path) -> None:
    """A pair with any asymmetric feature gets two different names."""
    handle = '[[cabinet.hole]]\nkind = "handle"\npanel = "left side"\nwindow = [200, 100]\n'
    job = read(tmp_path, SHEET + BOX + handle)
    assert [part.name for part in job.parts[:2]] == ["Side, left", "Side, right"]
    assert job.parts[0].to_do == ("cut the hole for the handle 1",)
    assert not job.parts[1].to_do


def test_hazards_are_raised_by_what_is_fitted(tmp_path: Path) -> None:
    more = '[[cabinet.hole]]\nkind = "handle"\npanel = "left side"\nwindow = [200, 100]\n'
    more += '[[cabinet.hole]]\nkind = "connector"\npanel = "back"\nwindow = [90, 90]\n'
    job = read(tmp_path, SHEET + "[covering]\nthickness = 1\n" + BOX + more)
    found = job.cabinets[0].fit_out
    assert found is not None
    assert found.hazards == {Hazard.HANGING, Hazard.MAINS, Hazard.SOLVENTS}


def test_a_wedge_is_fitted_out_too(tmp_path: Path) -> None:
    wedge = """[[cabinet]]
name = "Stage wedge"
family = "wedge"
height = 400
width = 500
depth = 450
top = 150
back = "inset"
covering = { thickness = 1 }
roll = { width = 1370 }
[[cabinet.hole]]
cut_out = 200
flange = 230
"""
    found = read(tmp_path, SHEET + wedge).cabinets[0].fit_out
    assert found is not None
    assert not found.clashes
    faces = [face for piece in found.wraps[0].pieces for face in piece.faces]
    assert sorted(faces) == ["bottom", "front", "left side", "right side", "top"]
    assert any(line.name == "Side, left: corner to corner" for line in found.checks)


def test_what_is_judgement_is_listed_with_the_defaults(tmp_path: Path) -> None:
    more = "[cabinet.clearances]\ninside = 12\n[cabinet.screws]\n"
    job = read(tmp_path, SHEET + BOX + WOOFER + more)
    taken = {each.name: (each.value, each.is_default) for each in job.assumptions}
    assert taken["Stage box: kept between fittings and all else inside"] == ("12 mm", False)
    assert taken["Stage box: kept between prongs of T-nuts and the edge of the hole"] == (
        "3 mm",
        True,
    )
    assert taken["Stage box: a hand passes an opening, and reaches in"] == (
        "100 mm, 500 mm",
        True,
    )
    assert taken["Stage box: from screw to screw"] == ("150 mm", True)
    bare = read(tmp_path, SHEET + BOX).assumptions
    assert not any(each.name.startswith("Stage box:") for each in bare)
