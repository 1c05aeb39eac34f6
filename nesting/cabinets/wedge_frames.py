"""Frames of battens behind the baffle and before the back of a wedge.

Battens keep their rectangular section: the wider side lies on the cabinet's side. Where a neighbour
leans towards the panel they carry, they begin as far along as it takes to clear it.
"""

from collections.abc import Iterator
from math import hypot

from nesting.cabinets.design import Corners
from nesting.cabinets.panels import Bar
from nesting.cabinets.profiles import Corner, Profile, box_of, profile_of
from nesting.cabinets.ring_shapes import find_layer
from nesting.cabinets.rings import FittedBoard
from nesting.cabinets.space import Axis, Box
from nesting.cabinets.sums import Rounding, Span, Term, add, list_terms
from nesting.cabinets.waiting import wait
from nesting.cabinets.wedge_measures import Wedge
from nesting.errors import Fault
from nesting.lengths import Length

Band = tuple[Corner, Corner, Corner, Corner]


def build_frames(wedge: Wedge) -> tuple[Bar, ...]:
    """Return the battens behind the baffle and before the back."""
    return tuple(
        bar
        for board in _list_framed(wedge)
        if (band := _find_band(wedge, board)) is not None
        for bar in _build_frame(wedge, board, band)
    )


def find_frame_faults(wedge: Wedge) -> Iterator[Fault]:
    """Yield the panels behind which a frame finds no room."""
    battens = wedge.design.battens
    for board in _list_framed(wedge):
        assert battens is not None, "a frame without battens"
        band, least = _find_band(wedge, board), 2 * battens.section[0]
        if band is None or min(_length(band), wedge.across.opening) <= least:
            yield Fault(
                where=f"cabinet {wedge.design.name!r}, battens",
                what=f"a frame behind the {board.name} finds no room",
                remedy="Choose a smaller section, or leave that frame out.",
            )


def _list_framed(wedge: Wedge) -> list[FittedBoard]:
    battens = wedge.design.battens
    if battens is None:
        return []
    wanted = {"baffle": battens.front, "back": battens.rear}
    return [board for board in wedge.standing if wanted.get(board.name)]


def _build_frame(wedge: Wedge, board: FittedBoard, whole: Band) -> Iterator[Bar]:
    """Yield four battens: two across the width, two along the slope on the sides."""
    battens = wedge.design.battens
    assert battens is not None, "a frame without battens"
    thin = battens.section[0]
    is_across = battens.corners is Corners.ACROSS
    room = _length(whole)
    batten = Term(length=thin, what="batten")
    ends = (batten,) if is_across else ()
    upright = Span(
        axis=Axis.HEIGHT,
        whole=room,
        named=f"between {board.low.neighbour} and {board.high.neighbour} behind the {board.name}",
        low=ends,
        high=ends,
        rounding=Rounding.DOWN,
    )
    sides = () if is_across else (batten,)
    across = Span(
        axis=Axis.WIDTH,
        whole=wedge.across.whole,
        named=wedge.across.named,
        low=(*wedge.across.low, *sides),
        high=(*wedge.across.high, *sides),
        rounding=Rounding.DOWN,
    )
    left, right = wedge.across.opening_interval
    between = across.interval
    cut = thin if is_across else 0
    shapes = (
        (f"at the {board.low.neighbour}", across, between, (0, thin)),
        (f"at the {board.high.neighbour}", across, between, (room - thin, room)),
        ("left", upright, (left, left + thin), (cut, room - cut)),
        ("right", upright, (right - thin, right), (cut, room - cut)),
    )
    for place, span, along, piece in shapes:
        profile = Profile(axis=Axis.WIDTH, corners=_part(whole, *piece))
        yield _bar(wedge, board, place, span, box_of(profile, along), profile)


def _bar(
    wedge: Wedge, board: FittedBoard, place: str, span: Span, box: Box, profile: Profile
) -> Bar:
    battens = wedge.design.battens
    status, oversize, _ = wait(wedge.design)
    assert battens is not None, "a frame without battens"
    is_baffle = board.name == "baffle"
    name, edges = ("front frame", "the slope") if is_baffle else ("rear frame", "the rear edge")
    direction = "across" if span.axis is Axis.WIDTH else "upright"
    return Bar(
        name=f"{name}, {place}",
        kind=f"{name}, {direction}",
        section=battens.section,
        length=span,
        box=box,
        profile=None if profile.is_same(profile_of(box, Axis.WIDTH)) else profile,
        status=status,
        oversize=oversize,
        set_back=list_terms(f"behind {edges}", wedge.closings[board.name].to_frame, wedge.unit),
    )


def _find_band(wedge: Wedge, board: FittedBoard) -> Band | None:
    """Return the longest rectangle behind a board that has room for its frame."""
    battens = wedge.design.battens
    assert battens is not None, "a frame without battens"
    number = next(at for at, each in enumerate(wedge.ring) if each.name == board.name)
    start = add(wedge.closings[board.name].to_frame)
    return find_layer(
        wedge.ring[number],
        wedge.ring[(number + 1) % len(wedge.ring)].start,
        wedge.inside,
        (start, start + battens.section[1]),
    )


def _length(band: Band) -> Length:
    (ax, ay), (bx, by), *_ = band
    return round(hypot(bx - ax, by - ay))


def _part(band: Band, start: Length, end: Length) -> Band:
    """Return a piece of a rectangle, from one place along it to another."""
    whole = _length(band)

    def at(first: Corner, last: Corner, place: Length) -> Corner:
        across, up = (round(a + (b - a) * place / whole) for a, b in zip(first, last, strict=True))
        return (across, up)

    out_low, out_high, in_high, in_low = band
    return (
        at(out_low, out_high, start),
        at(out_low, out_high, end),
        at(in_low, in_high, end),
        at(in_low, in_high, start),
    )
