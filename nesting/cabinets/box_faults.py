"""What can be wrong with a box once its sizes are known."""

from collections.abc import Iterator, Mapping

from nesting.cabinets.boards import Board
from nesting.cabinets.carcass import Carcass, rounded_down
from nesting.cabinets.design import Fit
from nesting.cabinets.fillings import build_braces
from nesting.cabinets.sums import Term, add, round_size
from nesting.errors import Fault
from nesting.lengths import Length, Unit, format_length


def find_box_faults(
    carcass: Carcass, measured: Mapping[Board, Length], step: Length, unit: Unit
) -> Iterator[Fault]:
    """Yield why a box cannot be built: no inside, or something that finds no room in it."""
    inside = list(_find_inside_faults(carcass, step, unit))
    yield from inside
    if not inside:
        yield from _find_closing_faults(carcass, step, unit)
        yield from _find_frame_faults(carcass, unit)
        yield from _find_brace_faults(carcass, measured, unit)


def _find_inside_faults(carcass: Carcass, step: Length, unit: Unit) -> Iterator[Fault]:
    where = f"cabinet {carcass.design.name!r}"
    depth = _depth_terms(carcass)
    for span, terms in (
        (carcass.upright, carcass.upright.low + carcass.upright.high),
        (carcass.across, carcass.across.low + carcass.across.high),
        (carcass.depth, depth),
    ):
        taken = add(terms)
        if span.whole - taken < step:
            name = span.axis.value
            listed = " + ".join(f"{format_length(term.length, unit)} {term.what}" for term in terms)
            yield Fault(
                where=f"{where}, {name}",
                what=f"{format_length(span.whole, unit)} {unit.value} leaves no inside: "
                f"{listed or 'nothing'} take {format_length(taken, unit)} {unit.value}",
                remedy=f"Make the {name} more than {format_length(taken, unit)} {unit.value}, "
                "or what stands in it thinner.",
            )


def _depth_terms(carcass: Carcass) -> tuple[Term, ...]:
    """Return all that stands one behind the other along the depth."""
    terms: tuple[Term, ...] = ()
    for placed in (carcass.front, carcass.rear):
        depth = carcass.frame_depth(placed)
        terms += placed.to_frame if depth else placed.to_inside
        if depth:
            terms += (Term(length=depth[1] - depth[0], what=f"batten before the {placed.name}"),)
    return terms


def _find_closing_faults(carcass: Carcass, step: Length, unit: Unit) -> Iterator[Fault]:
    for placed in (carcass.front, carcass.rear):
        spans = [rounded_down(span, placed.clear) for span in (carcass.upright, carcass.across)]
        if placed.fit is Fit.INSET and any(round_size(span, step) <= 0 for span in spans):
            taken = format_length(2 * add(placed.clear), unit)
            yield Fault(
                where=f"cabinet {carcass.design.name!r}, {placed.name}",
                what=f"covering and clearance take {taken} {unit.value} of its opening, "
                "which leaves nothing",
                remedy="Check the thickness of the covering and the clearance.",
            )


def _find_frame_faults(carcass: Carcass, unit: Unit) -> Iterator[Fault]:
    battens = carcass.design.battens
    if battens is None or not (battens.front or battens.rear):
        return
    thin = battens.section[0]
    if min(carcass.upright.opening, carcass.across.opening) <= 2 * thin:
        yield Fault(
            where=f"cabinet {carcass.design.name!r}, battens",
            what=f"two of {format_length(thin, unit)} {unit.value} fill the opening",
            remedy="Choose a smaller section, or leave the battens out.",
        )


def _find_brace_faults(
    carcass: Carcass, measured: Mapping[Board, Length], unit: Unit
) -> Iterator[Fault]:
    braces = carcass.design.braces
    if braces is None:
        return
    front, rear = carcass.clear_depth
    where = f"cabinet {carcass.design.name!r}, braces"
    if braces.depth > rear - front:
        room = f"{format_length(rear - front, unit)} {unit.value}"
        yield Fault(
            where=where,
            what=f"{format_length(braces.depth, unit)} {unit.value} is deeper than the room "
            f"between baffle and back, {room}",
            remedy=f"Make them {room} deep or less.",
        )
    panels = build_braces(carcass, measured)
    gap = panels[0].through[0] - carcass.upright.opening_interval[0]
    if gap <= 0:
        yield Fault(
            where=where,
            what=f"{braces.count} of them fill the inside height",
            remedy="Take fewer.",
        )
