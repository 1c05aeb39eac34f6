"""What goes into or onto the carcass of a box: baffle, back and braces."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.carcass import Carcass, rounded_down, turn_grain
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.closings import PlacedClosing
from nesting.cabinets.design import Along
from nesting.cabinets.panels import Allowance, Panel
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Span, Term, add
from nesting.cabinets.waiting import NO_WAIT, wait
from nesting.lengths import Length


def build_closings(carcass: Carcass) -> tuple[Panel, ...]:
    """Return the baffle and the back, as far as there are any."""
    grains = carcass.design.grains
    return tuple(
        panel
        for placed, closing, grain in (
            (carcass.front, carcass.design.baffle, grains.baffle),
            (carcass.rear, carcass.design.back, grains.back),
        )
        if closing is not None and closing.fit is not Fit.NONE
        for panel in _build_closing(carcass, placed, closing, grain)
    )


def _build_closing(
    carcass: Carcass, placed: PlacedClosing, closing: Closing, grain: Along
) -> Iterator[Panel]:
    """Yield the panel of a baffle or back, or its upper and lower board."""
    upright, across = closing_spans(carcass, placed)
    status, oversize, to_do = NO_WAIT
    to_do = ("fix to the edges of the carcass, flush all round",)
    if placed.fit is Fit.GROOVE:
        to_do = ("slide it into its groove while the carcass is glued up",)
    elif placed.fit.is_late:
        has_clearance = any(map(add, (upright.low_clear, across.low_clear)))
        status, oversize, to_do = wait(carcass.design, has_clearance=has_clearance)
    if placed.is_wrapped:
        to_do = (*to_do, "cover its face and edges")
    is_front = placed is carcass.front
    for name, height in split_closing(placed.name, upright, closing):
        yield Panel(
            name=name,
            kind=name.capitalize(),
            board=placed.board,
            normal=Axis.DEPTH,
            through=placed.through if is_front else carcass.from_rear(placed.through),
            length=height,
            width=across,
            grain=turn_grain(grain, Axis.HEIGHT),
            status=status,
            oversize=oversize,
            to_do=to_do,
            allowances=tuple(_allow(carcass, placed, name)),
        )


def closing_spans(carcass: Carcass, placed: PlacedClosing) -> tuple[Span, Span]:
    """Return height and width of a baffle or back, whether it is one board or two."""
    if placed.fit is Fit.PLANTED:
        return carcass.through(Axis.HEIGHT), carcass.through(Axis.WIDTH)
    height, width = (
        replace(
            rounded_down(opening, *placed.clear_ends(opening.axis)),
            low_let_in=placed.let_in,
            high_let_in=placed.let_in,
        )
        for opening in (carcass.upright, carcass.across)
    )
    return height, width


def split_closing(name: str, upright: Span, closing: Closing) -> list[tuple[str, Span]]:
    """Return names and heights of the boards of a baffle or back, the lower one first.

    Args:
        name: "baffle" or "back".
        upright: Its height as one board.
        closing: What the design says about it.
    """
    if not closing.gap:
        return [(name, upright)]
    both = upright.size - closing.gap
    upper = both // 2 if closing.upper is None else closing.upper
    past_top = add(upright.high_clear) - upright.high_let_in
    past_bottom = add(upright.low_clear) - upright.low_let_in
    above = Term(length=past_top + closing.gap + upper, what="above it")
    below = Term(length=past_bottom + upright.size - upper, what="below it")
    lower = replace(upright, high=(*upright.high, above), high_clear=(), high_let_in=0)
    higher = replace(upright, low=(*upright.low, below), low_clear=(), low_let_in=0)
    return [(f"{name}, lower", lower), (f"{name}, upper", higher)]


def _allow(carcass: Carcass, placed: PlacedClosing, name: str) -> Iterator[Allowance]:
    """Yield what a planted panel has at the edges that are trimmed flush after gluing."""
    if placed.fit is not Fit.PLANTED or not carcass.design.flush:
        return
    free = {f"{placed.name}, lower": "top", f"{placed.name}, upper": "bottom"}.get(name)
    for axis in (Axis.HEIGHT, Axis.WIDTH):
        for end in axis.ends:
            if end != free:
                yield Allowance(
                    edge=f"{end} edge",
                    along=axis,
                    amount=carcass.design.flush,
                    why="trimmed flush after gluing",
                )


def build_braces(carcass: Carcass, measured: Mapping[Board, Length]) -> tuple[Panel, ...]:
    """Return the braces, spread evenly over the inside height."""
    braces = carcass.design.braces
    if braces is None:
        return ()
    board = braces.board or carcass.design.board
    real = real_thickness(board, measured)
    front, rear = carcass.clear_depth
    low, high = carcass.upright.opening_interval
    gap = (high - low - braces.count * real) // (braces.count + 1)
    depth = Span(
        axis=Axis.DEPTH,
        whole=braces.depth,
        named="as designed",
        offset=(front + rear - braces.depth) // 2,
    )
    status, oversize, to_do = wait(carcass.design)
    starts = [low + gap + number * (gap + real) for number in range(braces.count)]
    return tuple(
        Panel(
            name=f"brace {number}",
            kind="Brace",
            board=board,
            normal=Axis.HEIGHT,
            through=(start, start + real),
            length=rounded_down(carcass.across),
            width=depth,
            status=status,
            oversize=oversize,
            to_do=to_do,
        )
        for number, start in enumerate(starts, start=1)
    )
