"""What can be wrong with a box once its sizes are known."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.carcass import Carcass
from nesting.cabinets.closing_design import Fit
from nesting.cabinets.closings import PlacedClosing
from nesting.cabinets.fillings import build_braces, closing_spans, split_closing
from nesting.cabinets.grilles import find_recess_needed, place_grille
from nesting.cabinets.joints import FEWEST_FINGERS, JointKind
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Term, add, round_size
from nesting.errors import Fault
from nesting.lengths import Length, Unit, format_length, mm

LEAST_LEFT = mm(2)
"""What a rebate or groove for a baffle or back has to leave of the panel. Judgement, no source."""


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
        yield from _find_joint_faults(carcass, unit)
        yield from _find_grille_faults(carcass, step, unit)
        yield from _find_shelf_faults(carcass, measured, step, unit)


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
    for placed, closing in (
        (carcass.front, carcass.design.baffle),
        (carcass.rear, carcass.design.back),
    ):
        where = f"cabinet {carcass.design.name!r}, {placed.name}"
        if closing is None or closing.fit is Fit.NONE:
            continue
        yield from _find_seat_faults(carcass, placed, unit)
        spans = closing_spans(carcass, placed)
        if any(round_size(span, step) <= 0 for span in spans):
            terms = max((span.low_clear + span.high_clear for span in spans), key=add)
            yield Fault(
                where=where,
                what=f"covering and clearance take {format_length(add(terms), unit)} {unit.value} "
                "of its opening, which leaves nothing",
                remedy="Check the thickness of the covering and the clearance.",
            )
        elif any(round_size(span, step) <= 0 for _, span in split_closing("", spans[0], closing)):
            height = format_length(spans[0].size, unit)
            yield Fault(
                where=where,
                what=f"gap and upper board leave nothing of its height, {height} {unit.value}",
                remedy="Make the gap or the upper board smaller.",
            )


def _find_seat_faults(carcass: Carcass, placed: PlacedClosing, unit: Unit) -> Iterator[Fault]:
    """Yield why a rebate or groove does not hold its panel, or leaves too little of the others."""
    if not placed.let_in:
        return
    where = f"cabinet {carcass.design.name!r}, {placed.name}"
    kind, deep = placed.fit.value, f"{format_length(placed.let_in, unit)} {unit.value}"
    if carcass.real - placed.let_in < LEAST_LEFT:
        thick = f"{format_length(carcass.real, unit)} {unit.value}"
        yield Fault(
            where=where,
            what=f"a {kind} {deep} deep leaves too little of the panels, which are {thick} thick",
            remedy="Give a depth of about half the thickness, or leave it out.",
        )
    taken = max(
        add(terms) for axis in (Axis.WIDTH, Axis.HEIGHT) for terms in placed.clear_ends(axis)
    )
    if taken >= placed.let_in:
        yield Fault(
            where=where,
            what=f"covering, clearance and play take {format_length(taken, unit)} {unit.value} on "
            f"one side of a {kind} {deep} deep: the {placed.name} falls through",
            remedy=f"Make the {kind} deeper, or the clearance smaller.",
        )


def _find_joint_faults(carcass: Carcass, unit: Unit) -> Iterator[Fault]:
    joint = carcass.design.joint
    where = f"cabinet {carcass.design.name!r}, joint"
    real = f"{format_length(carcass.real, unit)} {unit.value}"
    for name, length in (("depth", carcass.let_in), ("tongue", carcass.tongue)):
        if length >= carcass.real:
            yield Fault(
                where=where,
                what=f"its {name} leaves nothing of the board, which is {real} thick",
                remedy=f"Give a {name} of less than {real}; half of it is usual.",
            )
    lines = carcass.finger_lines
    is_doubled = any(a >= b for a, b in pairwise(lines))
    if joint.kind is JointKind.FINGER and (len(lines) < FEWEST_FINGERS or is_doubled):
        yield Fault(
            where=where,
            what="the depth of the carcass does not hold its fingers",
            remedy=f"Make them between the step and a third of the depth wide, at least "
            f"{FEWEST_FINGERS} of them.",
        )


def _find_grille_faults(carcass: Carcass, step: Length, unit: Unit) -> Iterator[Fault]:
    grille = carcass.design.grille
    needed, recess = find_recess_needed(carcass), add(carcass.front.before)
    where = f"cabinet {carcass.design.name!r}, grille"
    if needed > recess:
        deep, there = (format_length(length, unit) for length in (needed, recess))
        yield Fault(
            where=where,
            what=f"frame and cloth are {deep} {unit.value} thick, the recess before the baffle "
            f"is {there} deep",
            remedy=f"Set the baffle back {deep} {unit.value} or more.",
        )
    for frame in place_grille(carcass, unit):
        sides = (round_size(frame.across, step), round_size(frame.upright, step))
        if grille and min(sides) <= 2 * grille.section[1]:
            yield Fault(
                where=where,
                what="its frame fills the opening",
                remedy="Choose a smaller section, or check covering, cloth and piping.",
            )


def _find_shelf_faults(
    carcass: Carcass, measured: Mapping[Board, Length], step: Length, unit: Unit
) -> Iterator[Fault]:
    design = carcass.design
    for name, said in (("shelves", design.shelves), ("dividers", design.dividers)):
        if said is None:
            continue
        where = f"cabinet {design.name!r}, {name}"
        if said.groove >= carcass.real:
            yield Fault(
                where=where,
                what="their grooves go through the panels of the carcass",
                remedy="Give a depth of less than half the thickness; a third is usual.",
            )
        front, rear = carcass.clear_depth
        if rear - front - said.set_back < step:
            yield Fault(
                where=where,
                what="their set-back leaves nothing of them",
                remedy="Set them back less.",
            )
    yield from _find_crowding(carcass, measured, step, unit)


def _find_crowding(
    carcass: Carcass, measured: Mapping[Board, Length], step: Length, unit: Unit
) -> Iterator[Fault]:
    """Yield where shelves or dividers find no room one beside the other."""
    shelves, dividers = carcass.design.shelves, carcass.design.dividers
    where = f"cabinet {carcass.design.name!r}"
    if dividers is not None:
        real = real_thickness(dividers.board or carcass.design.board, measured)
        if carcass.across.opening - dividers.count * real < (dividers.count + 1) * step:
            yield Fault(
                where=f"{where}, dividers",
                what=f"{dividers.count} of them fill the inside width",
                remedy="Take fewer.",
            )
        if shelves is not None and 2 * shelves.groove >= real:
            yield Fault(
                where=f"{where}, shelves",
                what="grooves from both sides meet inside a divider",
                remedy="Give a depth of less than half the divider's thickness.",
            )
    if shelves is not None:
        real = real_thickness(shelves.board or carcass.design.board, measured)
        taken = sum(shelves.clear) + shelves.count * (real if shelves.clear else real + step)
        room = carcass.upright.opening
        if taken > room:
            yield Fault(
                where=f"{where}, shelves",
                what=f"they need {format_length(taken, unit)} {unit.value} of the inside height, "
                f"which is {format_length(room, unit)}",
                remedy="Take fewer, or place them lower.",
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
