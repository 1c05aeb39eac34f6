"""Sawing a virtual piece, against arithmetic by hand."""

import pytest
from shapely import box

from plans.rehearsal.pieces import Piece, band_of, saw_piece
from plans.rehearsal.printed import KeepSize
from plans.rehearsal.records import Edge, Rect, Row

MM = 1_000_000
ALL = frozenset(Edge)


def piece() -> Piece:
    """Return 100 by 60 mm of wood at (20, 10), raw all round."""
    return Piece(
        code="P1",
        wood=box(20 * MM, 10 * MM, 120 * MM, 70 * MM),
        planned=Rect(x=20 * MM, y=10 * MM, length=100 * MM, width=60 * MM),
        raw=ALL,
    )


def cut_from(edge: Edge, keep: int, band: Rect, *, is_trim: bool = False) -> Row:
    return Row(
        number=1,
        hold="P1",
        hold_size=(100 * MM, 60 * MM),
        is_rip=not edge.is_across_x,
        edge=edge,
        keep=KeepSize(is_trim=is_trim, size=keep * MM),
        keep_code="P2",
        guides=None,
        unusable="",
        free_code="P3",
        setting=1,
        band=band,
        kerf=3 * MM,
        is_at_home=True,
    )


@pytest.mark.parametrize(
    ("edge", "band", "near", "far", "opposite"),
    [
        (Edge.X_LOW, (60, 10, 3, 60), (20, 10, 60, 70), (63, 10, 120, 70), Edge.X_HIGH),
        (Edge.X_HIGH, (77, 10, 3, 60), (80, 10, 120, 70), (20, 10, 77, 70), Edge.X_LOW),
        (Edge.Y_LOW, (20, 50, 100, 3), (20, 10, 120, 50), (20, 53, 120, 70), Edge.Y_HIGH),
        (Edge.Y_HIGH, (20, 27, 100, 3), (20, 30, 120, 70), (20, 10, 120, 27), Edge.Y_LOW),
    ],
)
def test_a_cut_at_40_from_each_edge(
    edge: Edge,
    band: tuple[int, ...],
    near: tuple[int, ...],
    far: tuple[int, ...],
    opposite: Edge,
) -> None:
    x, y, length, width = (side * MM for side in band)
    row = cut_from(edge, 40, Rect(x=x, y=y, length=length, width=width))
    kept, free = saw_piece(piece(), row)
    assert kept.wood.bounds == tuple(side * MM for side in near)
    assert free.wood.bounds == tuple(side * MM for side in far)
    for one in (kept, free):
        planned = one.planned
        assert one.wood.bounds == (planned.x, planned.y, planned.x_end, planned.y_end)
    assert kept.raw == ALL - {opposite}
    assert free.raw == ALL - {edge}


def test_nothing_falls_free_where_the_blade_runs_off() -> None:
    row = cut_from(Edge.X_LOW, 98, Rect(x=118 * MM, y=10 * MM, length=2 * MM, width=60 * MM))
    kept, free = saw_piece(piece(), row)
    assert kept.size == (98 * MM, 60 * MM)
    assert free.wood.is_empty
    assert free.size == (0, 0)


def test_the_kerf_of_a_trim_lies_on_the_raw_side() -> None:
    band = Rect(x=20 * MM, y=17 * MM, length=100 * MM, width=3 * MM)
    row = cut_from(Edge.Y_LOW, 10, band, is_trim=True)
    assert band_of(row) == (7 * MM, 10 * MM)
    strip, rest = saw_piece(piece(), row)
    assert strip.wood.bounds == (20 * MM, 10 * MM, 120 * MM, 17 * MM)
    assert rest.wood.bounds == (20 * MM, 20 * MM, 120 * MM, 70 * MM)
    assert rest.raw == ALL - {Edge.Y_LOW}
