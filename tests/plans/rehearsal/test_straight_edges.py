"""Which edges are straight, cut by cut, kept here in a book that shares no code with the project.

No final size is measured from a raw edge (common practice, no source). An edge is straight where a
cut made it, or where the job file takes nothing off it: then the user calls it good.
"""

from pathlib import Path
from typing import Any, NamedTuple

import pytest

from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.plan import make_plan
from plans.plan_file import plan_document
from tests.plans.rehearsal.real_plans import planned

Json = dict[str, Any]
NEAR = 0.002  # two figures of a plan file, each to 0.001 mm


class Piece(NamedTuple):
    """A piece on the sheet: least and greatest x and y, and which of these edges are straight."""

    at: tuple[float, float, float, float]
    is_straight: tuple[bool, bool, bool, bool]


LEFT, RIGHT, LOW, HIGH = range(4)


def is_near(one: float, other: float) -> bool:
    return abs(one - other) < NEAR


def whole(sheet: Json) -> Piece:
    trim = sheet["trim"]
    return Piece(
        at=(0, sheet["length"], 0, sheet["width"]),
        is_straight=tuple(trim[side] == 0 for side in ("left", "right", "bottom", "top")),
    )


def held_by(pieces: list[Piece], band: Json, *, is_rip: bool) -> Piece:
    """Return the piece that a cut crosses from edge to edge."""
    along, across = ((LEFT, RIGHT), (LOW, HIGH)) if is_rip else ((LOW, HIGH), (LEFT, RIGHT))
    start, end, place = (
        (band["x"], band["x"] + band["length"], band["y"])
        if is_rip
        else (band["y"], band["y"] + band["width"], band["x"])
    )
    (found,) = [
        piece
        for piece in pieces
        if is_near(piece.at[along[0]], start)
        and is_near(piece.at[along[1]], end)
        and piece.at[across[0]] - NEAR < place < piece.at[across[1]]
    ]
    return found


def cut_in_two(piece: Piece, band: Json, *, is_rip: bool) -> list[Piece]:
    low, high = (LOW, HIGH) if is_rip else (LEFT, RIGHT)
    begin = band["y"] if is_rip else band["x"]
    end = begin + (band["width"] if is_rip else band["length"])
    first_at, first = list(piece.at), list(piece.is_straight)
    second_at, second = list(piece.at), list(piece.is_straight)
    first_at[high], first[high] = begin, True
    second_at[low], second[low] = end, True
    halves = [
        Piece(at=tuple(first_at), is_straight=tuple(first)),  # type: ignore[arg-type]
        Piece(at=tuple(second_at), is_straight=tuple(second)),  # type: ignore[arg-type]
    ]
    return [half for half in halves if half.at[high] - half.at[low] > NEAR]


def edge_named(words: str, face: str) -> int:
    """Return the edge that is called "top edge" or so as it is drawn from the marked face."""
    top = LOW if face == "back" else HIGH
    return {"left": LEFT, "right": RIGHT, "top": top, "bottom": LOW + HIGH - top}[
        words.partition(" ")[0]
    ]


def check_book(sheet: Json, face: str) -> int:
    """Saw a sheet, edge by edge; return how many sizes were measured."""
    pieces, measured = [whole(sheet)], 0
    rows = {int(row["number"]): row for row in sheet["printed"]["rows"]}
    for cut in sorted(sheet["cuts"], key=lambda cut: int(cut["number"])):
        is_rip, row = cut["direction"] == "rip", rows[cut["number"]]
        piece = held_by(pieces, cut["band"], is_rip=is_rip)
        edge = edge_named(row["measure_from"], face)
        if not row["keep"].startswith("trim"):
            assert piece.is_straight[edge], f"cut {cut['number']}: {row['measure_from']} is raw"
            measured += 1
        pieces.remove(piece)
        pieces += cut_in_two(piece, cut["band"], is_rip=is_rip)
    for part in sheet["parts"]:
        place = (part["x"], part["x"] + part["length"], part["y"], part["y"] + part["width"])
        (mine,) = [p for p in pieces if all(map(is_near, p.at, place))]
        assert all(mine.is_straight), f"{part['code']} keeps a raw edge"
    return measured


@pytest.mark.parametrize("seed", range(40))
def test_every_size_is_measured_from_a_straight_edge_and_no_part_keeps_a_raw_one(seed: int) -> None:
    job, _, _, document = planned(seed)
    face = job.get("saw", {}).get("marked_face", "back")
    for sheet in document["sheets"]:
        check_book(sheet, face)


def test_an_edge_that_the_user_calls_good_is_measured_from_and_needs_no_cut() -> None:
    text = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 1220
width = 610
trim = { left = 0, bottom = 0, top = 10, right = 10 }
[[part]]
name = "Shelf"
length = 500
width = 280
count = 4
"""
    job = read_job_text(text, Path("good.toml"))
    result = solve(job, effort=0)
    (sheet,) = plan_document(job, result, make_plan(job, result))["sheets"]
    assert check_book(sheet, "back") > 0
    on_the_edge = [part for part in sheet["parts"] if 0 in (part["x"], part["y"])]
    assert on_the_edge
    raw = {**sheet, "trim": {**sheet["trim"], "left": 10, "bottom": 10}}
    with pytest.raises(AssertionError, match="raw"):
        check_book(raw, "back")
