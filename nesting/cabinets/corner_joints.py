"""Corner joints: from four panels that overlap at the corners to four that fit together."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from nesting.cabinets.carcass import Carcass
from nesting.cabinets.joints import JointKind
from nesting.cabinets.panels import Allowance, Bevel, Cut, Panel
from nesting.cabinets.profiles import Profile, profile_of
from nesting.cabinets.space import Axis, Box
from nesting.lengths import Length, Unit, format_length

MITRE_DEG = 45.0


def join_corners(carcass: Carcass, panels: tuple[Panel, ...], unit: Unit) -> tuple[Panel, ...]:
    """Return the four panels of a carcass with their corner joints made.

    Args:
        carcass: The measures.
        panels: Sides, top and bottom as `build_carcass` lays them.
        unit: The unit of what is said about the joints.
    """
    owners = [panel for panel in panels if carcass.owns(panel)]
    others = [panel for panel in panels if not carcass.owns(panel)]
    joined = []
    for panel in panels:
        is_owner = panel in owners
        meets = others if is_owner else owners
        match carcass.design.joint.kind:
            case JointKind.MITRE:
                made = _mitre(carcass, panel, unit)
            case JointKind.BUTT:
                made = panel
            case kind:
                cuts = tuple(
                    cut
                    for other in meets
                    for cut in _cut(carcass, kind, panel, other, is_owner=is_owner)
                )
                to_do = _say(carcass, kind, unit, is_owner=is_owner)
                made = replace(panel, cuts=cuts, to_do=(*to_do, *panel.to_do))
        joined.append(replace(made, allowances=_allow(carcass, panel, is_owner=is_owner)))
    return tuple(joined)


def _cut(
    carcass: Carcass, kind: JointKind, panel: Panel, other: Panel, *, is_owner: bool
) -> Iterator[Cut]:
    """Yield the wood that is taken out of a panel where another one meets it."""
    place = panel.box.overlap(other.box)
    assert place is not None, "panels of a joint that do not reach each other"
    if kind is JointKind.FINGER:
        for number, (start, end) in enumerate(pairwise(find_finger_lines(carcass))):
            if (number % 2 == 1) is is_owner:
                yield Cut(what="finger slot", box=place.with_side(Axis.DEPTH, (start, end)))
    elif kind is JointKind.REBATE:
        if is_owner:
            yield Cut(what="rebate", box=place)
    else:
        let_in = other if is_owner else panel
        low, high = let_in.through
        middle = carcass.whole(let_in.normal) // 2
        inner = (low, low + carcass.tongue)
        outer = (low + carcass.tongue, high)
        if high < middle:
            inner, outer = (high - carcass.tongue, high), (low, high - carcass.tongue)
        taken = inner if is_owner else outer
        box = place.with_side(let_in.normal, taken)
        yield Cut(what="groove" if is_owner else "rebate", box=box)


def find_finger_lines(carcass: Carcass) -> tuple[Length, ...]:
    """Return where fingers begin and end along the depth, from the front to the rear edge."""
    start, end = carcass.depth.interval
    return (*(start + line for line in carcass.finger_lines), end)


def _mitre(carcass: Carcass, panel: Panel, unit: Unit) -> Panel:
    real = carcass.real
    low, high = panel.length.axis.ends
    bevels = tuple(
        Bevel(edge=f"{end} end", angle_deg=MITRE_DEG, shorter=real) for end in (low, high)
    )
    size = panel.length.size
    outside, inside = (format_length(each, unit) for each in (size, size - 2 * real))
    shown = format_length(real, unit)
    return replace(
        panel,
        profile=mitre_profile(panel.name, panel.box, carcass.real),
        bevels=bevels,
        to_do=(
            (
                f"bevel both ends 45°: {outside} on the outside face, {inside} on the inside "
                f"face, {shown} × tan 45° = {shown} shorter at each end. Tilt the saw so that the "
                "outside face keeps the long point; its guide offset changes with the tilt, so "
                "measure it again on a scrap"
            ),
            *panel.to_do,
        ),
    )


def mitre_profile(name: str, box: Box, real: Length) -> Profile:
    """Return the outline of a mitred panel, or of a cut in it that runs into the mitres.

    Args:
        name: Name of the panel.
        box: The box round the panel, or round the cut.
        real: Its thickness: seen from the front the inside face is twice that shorter.
    """
    (left, low), _, (right, high), _ = profile_of(box, Axis.DEPTH).corners
    match name:
        case "left side":
            corners = ((left, low), (right, low + real), (right, high - real), (left, high))
        case "right side":
            corners = ((left, low + real), (right, low), (right, high), (left, high - real))
        case "top":
            corners = ((left + real, low), (right - real, low), (right, high), (left, high))
        case _:
            corners = ((left, low), (right, low), (right - real, high), (left + real, high))
    return Profile(axis=Axis.DEPTH, corners=corners)


def _say(carcass: Carcass, kind: JointKind, unit: Unit, *, is_owner: bool) -> tuple[str, ...]:
    """Return what is to be done for a joint, in the words of the bench."""
    thick, deep, tongue, rest, fit = (
        format_length(length, unit)
        for length in (
            carcass.real,
            carcass.let_in,
            carcass.tongue,
            carcass.real - carcass.tongue,
            carcass.design.joint.fit,
        )
    )
    if kind is JointKind.REBATE:
        return (f"rebate the inside face at both ends, {thick} wide and {deep} deep",) * is_owner
    if kind is JointKind.GROOVE and is_owner:
        return (
            (
                f"groove the inside face across both ends, {tongue} wide and {deep} deep, "
                f"{rest} from the end; try the tongue in a scrap of the same sheet first"
            ),
        )
    if kind is JointKind.GROOVE:
        return (
            (
                f"rebate the outside face at both ends, {deep} wide and {rest} deep, "
                f"so that a tongue of {tongue} is left"
            ),
        )
    lines = ", ".join(format_length(line, unit) for line in carcass.finger_lines)
    first = "begins and ends with a finger" if is_owner else "begins and ends with a slot"
    return (
        (
            f"fingers at both ends, {thick} long: lines at {lines} from the front edge; this panel "
            f"{first}. Slots are {fit} wider than their finger; try the fit in a scrap"
        ),
    )


def _allow(carcass: Carcass, panel: Panel, *, is_owner: bool) -> tuple[Allowance, ...]:
    """Return what the blank has at both ends: for a bevel, or to be trimmed flush after gluing."""
    design = carcass.design
    kind = design.joint.kind
    amount, why = design.flush, "trimmed flush after gluing"
    if kind is JointKind.MITRE:
        amount, why = design.bevel_allowance, "taken off by the bevel"
    elif kind is not JointKind.FINGER and not is_owner:
        amount = 0
    if not amount:
        return ()
    axis = panel.length.axis
    return tuple(
        Allowance(edge=f"{end} end", along=axis, amount=amount, why=why) for end in axis.ends
    )
