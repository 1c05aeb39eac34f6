"""Hole sheets: all that is printed about one hole, in the order in which it is made."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.hole_places import PlacedHole, find_chord, place_bolts
from nesting.cabinets.holes import Fastener, Mounted
from nesting.lengths import Length, Unit, format_length, inch, mm, round_to
from nesting.parts import Status

READ_TO: dict[Unit, Length] = {Unit.MM: mm("0.1"), Unit.INCH: inch("1/64")}
"""What a rule can be read to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltPlace:
    """One bolt.

    Attributes:
        number: From 1, in the order of the circle.
        distances: From the two named edges of the hole.
    """

    number: int
    distances: tuple[Length, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleSheet:
    """One hole as it is marked and made.

    Attributes:
        name: Name of the hole.
        kind: What goes into it, in a word.
        panel: The panel.
        edges: The two edges that everything is measured from.
        centre: Distances of the centre from them.
        cut_out: Diameter of the hole, 0 for a window.
        window: The hole where it is a rectangle, along the two directions of the panel.
        bolt_circle: Diameter of the circle through the bolts, 0 for none.
        flange: Outside of the flange, 0 where not given.
        recess: Depth of the recess for the flange, 0 for none.
        face: The face that is marked and that the flange lies on.
        bolts: Places of the bolts.
        chord: From one bolt to the next, for checking; 0 for none.
        when: The moment at which the two edges exist.
        order: What is done, in order.
    """

    name: str
    kind: str
    panel: str
    edges: tuple[str, str]
    centre: tuple[Length, Length]
    cut_out: Length
    window: tuple[Length, Length] | None
    bolt_circle: Length
    flange: Length
    recess: Length
    face: str
    bolts: tuple[BoltPlace, ...]
    chord: Length
    when: str
    order: tuple[str, ...]


def write_hole_sheet(placed: PlacedHole, unit: Unit) -> HoleSheet:
    """Return what is printed about one hole."""
    hole = placed.hole
    return HoleSheet(
        name=hole.name,
        kind=hole.kind.value,
        panel=placed.panel.name,
        edges=placed.edges,
        centre=placed.distances,
        cut_out=hole.cut_out,
        window=hole.window,
        bolt_circle=hole.bolt_circle,
        flange=hole.flange,
        recess=hole.recess,
        face=f"{hole.mounted.value} face",
        bolts=tuple(
            BoltPlace(number=number, distances=distances)
            for number, distances in enumerate(place_bolts(placed), start=1)
        ),
        chord=find_chord(hole),
        when=_say_when(placed),
        order=tuple(_order(placed, unit)),
    )


def _say_when(placed: PlacedHole) -> str:
    name = placed.panel.name
    if placed.panel.status is Status.MEASURE_FIRST:
        return (
            f"Mark it when the {name} has been trimmed to what was measured: before that its "
            "edges are those of the blank. Round nothing over until it is marked."
        )
    return f"Mark it on the {name} as cut, before any edge is rounded over and before glue."


def _order(placed: PlacedHole, unit: Unit) -> Iterator[str]:
    hole = placed.hole
    first, second = (
        f"{_size(distance, unit)} from the {edge} edge"
        for distance, edge in zip(placed.distances, placed.edges, strict=True)
    )
    yield f"Have the {hole.kind.value} in hand and lay it on the panel before anything is cut."
    yield f"Mark the centre on the {hole.mounted.value} face: {first}, {second}."
    if hole.recess:
        yield (
            f"Recess first, while its middle still holds the pivot: {_size(hole.flange, unit)} "
            f"across, {_size(hole.recess, unit)} deep."
        )
    if hole.window:
        across, along = hole.window
        yield f"Cut the window: {_size(across, unit)} by {_size(along, unit)}."
    else:
        yield (
            f"Cut the hole: {_size(hole.cut_out, unit)} across. Fix the disc before the last "
            "pass, so that it does not come free with the pivot on it."
        )
    if hole.bolts and hole.bolt_circle:
        chord = round_to(find_chord(hole), READ_TO[unit])
        yield (
            f"Offer up the {hole.kind.value}, then drill {hole.bolts} holes on the bolt circle of "
            f"{_size(hole.bolt_circle, unit)}; {_size(chord, unit)} from one to the "
            "next."
        )
    if hole.fastener is Fastener.T_NUTS and hole.bolts:
        face = "inside" if hole.mounted is Mounted.OUTSIDE else "outside"
        yield f"Pull {hole.bolts} T-nuts in from the {face} with a bolt, before the box is closed."


def _size(length: Length, unit: Unit) -> str:
    return format_length(length, unit)
