"""Shelves and dividers as panels in the inside, and the grooves that they are let into."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.carcass import Carcass, rounded_down
from nesting.cabinets.panels import Cut, Panel
from nesting.cabinets.shelving import Dividers, Shelves
from nesting.cabinets.space import Axis, Box
from nesting.cabinets.sums import Rounding, Span, Term
from nesting.cabinets.waiting import NO_WAIT, wait
from nesting.lengths import Length, Unit, format_length
from nesting.parts import Grain


def build_dividers(carcass: Carcass, measured: Mapping[Board, Length]) -> tuple[Panel, ...]:
    """Return the dividers, spread evenly over the inside width."""
    dividers = carcass.design.dividers
    if dividers is None:
        return ()
    board = dividers.board or carcass.design.board
    real = real_thickness(board, measured)
    low, high = carcass.across.opening_interval
    bay = (high - low - dividers.count * real) // (dividers.count + 1)
    starts = [low + bay + number * (bay + real) for number in range(dividers.count)]
    height = rounded_down(carcass.upright)
    height = replace(height, low_let_in=dividers.groove, high_let_in=dividers.groove)
    return tuple(
        _panel(
            carcass,
            f"divider {number}",
            "Divider",
            (Axis.WIDTH, (start, start + real)),
            height,
            dividers,
        )
        for number, start in enumerate(starts, start=1)
    )


def build_shelves(
    carcass: Carcass, dividers: tuple[Panel, ...], measured: Mapping[Board, Length], unit: Unit
) -> tuple[Panel, ...]:
    """Return the shelves of every bay.

    Args:
        carcass: The measures.
        dividers: The dividers between the bays.
        measured: Measured thicknesses.
        unit: The unit of sums.
    """
    shelves = carcass.design.shelves
    if shelves is None:
        return ()
    board = shelves.board or carcass.design.board
    real = real_thickness(board, measured)
    heights = find_shelf_heights(carcass, shelves, real)
    bays = _find_bays(carcass, dividers, shelves.groove, unit)
    places = [(height, bay) for bay in bays for height in heights]
    return tuple(
        _panel(
            carcass,
            f"shelf {number}",
            "Shelf",
            (Axis.HEIGHT, (height, height + real)),
            bay,
            shelves,
        )
        for number, (height, bay) in enumerate(places, start=1)
    )


def find_shelf_heights(carcass: Carcass, shelves: Shelves, real: Length) -> tuple[Length, ...]:
    """Return where the underside of each shelf lies, from the bottom of the box."""
    low, high = carcass.upright.opening_interval
    gap = (high - low - shelves.count * real) // (shelves.count + 1)
    clear = shelves.clear or (gap,) * shelves.count
    return tuple(low + sum(clear[: number + 1]) + number * real for number in range(shelves.count))


def _find_bays(
    carcass: Carcass, dividers: tuple[Panel, ...], groove: Length, unit: Unit
) -> tuple[Span, ...]:
    """Return the span of a shelf in each bay."""
    across = rounded_down(carcass.across)
    if not dividers:
        return (replace(across, low_let_in=groove, high_let_in=groove),)
    low, high = carcass.across.opening_interval
    real = dividers[0].through[1] - dividers[0].through[0]
    count = len(dividers)
    bay = (high - low - count * real) // (count + 1)
    inside, thick = (format_length(length, unit) for length in (high - low, real))
    starts = [low, *(panel.through[1] for panel in dividers)]
    return tuple(
        Span(
            axis=Axis.WIDTH,
            whole=bay,
            named=f"({inside} - {count} × {thick}) / {count + 1}",
            offset=start,
            low_let_in=groove,
            high_let_in=groove,
            rounding=Rounding.DOWN,
        )
        for start in starts
    )


def _panel(
    carcass: Carcass,
    name: str,
    kind: str,
    lies: tuple[Axis, tuple[Length, Length]],
    length: Span,
    said: Shelves | Dividers,
) -> Panel:
    status, oversize, to_do = wait(carcass.design)
    shelves = carcass.design.shelves
    if said.groove or (shelves is not None and shelves.groove):
        # It goes in while the carcass is put together, so it cannot wait for it. Nor can a divider
        # that carries shelves in grooves.
        status, oversize, to_do = NO_WAIT
    set_back = (Term(length=said.set_back, what="set-back"),) if said.set_back else ()
    depth = Span(
        axis=Axis.DEPTH,
        whole=carcass.whole(Axis.DEPTH),
        named="outside depth",
        low=(*carcass.to_clear(carcass.front), *set_back),
        high=carcass.to_clear(carcass.rear),
        rounding=Rounding.DOWN,
    )
    return Panel(
        name=name,
        kind=kind,
        board=said.board or carcass.design.board,
        normal=lies[0],
        through=lies[1],
        length=length,
        width=depth,
        grain=Grain.LENGTH,
        status=status,
        oversize=oversize,
        to_do=to_do,
    )


def cut_grooves(
    panels: tuple[Panel, ...], let_in: Iterable[Panel], unit: Unit
) -> tuple[Panel, ...]:
    """Return panels with the grooves that others are let into.

    Args:
        panels: Panels that may be grooved.
        let_in: Panels that go into them.
        unit: The unit of what is to be done.
    """
    goes_in = tuple(let_in)
    return tuple(_groove(panel, goes_in, unit) for panel in panels)


def _groove(panel: Panel, let_in: tuple[Panel, ...], unit: Unit) -> Panel:
    cuts, to_do = [], []
    for other in let_in:
        place = panel.box.overlap(other.box)
        if place is None or other.normal is panel.normal:
            continue
        cuts.append(Cut(what=f"groove for {other.name}", box=place))
        axis, box = other.normal, panel.box
        wide, deep, off = (
            format_length(length, unit)
            for length in (
                place.size(axis),
                place.size(panel.normal),
                place.low[axis.index] - box.low[axis.index],
            )
        )
        to_do.append(
            f"groove across for {other.name}: {wide} wide, {deep} deep, its near edge {off} from "
            f"the {axis.ends[0]} end{_say_stops(place, box, unit)}"
        )
    return replace(panel, cuts=(*panel.cuts, *cuts), to_do=(*to_do, *panel.to_do))


def _say_stops(place: Box, panel: Box, unit: Unit) -> str:
    """Return where a groove begins and ends, as far as that is not at the edge of its panel."""
    depth = Axis.DEPTH.index
    begins, ends = place.low[depth] - panel.low[depth], panel.high[depth] - place.high[depth]
    said = ""
    if begins:
        said += f", beginning {format_length(begins, unit)} from the front edge"
    if ends:
        said += f", ending {format_length(ends, unit)} from the rear edge"
    return said
