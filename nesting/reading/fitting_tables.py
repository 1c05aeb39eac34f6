"""The tables of a [[cabinet]] that say what is fitted to it: holes, screws, rolls, ways out."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Final

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
from nesting.errors import InputError
from nesting.job import Assumption
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.tables import Table
from nesting.reading.values import as_choice, with_unit

MOST_PIECES: Final = 100
MOST_DEGREES: Final = Decimal(360)
PAIR: Final = 2
EDGES: Final = ("left", "right", "bottom", "top", "front", "rear")
USUAL_FASTENERS: Final = {
    HoleKind.DRIVER: Fastener.T_NUTS,
    HoleKind.HANDLE: Fastener.SCREWS,
    HoleKind.CONNECTOR: Fastener.SCREWS,
}
_INCH_SCREWS: Final = Screws(
    diameter=inch("5/32"),
    spacing=inch(6),
    first=inch(2),
    margin=inch("3/16"),
)
_INCH_ROLL: Final = Roll(
    width=0, sold_by=inch(18), overlap=inch("1 1/4"), turn_in=inch(2), spare=inch(4)
)
_INCH_FITTINGS: Final = Fittings(
    clearances=Clearances(inside=inch("7/16"), prongs=inch("1/8"), edge=inch("7/16")),
    assembly=AssemblyWishes(hand=inch(4), reach=inch("19 1/2")),
    hardware=Hardware(foot=inch("1 5/8"), foot_inset=inch("2 3/4"), corner_reach=inch("1 13/16")),
    disc_kerf=inch("3/8"),
    pivot=inch("1/4"),
)
"""Of inch jobs: on an inch rule, and never on the unsafe side of those in millimetres."""


def read_fittings(table: Table) -> Fittings:
    """Return what a table [[cabinet]] says of fittings; stand-ins where faults were recorded."""
    disc = table.table("discs")
    usual = _INCH_FITTINGS if table.unit is Unit.INCH else Fittings()
    fittings = Fittings(
        holes=_read_holes(table),
        clearances=_read_clearances(table.table("clearances"), usual.clearances),
        ways=tuple(_read_way(each) for each in table.tables("way_out")),
        assembly=_read_assembly(table.table("assembly"), usual.assembly),
        roll=_read_roll(table.table("roll")),
        cloth=_read_roll(table.table("cloth")),
        screws=_read_screws(table.table("screws")),
        hardware=_read_hardware(table.table("hardware"), usual.hardware),
        disc_kerf=disc.length("kerf", usual.disc_kerf, may_be_zero=True),
        pivot=disc.length("pivot", usual.pivot, may_be_zero=True),
    )
    disc.finish()
    return fittings


def assume_fittings(name: str, fittings: Fittings, table: Table) -> Iterator[Assumption]:
    """Yield what is taken for granted about the fittings of one cabinet, as far as it matters."""
    unit = table.unit
    clear, wishes = fittings.clearances, fittings.assembly
    if fittings.holes:
        for key, length, what in (
            ("inside", clear.inside, "between fittings and all else inside"),
            ("prongs", clear.prongs, "between prongs of T-nuts and the edge of the hole"),
            ("edge", clear.edge, "between fittings and the edge of their panel"),
        ):
            yield Assumption(
                name=f"{name}: kept {what}",
                value=with_unit(length, unit),
                is_default=not table.table("clearances").has(key),
                check="Hold the fittings in their places before anything is glued.",
                is_choice=True,
            )
    if fittings.holes or wishes.damping or wishes.wiring:
        hand, reach = (with_unit(length, unit) for length in (wishes.hand, wishes.reach))
        inner = table.table("assembly")
        yield Assumption(
            name=f"{name}: a hand passes an opening, and reaches in",
            value=f"{hand}, {reach}",
            is_default=not (inner.has("hand") and inner.has("reach")),
            check="Try it with the hand that will do it.",
        )
    for key, roll in (("roll", fittings.roll), ("cloth", fittings.cloth)):
        if roll is not None:
            yield Assumption(
                name=f"{name}: turned in at each edge ({key})",
                value=with_unit(roll.turn_in, unit),
                is_default=not table.table(key).has("turn_in"),
                check="Fold a scrap over the edge and into the opening.",
                is_choice=True,
            )
    if fittings.screws is not None:
        yield Assumption(
            name=f"{name}: from screw to screw",
            value=with_unit(fittings.screws.spacing, unit),
            is_default=not table.table("screws").has("spacing"),
            check="Compare with what the maker of the screws advises.",
            is_choice=True,
        )


def _read_holes(table: Table) -> tuple[Hole, ...]:
    found: list[Hole] = []
    for number, inner in enumerate(table.tables("hole"), start=1):
        hole = _read_hole(inner, number)
        if hole is not None and any(each.name == hole.name for each in found):
            inner.fault(f"the name {hole.name!r} is taken already", "Name each hole.", "name")
        elif hole is not None:
            found.append(hole)
    return tuple(found)


def _read_hole(inner: Table, number: int) -> Hole | None:
    """Return one hole, or None after recording its faults."""
    kind = inner.choice("kind", HoleKind, HoleKind.DRIVER)
    bolts = inner.whole("bolts", 0, most=MOST_PIECES)
    usual = USUAL_FASTENERS.get(kind, Fastener.NONE) if bolts else Fastener.NONE
    window = _read_pair(inner, "window")
    sizes = {key: inner.length(key, 0) for key in ("cut_out", "bolt_circle", "flange", "nominal")}
    depths = {
        key: inner.length(key, 0, may_be_zero=True)
        for key in ("recess", "depth", "magnet", "basket", "wall")
    }
    is_inch = inner.unit is Unit.INCH
    try:
        hole = Hole(
            name=inner.text("name", f"{kind.value} {number}"),
            kind=kind,
            panel=inner.text("panel", "baffle"),
            places=tuple(
                (edge, inner.length(f"from_{edge}")) for edge in EDGES if inner.has(f"from_{edge}")
            ),
            window=window,
            bolts=bolts,
            bolt_hole=inner.length("bolt_hole", inch("3/16") if is_inch else mm(5)),
            start_deg=inner.number("start_angle", Decimal(0), most=MOST_DEGREES),
            confirmed=inner.flag("confirmed"),
            mounted=inner.choice("mounted", Mounted, Mounted.OUTSIDE),
            fastener=inner.choice("fastener", Fastener, usual),
            prongs=inner.length("prongs", inch("3/4") if is_inch else mm(19)),
            mass_kg=inner.number("mass_kg", Decimal(0)),
            litres=inner.number("litres") if inner.has("litres") else None,
            gives=inner.text("gives", ""),
            **sizes,
            **depths,
        )
    except InputError as error:
        for fault in error.faults:
            key = fault.where.rsplit(", ", 1)[-1]
            inner.fault(fault.what, fault.remedy, key if inner.has(key) else "")
        hole = None
    inner.finish()
    return hole if inner.is_sound else None


def _read_pair(table: Table, key: str) -> tuple[Length, Length] | None:
    sizes = table.lengths(key)
    if not sizes:
        return None
    if len(sizes) != PAIR:
        table.fault("two sizes are needed", f"Write {key} = [200, 100], say.", key)
        return None
    return sizes[0], sizes[1]


def _read_clearances(inner: Table, usual: Clearances) -> Clearances:
    clearances = Clearances(
        inside=inner.length("inside", usual.inside, may_be_zero=True),
        prongs=inner.length("prongs", usual.prongs, may_be_zero=True),
        edge=inner.length("edge", usual.edge, may_be_zero=True),
    )
    inner.finish()
    return clearances


def _read_way(inner: Table) -> Way:
    kind = inner.choice("kind", WayKind, WayKind.DOOR)
    is_corner = kind is WayKind.CORNER
    way = Way(
        name=inner.text("name"),
        kind=kind,
        width=inner.length("width"),
        height=inner.length("height", 0 if is_corner else None),
        length=inner.length("length", 0 if kind is WayKind.DOOR else None),
    )
    inner.finish()
    return way


def _read_assembly(inner: Table, usual: AssemblyWishes) -> AssemblyWishes:
    wishes = AssemblyWishes(
        baffle_from=inner.choice("baffle_from", LoadsFrom, usual.baffle_from),
        damping=inner.flag("damping"),
        wiring=inner.flag("wiring"),
        items=tuple(_read_item(each) for each in inner.tables("item")),
        hand=inner.length("hand", usual.hand),
        reach=inner.length("reach", usual.reach),
    )
    inner.finish()
    return wishes


def _read_item(inner: Table) -> InsideItem:
    item = InsideItem(name=inner.text("name"), size=_read_pair(inner, "size") or (mm(1), mm(1)))
    if not inner.has("size"):
        inner.fault("'size' is missing", "Give its two smaller sizes, such as size = [150, 60].")
    inner.finish()
    return item


def _read_roll(inner: Table) -> Roll | None:
    if inner.is_absent:
        return None
    usual = _INCH_ROLL if inner.unit is Unit.INCH else Roll(width=0)
    roll = Roll(
        width=inner.length("width"),
        sold_by=inner.length("sold_by", usual.sold_by),
        pattern=inner.choice("pattern", Pattern, usual.pattern),
        overlap=inner.length("overlap", usual.overlap, may_be_zero=True),
        turn_in=inner.length("turn_in", usual.turn_in, may_be_zero=True),
        spare=inner.length("spare", usual.spare, may_be_zero=True),
        no_seam=_read_faces(inner),
    )
    inner.finish()
    return roll


def _read_faces(inner: Table) -> tuple[BandFace, ...]:
    """Return the faces under no_seam; a lone one will do."""
    if not inner.has("no_seam"):
        return ()
    value = inner.values["no_seam"]
    found = []
    for each in value if isinstance(value, list) else [value]:
        try:
            found.append(as_choice(each, BandFace))
        except InputError as error:
            inner.fault(error.faults[0].what, error.faults[0].remedy, "no_seam")
    return tuple(dict.fromkeys(found))


def _read_screws(inner: Table) -> Screws | None:
    if inner.is_absent:
        return None
    usual = _INCH_SCREWS if inner.unit is Unit.INCH else Screws()
    screws = Screws(
        battens=inner.length("battens", 0),
        closings=inner.length("closings", 0),
        carcass=inner.choice("carcass", CarcassScrews, usual.carcass),
        carcass_length=inner.length("carcass_length", 0),
        diameter=inner.length("diameter", usual.diameter),
        spacing=inner.length("spacing", usual.spacing),
        first=inner.length("first", usual.first),
        margin=inner.length("margin", usual.margin, may_be_zero=True),
        round_over=inner.length("round_over", 0, may_be_zero=True),
    )
    inner.finish()
    return screws


def _read_hardware(inner: Table, usual: Hardware) -> Hardware:
    hardware = Hardware(
        feet=inner.whole("feet", 0, most=MOST_PIECES),
        foot=inner.length("foot", usual.foot),
        foot_inset=inner.length("foot_inset", usual.foot_inset),
        foot_height=inner.length("foot_height", 0, may_be_zero=True),
        corners=inner.whole("corners", 0, most=MOST_PIECES),
        corner_reach=inner.length("corner_reach", usual.corner_reach),
        handles=inner.whole("handles", 0, most=MOST_PIECES),
        projection=inner.length("projection", 0, may_be_zero=True),
    )
    inner.finish()
    return hardware
