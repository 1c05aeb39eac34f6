"""Inside clashes; a general-purpose geometry library looks along the depth."""

from dataclasses import replace

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets import families
from nesting.cabinets.bodies import Rod
from nesting.cabinets.clearances import find_close_calls
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Battens, BoxDesign, Braces
from nesting.cabinets.fittings import Clearances
from nesting.cabinets.hole_bodies import find_bodies
from nesting.cabinets.hole_places import place_holes
from nesting.cabinets.holes import Fastener, Hole, HoleKind, Mounted
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.errors import InputError
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import BIRCH, design, lay_out
from tests.nesting.cabinets.fit_samples import FRAMED, place, woofer

HANDLE = Hole(
    name="handle",
    kind=HoleKind.HANDLE,
    panel="left side",
    window=(mm(200), mm(100)),
    depth=mm(60),
    places=(("top", mm(150)),),
)


def close_calls(wanted: BoxDesign, *holes: Hole, clearances: Clearances | None = None) -> list[str]:
    return list(
        find_close_calls(
            lay_out(wanted), place(wanted, *holes), clearances or Clearances(), Unit.MM
        )
    )


def test_a_driver_in_a_roomy_box_meets_nothing() -> None:
    assert not close_calls(FRAMED, woofer())


def test_a_magnet_that_reaches_the_back_is_named_with_it() -> None:
    """Acceptance: the list names both items."""
    assert close_calls(FRAMED, woofer(depth=mm(317))) == [
        "The magnet of the woofer and the back meet or come closer than 10 mm. Move one of them."
    ]


def test_the_clearance_is_the_users() -> None:
    """The magnet ends 17.7 + 6 + 308.3 behind the front: 4 mm before the back stands there."""
    depth = mm(350) - 2 * mm("17.7") - mm(4) + mm("11.7")
    near = woofer(depth=depth)
    assert close_calls(FRAMED, near)
    assert not close_calls(FRAMED, near, clearances=Clearances(inside=mm(4)))
    assert close_calls(FRAMED, near, clearances=Clearances(inside=mm("4.1")))


def test_a_brace_in_the_way_of_a_magnet_is_found() -> None:
    braced = design(braces=Braces(depth=mm(200)))
    assert close_calls(braced, woofer(places=())) == [
        f"The {what} of the woofer and the brace 1 meet or come closer than 10 mm. "
        "Move one of them."
        for what in ("basket", "magnet")
    ]


def test_a_brace_behind_the_magnet_is_not() -> None:
    assert not close_calls(design(braces=Braces(depth=mm(50))), woofer(places=(), depth=mm(120)))


def test_a_handles_pocket_meets_a_basket_but_not_a_magnet() -> None:
    deep = woofer(places=(("left", mm(175)), ("top", mm(170))), depth=mm(200))
    (said,) = close_calls(design(), deep, HANDLE)
    assert said.startswith("The basket of the woofer and the body of the handle meet")
    shallow = woofer(places=(("left", mm(175)), ("top", mm(170))), basket=mm(20), depth=mm(200))
    assert not close_calls(design(), shallow, HANDLE)


def test_a_driver_over_its_frame_is_found() -> None:
    near = woofer(places=(("bottom", mm(170)),))
    said = close_calls(FRAMED, near)
    assert said
    assert all("front frame, bottom" in each for each in said)


def test_prongs_keep_from_the_edge_of_the_hole() -> None:
    """Acceptance: prong circle to hole edge >= set margin. (305 - 278 - 19) / 2 = 4 mm."""
    assert not close_calls(FRAMED, woofer(), clearances=Clearances(prongs=mm(4)))
    (said,) = close_calls(FRAMED, woofer(), clearances=Clearances(prongs=mm("4.1")))
    assert said.startswith("The prongs of the T-nuts come within 4 mm of the cut-out of the woofer")


def test_a_driver_screwed_on_has_no_prongs() -> None:
    near = woofer(fastener=Fastener.SCREWS)
    assert not close_calls(FRAMED, near, clearances=Clearances(prongs=mm(5)))


def test_two_fittings_too_close_on_one_panel_are_named() -> None:
    port = Hole(
        name="port",
        kind=HoleKind.PORT,
        panel="baffle",
        cut_out=mm(60),
        places=(("top", mm(60)),),
        depth=mm(150),
    )
    assert not close_calls(design(), woofer(), port)
    lower = Hole(
        name="port",
        kind=HoleKind.PORT,
        panel="baffle",
        cut_out=mm(80),
        places=(("bottom", mm(455)),),
        depth=mm(100),
    )
    assert close_calls(design(), woofer(), lower)[0] == (
        "The woofer and the port meet or come closer than 10 mm. Move one of them."
    )


WEDGE = WedgeDesign(
    name="Stage wedge",
    height=mm(400),
    width=mm(500),
    depth=mm(450),
    top=mm(150),
    board=BIRCH,
    baffle=Closing(fit=Fit.INSET),
    back=Closing(fit=Fit.INSET),
)


def wedge_calls(*holes: Hole, **changes: object) -> list[str]:
    wanted = replace(WEDGE, **changes)  # type: ignore[arg-type]
    laid = families.lay_out(wanted, {}, step=mm("0.5"), unit=Unit.MM)
    placed = place_holes("Stage wedge", holes, laid, mm(10), Unit.MM)
    return list(find_close_calls(laid, placed, Clearances(), Unit.MM))


def test_what_hangs_in_a_leaning_baffle_is_checked_where_it_really_is() -> None:
    """A baffle of 500 from 0, 0 to 300, 400 (3-4-5), 18 thick.

    A driver of 180 in its middle, 250 up the slope, 120 deep from its face, ends 120 behind the
    slope. Its lower edge is then 160 up the slope: at the height of 160 x 4/5 - 120 x 3/5 = 56, or
    38 above the bottom, which stands 18 high. 40 mm lower down the slope it would be at 24: 6 above
    the bottom, and 10 are kept.
    """
    driver = Hole(
        name="driver", kind=HoleKind.DRIVER, panel="baffle", cut_out=mm(180), depth=mm(120)
    )
    middle = replace(driver, places=(("bottom", mm(250)),))
    assert not wedge_calls(middle)
    assert not wedge_calls(replace(driver, places=(("bottom", mm(216)),)))
    assert wedge_calls(replace(driver, places=(("bottom", mm(210)),))) == [
        "The body of the driver and the bottom meet or come closer than 10 mm. Move one of them."
    ]
    framed = Battens(section=(mm(20), mm(30)), front=True)
    assert not wedge_calls(middle, battens=framed)
    near = replace(middle, places=(("bottom", mm(250)), ("left", mm(110))))
    assert wedge_calls(near, battens=framed) == [
        (
            "The body of the driver and the front frame, left meet or come closer than 10 mm. "
            "Move one of them."
        )
    ]


def test_a_handle_is_checked_against_a_leaning_baffle() -> None:
    low = replace(HANDLE, places=(("rear", mm(180)), ("bottom", mm(80))))
    assert not wedge_calls(low)
    laid = families.lay_out(WEDGE, {}, step=mm("0.5"), unit=Unit.MM)
    high = replace(HANDLE, places=(("rear", mm(180)), ("bottom", mm(300))))
    with pytest.raises(InputError, match="a slanting edge of the left side"):
        place_holes("Stage wedge", (high,), laid, mm(10), Unit.MM)


def test_a_driver_mounted_inside_reaches_further_in() -> None:
    (outside,) = place(design(), woofer(recess=0))
    (inside,) = place(design(), woofer(recess=0, mounted=Mounted.INSIDE))
    ends = [
        max(
            body.solid.interval[1]
            for body in find_bodies(each, lay_out(design()))
            if isinstance(body.solid, Rod)
        )
        for each in (outside, inside)
    ]
    assert ends[1] - ends[0] == mm("17.7")


@pytest.mark.property
@settings(max_examples=60, deadline=None)
@given(st.integers(150, 420), st.integers(120, 320))
def test_seen_from_the_front_a_driver_meets_the_same_battens_as_a_circle_does(
    up: int, across: int
) -> None:
    """shapely draws the cut-out as a polygon of 1024 sides; ties of a hundredth are left out."""
    hole = woofer(
        cut_out=mm(200),
        bolt_circle=0,
        bolts=0,
        flange=0,
        recess=0,
        fastener=Fastener.NONE,
        places=(("left", mm(across)), ("bottom", mm(up))),
    )
    laid = lay_out(FRAMED)
    (placed,) = place(FRAMED, hole)
    x, y = (at / mm(1) for at in placed.centre)
    circle = shapely.Point(x, y).buffer(100, quad_segs=256)
    said = " ".join(close_calls(FRAMED, hole, clearances=Clearances(inside=0)))
    for bar in laid.bars[:4]:
        low, high = bar.box.low, bar.box.high
        seen = shapely.box(*(value / mm(1) for value in (low[0], low[2], high[0], high[2])))
        distance = circle.distance(seen)
        overlap = circle.intersection(seen).area
        if overlap > 0.1 or distance > 0.1:
            assert (bar.name in said) == (overlap > 0)
