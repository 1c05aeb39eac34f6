"""Frames: four battens round an opening, which an inset panel rests against."""

from dataclasses import dataclass, replace

from nesting.cabinets.design import Battens, Corners
from nesting.cabinets.panels import Bar, Shared
from nesting.cabinets.space import Axis, Interval, box_along
from nesting.cabinets.sums import Rounding, Span, Term
from nesting.lengths import Length
from nesting.parts import Status


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """One frame before it is made.

    Attributes:
        name: "front frame" or "rear frame".
        battens: Section and corners.
        across: The opening from side to side.
        upright: The opening from bottom to top.
        depth: Where the frame begins and ends along the depth.
        set_back: How that came about, in words.
        status: Final, or measured from the standing carcass.
        oversize: How much longer the battens are cut at first.
        seen: Width of a batten as one looks at the opening; None for its thin side.
    """

    name: str
    battens: Battens
    across: Span
    upright: Span
    depth: Interval
    set_back: str
    status: Status
    oversize: Length
    seen: Length | None = None


def build_frame(frame: Frame) -> tuple[tuple[Bar, ...], tuple[Shared, ...]]:
    """Return the four battens of a frame and the corners where mitred ones meet."""
    corners = frame.battens.corners
    thin = frame.battens.section[0] if frame.seen is None else frame.seen
    across = frame.across if corners is not Corners.UPRIGHT else _shorten(frame.across, thin)
    upright = frame.upright if corners is not Corners.ACROSS else _shorten(frame.upright, thin)
    low, high = frame.upright.interval
    left, right = frame.across.interval
    bars = (
        _bar(frame, "bottom", "across", across, (low, low + thin)),
        _bar(frame, "top", "across", across, (high - thin, high)),
        _bar(frame, "left", "upright", upright, (left, left + thin)),
        _bar(frame, "right", "upright", upright, (right - thin, right)),
    )
    if corners is not Corners.MITRED:
        return bars, ()
    shared = [
        Shared(first=first.name, second=second.name, box=place)
        for first in bars[:2]
        for second in bars[2:]
        if (place := first.box.overlap(second.box))
    ]
    return bars, tuple(shared)


def _shorten(span: Span, thin: Length) -> Span:
    batten = Term(length=thin, what="batten")
    return replace(span, low=(*span.low, batten), high=(*span.high, batten), rounding=Rounding.DOWN)


def _bar(frame: Frame, place: str, direction: str, span: Span, other: Interval) -> Bar:
    other_axis = Axis.HEIGHT if span.axis is Axis.WIDTH else Axis.WIDTH
    mitred = ", ends mitred" if frame.battens.corners is Corners.MITRED else ""
    return Bar(
        name=f"{frame.name}, {place}",
        kind=f"{frame.name}, {direction}{mitred}",
        section=frame.battens.section,
        length=span,
        box=box_along({span.axis: span.interval, other_axis: other, Axis.DEPTH: frame.depth}),
        status=frame.status,
        oversize=frame.oversize,
        set_back=frame.set_back,
    )
