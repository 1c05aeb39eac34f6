"""The plan file: the numbers of a plan, and the texts that the rehearsal saws from."""

import json
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from nesting.job import Job
from nesting.layout import Direction, Layout, PartLeaf, SheetLayout, Unplaced
from nesting.lengths import Unit, inch, mm
from nesting.parts import Grain, Status
from nesting.saw import Face
from nesting.sheets import Trim
from plans.plan import Figures, make_plan
from plans.plan_file import dump, plan_document, to_mm
from plans.rehearsal.rehearse import rehearse
from tests.nesting.hand_made import (
    BIRCH,
    SAW,
    guillotine_jobs,
    job,
    part,
    row,
    strips,
    trimmed,
    two_cabinets,
)


def text_of(made: Job, layout: Layout, bound: str = "0") -> str:
    figures = Figures(layout=layout, bound=Decimal(bound))
    return dump(plan_document(made, figures, make_plan(made, figures)))


def document_of(made: Job, layout: Layout, bound: str = "0") -> dict[str, Any]:
    """Return the document as another program reads it: numbers as exact decimals."""
    document: dict[str, Any] = json.loads(text_of(made, layout, bound), parse_float=Decimal)
    return document


Box = tuple[Fraction, Fraction, Fraction, Fraction]
"""Least x, least y, greatest x, greatest y."""


def box(table: dict[str, Any]) -> Box:
    x, y, length, width = (Fraction(table[key]) for key in ("x", "y", "length", "width"))
    return x, y, x + length, y + width


def assert_sawn(document: dict[str, Any]) -> None:
    """Saw every sheet by its bands alone, exactly: each crosses one whole piece that exists."""
    for sheet in document["sheets"]:
        pieces = [(Fraction(0), Fraction(0), Fraction(sheet["length"]), Fraction(sheet["width"]))]
        for cut in sheet["cuts"]:
            band = box(cut["band"])
            axis = 1 if cut["direction"] == "rip" else 0
            (piece,) = [one for one in pieces if is_crossed(one, band, axis)]
            pieces.remove(piece)
            below, above = list(piece), list(piece)
            below[axis + 2], above[axis] = band[axis], band[axis + 2]
            for x, y, x_end, y_end in (below, above):
                if x < x_end and y < y_end:
                    pieces.append((x, y, x_end, y_end))
        for thing in [*sheet["parts"], *sheet["offcuts"]]:
            pieces.remove(box(thing))


def is_crossed(piece: Box, band: Box, axis: int) -> bool:
    other = 1 - axis
    spans = (band[other], band[other + 2]) == (piece[other], piece[other + 2])
    low, high = piece[axis], piece[axis + 2]
    return spans and low <= band[axis] <= band[axis + 2] <= high and band[axis] < high


def jobs() -> Iterator[tuple[str, Job, Layout]]:
    made, layout = two_cabinets()
    yield "two cabinets", made, layout
    yield "good face up", replace(made, saw=replace(SAW, marked_face=Face.FRONT)), layout
    side, top, brace = made.parts
    grown = replace(side, length=mm(559), width=mm(297), oversize=mm(3), status=Status.OVERSIZE)
    yield "oversize", replace(made, parts=(grown, top, brace)), layout
    cabinet = tuple(replace(one, cabinet="B", grain=Grain.LENGTH) for one in made.parts)
    yield "a cabinet with grain", replace(made, parts=cabinet), layout
    unread = replace(BIRCH, measured=())
    yield "unmeasured", replace(made, sheets=(unread,)), layout

    bare = replace(BIRCH, trim=Trim())
    flush = job(part("Table top", 2440, 1220), sheets=[bare])
    yield "no cut", flush, Layout(sheets=(SheetLayout(sheet=0, root=PartLeaf(part=0, copy=0)),))

    thin = replace(BIRCH, trim=Trim(left=mm(2), bottom=mm(1), right=mm(10)))
    shelf = job(part("Shelf", 562, 300, 2), sheets=[thin])
    leaves = [PartLeaf(part=0, copy=0), PartLeaf(part=0, copy=1)]
    yield "trim below the kerf", shelf, Layout(sheets=(strips(shelf, [(mm(300), leaves)]),))

    sharp = job(part("Shelf", 562, 300, 2), sheets=[bare], saw=replace(SAW, kerf=0))
    yield "no kerf", sharp, Layout(sheets=(strips(sharp, [(mm(300), leaves)]),))

    inches = replace(
        BIRCH,
        thickness=inch("23/32"),
        measured=(),
        length=inch(96),
        width=inch(48),
        trim=Trim(left=inch("1/4"), bottom=inch("1/4"), right=inch("1/4"), top=inch("1/4")),
    )
    box_side = replace(
        part("Side", 1, 1, 2), length=inch("22 1/8"), width=inch("11 5/8"), thickness=inch("23/32")
    )
    saw = replace(SAW, kerf=inch("3/32"), base_left=inch("1 1/2"), base_right=inch("5 1/8"))
    american = replace(job(box_side, sheets=[inches], saw=saw), unit=Unit.INCH)
    strip = strips(american, [(inch("11 5/8"), leaves)])
    yield "inches", american, Layout(sheets=(strip,))

    gap = Unplaced(part=0, count=2, reason="longer than every sheet")
    yield "nothing placed", job(part("Beam", 2600, 100, 2)), Layout(sheets=(), unplaced=(gap,))


CASES = list(jobs())
NAMES = [name for name, _, _ in CASES]


@pytest.mark.parametrize(("made", "layout"), [case[1:] for case in CASES], ids=NAMES)
def test_the_rehearsal_accepts_what_is_printed(made: Job, layout: Layout) -> None:
    document = json.loads(text_of(made, layout))
    assert [str(fault) for fault in rehearse(document).faults] == []


@pytest.mark.parametrize(("made", "layout"), [case[1:] for case in CASES], ids=NAMES)
def test_the_bands_saw_every_part_and_offcut_exactly(made: Job, layout: Layout) -> None:
    assert_sawn(document_of(made, layout))


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(guillotine_jobs(most_cuts=12), st.sampled_from(Face))
def test_any_tree_of_cuts_is_written_and_rehearsed(made: tuple[Job, Layout], face: Face) -> None:
    made_job = replace(made[0], saw=replace(made[0].saw, marked_face=face))
    assert_sawn(document_of(made_job, made[1]))
    document = json.loads(text_of(made_job, made[1]))
    faults = [str(fault) for fault in rehearse(document).faults]
    # Random cuts do not mind what can be guided; everything else must hold.
    assert [fault for fault in faults if "guide is" not in fault] == []


@pytest.mark.property
@settings(max_examples=500, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(guillotine_jobs(most_cuts=40))
def test_many_trees_of_cuts_are_written_exactly(made: tuple[Job, Layout]) -> None:
    assert_sawn(document_of(*made))


def test_the_document_carries_what_the_next_session_needs() -> None:
    document = document_of(*two_cabinets(), bound="62")
    assert document["format"] == "setout plan"
    assert document["version"] == 1
    assert (document["job"], document["unit"], document["marked_face"]) == (
        "Test shelves",
        "mm",
        "back",
    )
    assert document["saw"] == {
        "kerf": Decimal("2.4"),
        "base_left": 38,
        "base_right": 130,
        "guide_length": 2700,
        "lift_limit_kg": 20,
    }
    assert (document["cost"], document["bound"], document["minutes"]) == (62, 62, 47)
    assert document["unplaced"] == []


def test_a_sheet_and_a_part_as_the_design_gives_them() -> None:
    sheet = document_of(*two_cabinets())["sheets"][0]
    assert {key: sheet[key] for key in ("number", "stock", "thickness", "measured", "trim")} == {
        "number": 1,
        "stock": "birch 18",
        "thickness": 18,
        "measured": Decimal("17.7"),
        "trim": {"left": 10, "right": 10, "top": 10, "bottom": 10},
    }
    side = next(one for one in sheet["parts"] if one["code"] == "A1")
    assert side == {
        "code": "A1",
        "name": "Side",
        "x": 10,
        "y": 10,
        "length": 562,
        "width": 300,
        "turned": False,
        "grain": "any",
        "finished": [562, 300],
    }
    assert sheet["cuts"][0] == {
        "number": 1,
        "direction": "rip",
        "band": {"x": 0, "y": Decimal("7.6"), "length": 2440, "width": Decimal("2.4")},
        "by": "home",
        "kerf": Decimal("2.4"),
    }


def test_the_printed_texts_stand_beside_the_numbers() -> None:
    printed = document_of(*two_cabinets())["sheets"][0]["printed"]
    assert printed["size"] == "2440 × 1220"
    assert printed["rows"][0] == {
        "number": "1",
        "hold": "S1",
        "hold_size": "2440 × 1220",
        "direction": "rip",
        "measure_from": "top edge",
        "keep": "trim 10",
        "keep_code": "P1",
        "guide_left": "-30.4",
        "guide_right": "140",
        "unusable": "left",
        "free_code": "WASTE",
        "setting": 1,
    }
    assert {
        "code": "A1",
        "finished": "562 × 300",
        "blank": "562 × 300",
        "thickness": "17.7",
        "status": "final",
    } in printed["parts"]
    assert printed["offcuts"][0] == {"code": "L1", "size": "2430 × 522.8"}


def test_a_turned_part_gives_its_own_length_first() -> None:
    made = job(part("Brace", 80, 400))
    sheet = strips(made, [(mm(80), [PartLeaf(part=0, copy=0, turned=True)])])
    document = document_of(made, Layout(sheets=(sheet,)))["sheets"][0]
    assert (document["parts"][0]["length"], document["parts"][0]["width"]) == (400, 80)
    assert document["parts"][0]["turned"] is True
    assert document["printed"]["parts"][0]["finished"] == "80 × 400"


def test_parts_of_a_cabinet_are_named_with_it_and_plain_parts_keep_their_name() -> None:
    made, layout = two_cabinets()
    side, top, brace = made.parts
    mixed = replace(made, parts=(replace(side, cabinet="A"), top, brace))
    names = {one["name"] for one in document_of(mixed, layout)["sheets"][0]["parts"]}
    assert names == {"Side, cabinet A", "Top", "Brace"}


def test_what_is_not_placed_is_listed_with_the_reason() -> None:
    gap = Unplaced(part=0, count=2, reason="longer than every sheet")
    document = document_of(job(part("Beam", 2600, 100, 2)), Layout(sheets=(), unplaced=(gap,)))
    assert document["unplaced"] == [
        {"name": "Beam", "count": 2, "reason": "longer than every sheet"}
    ]
    assert document["sheets"] == []


@given(st.integers(0, 10**13))
def test_millimetres_in_the_file_are_exact_to_the_nanometre(length: int) -> None:
    text = json.dumps(to_mm(length))
    assert Fraction(text) * 1_000_000 == length


def test_the_same_plan_gives_the_same_bytes() -> None:
    assert text_of(*two_cabinets()) == text_of(*two_cabinets())


def test_letters_beyond_ascii_stand_as_they_are() -> None:
    made, layout = two_cabinets()
    assert "Küchenregal" in text_of(replace(made, name="Küchenregal"), layout)


def test_a_sheet_not_measured_says_so() -> None:
    made, layout = two_cabinets()
    unread = replace(made, sheets=(replace(BIRCH, measured=()),))
    sheet = document_of(unread, layout)["sheets"][0]
    assert sheet["measured"] is None
    assert sheet["printed"]["parts"][0]["thickness"] == "18"


def test_five_hundred_parts_on_many_sheets_are_written() -> None:
    made = job(part("Slat", 200, 40, 500))
    leaves = [PartLeaf(part=0, copy=copy) for copy in range(500)]
    rows = [leaves[start : start + 10] for start in range(0, 500, 10)]
    sheets = tuple(
        strips(made, [(mm(40), row_of) for row_of in rows[start : start + 25]]) for start in (0, 25)
    )
    document = document_of(made, Layout(sheets=sheets))
    assert_sawn(document)
    codes = [one["code"] for sheet in document["sheets"] for one in sheet["parts"]]
    assert len(set(codes)) == 500


def test_nested_rows_of_one_direction_are_one_sum() -> None:
    made = job(part("Slat", 200, 40, 3))
    kerf = made.saw.kerf
    inner = row(
        Direction.RIP, mm(1210), [(mm(40), PartLeaf(part=0, copy=copy)) for copy in range(3)], kerf
    )
    layout = Layout(sheets=(SheetLayout(sheet=0, root=trimmed(BIRCH, kerf, inner)),))
    wide = replace(made, parts=(replace(made.parts[0], length=mm(2430)),))
    sums = document_of(wide, layout)["sheets"][0]["printed"]["sums"]
    assert sums == [{"piece": "P2", "text": "1210 = 40 + 2.4 + 40 + 2.4 + 40 + 2.4 + 1082.8 left"}]
