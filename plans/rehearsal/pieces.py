"""Virtual wood: pieces, and what the blade does to them.

Wood is a shapely polygon with whole nanometres as co-ordinates; they stay exact, being below
2 to the power 53.
"""

from dataclasses import dataclass, replace

from shapely import Polygon, box

from plans.rehearsal.printed import Nanometres
from plans.rehearsal.records import Edge, Rect, Row

WASTE = "WASTE"
_OPPOSITE = {
    Edge.X_LOW: Edge.X_HIGH,
    Edge.X_HIGH: Edge.X_LOW,
    Edge.Y_LOW: Edge.Y_HIGH,
    Edge.Y_HIGH: Edge.Y_LOW,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece of wood.

    Attributes:
        code: What is written on it.
        wood: What it is, sawn by the printed figures. Empty where nothing is left.
        planned: What the plan's numbers say it is.
        raw: Its edges that are neither cut at home nor good from the factory.
        from_yard: Those of them that the yard cut.
    """

    code: str
    wood: Polygon
    planned: Rect
    raw: frozenset[Edge]
    from_yard: frozenset[Edge] = frozenset()

    @property
    def size(self) -> tuple[Nanometres, Nanometres]:
        """Extent of the wood along x and along y."""
        if self.wood.is_empty:
            return 0, 0
        x, y, x_end, y_end = self.wood.bounds
        return round(x_end - x), round(y_end - y)

    def extent_from(self, edge: Edge) -> Nanometres:
        """Return how far the wood reaches from an edge."""
        return self.size[0 if edge.is_across_x else 1]

    def planned_from(self, edge: Edge) -> Nanometres:
        """Return how far the planned piece reaches from an edge."""
        return self.planned.length if edge.is_across_x else self.planned.width


def band_of(row: Row) -> tuple[Nanometres, Nanometres]:
    """Return where the kerf begins and ends, as distances from the edge measured from.

    For a keep size the kerf lies beyond the fresh edge, for a trim on the raw side of it.
    """
    if row.keep.is_trim:
        return row.keep.size - row.kerf, row.keep.size
    return row.keep.size, row.keep.size + row.kerf


def planned_band(piece: Piece, row: Row) -> tuple[Nanometres, Nanometres]:
    """Return where the drawn band begins and ends, as distances from the edge measured from."""
    planned, band = piece.planned, row.band
    low, high = (planned.y, planned.y_end) if row.is_rip else (planned.x, planned.x_end)
    start, end = (band.y, band.y_end) if row.is_rip else (band.x, band.x_end)
    return (start - low, end - low) if row.edge.is_low else (high - end, high - start)


def saw_piece(piece: Piece, row: Row, off: Nanometres = 0) -> tuple[Piece, Piece]:
    """Return what stands before and beyond the blade, seen from the edge measured from.

    The blade runs right across the piece and turns the wood of one kerf to dust, less where it
    runs off the piece. Both edges that it leaves are straight, but those of a yard cut are only
    rough: they count as raw.

    Args:
        piece: The piece in hand.
        row: The cut.
        off: By how much it lies too far from the edge measured from.
    """
    edge = row.edge
    start, end = band_of(row)
    near_wood, far_wood = _saw_wood(piece.wood, edge, start + off, end + off)
    low, high = _split_planned(piece.planned, row)
    near_planned, far_planned = (low, high) if edge.is_low else (high, low)
    near = _with_edge(replace(piece, wood=near_wood, planned=near_planned), _OPPOSITE[edge], row)
    return near, _with_edge(replace(piece, wood=far_wood, planned=far_planned), edge, row)


def _with_edge(piece: Piece, edge: Edge, row: Row) -> Piece:
    """Return a piece one edge of which a row has just cut."""
    if row.is_at_home:
        return replace(piece, raw=piece.raw - {edge}, from_yard=piece.from_yard - {edge})
    return replace(piece, raw=piece.raw | {edge}, from_yard=piece.from_yard | {edge})


def _saw_wood(
    wood: Polygon, edge: Edge, start: Nanometres, end: Nanometres
) -> tuple[Polygon, Polygon]:
    x, y, x_end, y_end = wood.bounds
    if edge is Edge.X_LOW:
        near, far = (x, y, x + start, y_end), (x + end, y, x_end, y_end)
    elif edge is Edge.X_HIGH:
        near, far = (x_end - start, y, x_end, y_end), (x, y, x_end - end, y_end)
    elif edge is Edge.Y_LOW:
        near, far = (x, y, x_end, y + start), (x, y + end, x_end, y_end)
    else:
        near, far = (x, y_end - start, x_end, y_end), (x, y, x_end, y_end - end)
    return _common(wood, near), _common(wood, far)


def _common(wood: Polygon, bounds: tuple[Nanometres, ...]) -> Polygon:
    """Return the wood within bounds; empty where the bounds hold nothing."""
    x, y, x_end, y_end = bounds
    if x >= x_end or y >= y_end:
        return Polygon()
    inside = wood.intersection(box(*bounds))
    return inside if inside.area > 0 else Polygon()


def _split_planned(planned: Rect, row: Row) -> tuple[Rect, Rect]:
    """Return the planned rectangles below and above a row's band; either may have no extent."""
    band = row.band
    if row.is_rip:
        return (
            replace(planned, width=band.y - planned.y),
            replace(planned, y=band.y_end, width=planned.y_end - band.y_end),
        )
    return (
        replace(planned, length=band.x - planned.x),
        replace(planned, x=band.x_end, length=planned.x_end - band.x_end),
    )
