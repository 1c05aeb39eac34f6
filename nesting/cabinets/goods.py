"""Goods: what is bought beside sheets and battens, counted from the solids."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from nesting.cabinets.construction import Construction
from nesting.cabinets.contacts import find_contacts
from nesting.cabinets.ends import find_closings, is_inset
from nesting.cabinets.fittings import Hardware
from nesting.cabinets.fixing_joints import LOOSE, list_solids
from nesting.cabinets.fixings import FixingRow
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Fastener, HoleKind
from nesting.cabinets.space import Axis
from nesting.lengths import Length, Unit, format_length, format_run


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingLine:
    """One line of the list of small goods, for all cabinets of a design.

    Attributes:
        name: What is bought.
        count: How many, 0 for what is bought by length.
        length: How much, for what is bought by length; 0 for what is counted.
        text: The line in words.
    """

    name: str
    count: int = 0
    length: Length = 0
    text: str


def list_goods(
    construction: Construction,
    holes: tuple[PlacedHole, ...],
    rows: tuple[FixingRow, ...],
    hardware: Hardware,
    *,
    cabinets: int,
    unit: Unit,
) -> Iterator[FixingLine]:
    """Yield screws, T-nuts with bolts, fittings, hardware and the length of glued joints."""
    counts: Counter[str] = Counter()
    for row in rows:
        counts[f"screws {format_length(row.length, unit)} {unit.value}"] += len(row.positions)
    for placed in holes:
        hole = placed.hole
        if hole.fastener is Fastener.T_NUTS:
            counts["T-nuts"] += hole.bolts
            counts[f"bolts for the {hole.kind.value}s"] += hole.bolts
        elif hole.fastener is Fastener.SCREWS:
            counts[f"screws for the {hole.kind.value}s"] += hole.bolts
        if hole.kind not in (HoleKind.CABLE, HoleKind.PORT):
            counts[f"{hole.kind.value}s"] += 1
    counts["handles"] += hardware.handles
    counts["feet"] += hardware.feet
    counts["corner pieces"] += hardware.corners
    for name, count in counts.items():
        if count:
            yield FixingLine(name=name, count=count * cabinets, text=f"{count * cabinets} × {name}")
    glued = find_glued(construction) * cabinets
    text = f"Glue for joints {format_run(glued, unit)} long in all"
    yield FixingLine(name="glue", length=glued, text=text)


def find_glued(construction: Construction) -> Length:
    """Return the length of all glued joints of one cabinet.

    Everything that touches, is let in or is mitred is glued, but for an inset baffle or back, which
    is screwed to its frame or held as the builder says.
    """
    removable = {
        panel.name for panel in find_closings(construction) if is_inset(construction, panel)
    }
    removable |= {bar.name for bar in construction.bars if bar.name.startswith(LOOSE)}
    solids = [solid for solid in list_solids(construction) if solid[0] not in removable]
    let_in = [
        max(common.size(axis) for axis in Axis)
        for (_, box), (_, other) in combinations(solids, 2)
        if (common := box.overlap(other))
    ]
    return sum(contact.length for contact in find_contacts(solids)) + sum(let_in)


def find_hardware_warnings(
    construction: Construction, hardware: Hardware, unit: Unit
) -> Iterator[str]:
    """Yield what is wrong with the places of feet, next to corner pieces and to each other."""
    room = hardware.foot_inset - hardware.foot // 2
    least = hardware.corner_reach if hardware.corners else 0
    if hardware.feet and room < least:
        yield (
            f"A foot begins {format_length(room, unit)} {unit.value} from the edge, and the corner "
            f"pieces reach {format_length(least, unit)} {unit.value}. Set the feet further in."
        )
    width, depth, _ = construction.outside
    if hardware.feet and 2 * hardware.foot_inset + hardware.foot > min(width, depth):
        yield "The feet of opposite sides meet under the cabinet. Set them further out."
