"""Seats: the rebate or groove of the carcass that a baffle or back sits in.

A seat is one ring round the opening. Where it would come out at the end of a panel that runs
through it stops short, so that nothing of it is seen from outside.
"""

from dataclasses import replace

from nesting.cabinets.carcass import Carcass
from nesting.cabinets.closing_design import Fit
from nesting.cabinets.closings import PlacedClosing
from nesting.cabinets.corner_joints import mitre_profile
from nesting.cabinets.panels import Cut, Panel
from nesting.cabinets.space import Axis, Box, box_along
from nesting.cabinets.sums import Span, add, list_terms
from nesting.lengths import Unit, format_length


def cut_seats(carcass: Carcass, walls: tuple[Panel, ...], unit: Unit) -> tuple[Panel, ...]:
    """Return the panels of a carcass with the rebates and grooves of baffle and back.

    Args:
        carcass: The measures.
        walls: Sides, top and bottom, their corner joints made.
        unit: The unit of what is to be done.
    """
    for placed in (carcass.front, carcass.rear):
        if placed.let_in:
            seat = _find_seat(carcass, placed)
            walls = tuple(_cut(carcass, placed, panel, seat, unit) for panel in walls)
    return walls


def _find_seat(carcass: Carcass, placed: PlacedClosing) -> Box:
    def widen(span: Span) -> tuple[int, int]:
        low, high = span.opening_interval
        return (low - placed.let_in, high + placed.let_in)

    return box_along(
        {
            Axis.WIDTH: widen(carcass.across),
            Axis.DEPTH: carcass.seat(placed),
            Axis.HEIGHT: widen(carcass.upright),
        }
    )


def _cut(carcass: Carcass, placed: PlacedClosing, panel: Panel, seat: Box, unit: Unit) -> Panel:
    """Return a panel with its share of a seat; wood that a corner joint takes is gone already."""
    place = panel.box.overlap(seat)
    assert place is not None, "a seat goes round the whole opening"
    what = f"{placed.fit.value} for the {placed.name}"
    if panel.profile is not None:
        profile = mitre_profile(panel.name, place, placed.let_in)
        cuts: tuple[Cut, ...] = (Cut(what=what, box=place, profile=profile),)
    else:
        pieces = place.without(cut.box for cut in panel.cuts)
        cuts = tuple(Cut(what=what, box=box) for box in pieces)
    cover = [what for what in panel.to_do if what.startswith("cover ")]
    joints = [what for what in panel.to_do if what not in cover]
    said = _say(carcass, placed, panel, place, unit)
    return replace(panel, cuts=(*panel.cuts, *cuts), to_do=(*joints, said, *cover))


def _say(carcass: Carcass, placed: PlacedClosing, panel: Panel, place: Box, unit: Unit) -> str:
    """Return what is to be done, in the words of the bench."""
    end = "front" if placed is carcass.front else "rear"
    deep, off = (format_length(each, unit) for each in (placed.let_in, add(placed.before)))
    wide = format_length(place.size(Axis.DEPTH), unit)
    stops = _say_stops(panel, place, unit)
    if placed.fit is Fit.GROOVE:
        return (
            f"groove the inside face for the {placed.name}: {wide} wide, {deep} deep, {off} from "
            f"the {end} edge, {stops}; try the {placed.name} in a scrap first"
        )
    summed = f" ({list_terms('', placed.to_inside, unit).strip()})" if placed.to_inside[1:] else ""
    return (
        f"rebate the inside {end} edge for the {placed.name}: {deep} deep, {wide} wide, "
        f"{stops}{summed}"
    )


def _say_stops(panel: Panel, place: Box, unit: Unit) -> str:
    """Return how far along the panel the cut goes; mitres hide where it comes out."""
    axis = panel.length.axis
    stop = place.low[axis.index] - panel.box.low[axis.index]
    if not stop or panel.profile is not None:
        return "from end to end"
    return f"stopped {format_length(stop, unit)} before both ends, which are squared with a chisel"
