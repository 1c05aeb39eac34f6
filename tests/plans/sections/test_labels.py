"""Labels, in the order in which the pieces come free."""

from dataclasses import replace

import pytest

from nesting.layout import Layout, PartLeaf, SheetLayout
from nesting.lengths import mm
from nesting.parts import Grain, Status
from nesting.saw import Face
from nesting.sheets import SheetGrain, Trim
from plans.sections.labels import BLACKEN, front_of, make_labels, share_of
from tests.nesting.hand_made import BIRCH, SAW, job, part, strips, two_cabinets
from tests.plans.sections.helpers import worked_out

CODES = ["L1", "C1", "C2", "L2", "B1", "B2", "B3", "B4", "L3", "A1", "A2", "A3", "A4"]


def test_every_part_and_offcut_has_a_label_in_the_order_of_cutting() -> None:
    made, layout = two_cabinets()
    labels = make_labels(worked_out(made, layout))
    assert [label.code for label in labels] == CODES
    cuts = [int(label.origin.removeprefix("sheet 1, cut ")) for label in labels]
    assert cuts == sorted(cuts)


def test_a_label_carries_what_the_bench_needs() -> None:
    side = replace(
        part("Side", 562, 300, 2),
        cabinet="B",
        grain=Grain.LENGTH,
        oversize=mm(3),
        status=Status.OVERSIZE,
        to_do=("rebate the front edge",),
        note="interchangeable",
    )
    made = job(side)
    sheet = strips(made, [(mm(303), [PartLeaf(part=0, copy=0), PartLeaf(part=0, copy=1)])])
    label = make_labels(worked_out(made, Layout(sheets=(sheet,))))[1]
    assert label.code == "B1"
    assert label.copy == "1 of 2"
    assert label.name == "Side, cabinet B"
    assert (label.size, label.blank) == ("562 × 300 × 17.7", "565 × 303")
    assert (label.grain, label.grain_along_length) == ("grain along the 562", True)
    assert label.face == "this is the BACK face"
    assert label.status == "oversize +3"
    assert label.to_do == ("rebate the front edge",)
    assert label.origin == "sheet 1, cut 4"
    assert label.note == f"interchangeable; {BLACKEN}"


def test_the_label_lies_on_the_face_that_is_marked() -> None:
    made, layout = two_cabinets()
    front = replace(made, saw=replace(SAW, marked_face=Face.FRONT))
    assert {label.face for label in make_labels(worked_out(front, layout))} == {
        "this is the FRONT face"
    }


def test_an_offcut_label_says_where_the_grain_runs() -> None:
    made, layout = two_cabinets()
    label = make_labels(worked_out(made, layout))[0]
    assert (label.name, label.size, label.grain) == (
        "Offcut of birch 18",
        "2430 × 522.8 × 17.7",
        "grain along the 2430",
    )
    bare = replace(made, sheets=(replace(BIRCH, grain=SheetGrain.NONE),))
    assert make_labels(worked_out(bare, layout))[0].grain_along_length is None


def test_a_whole_sheet_that_is_a_part_needs_no_cut() -> None:
    made = job(part("Table top", 2440, 1220), sheets=[replace(BIRCH, trim=Trim())])
    layout = Layout(sheets=(SheetLayout(sheet=0, root=PartLeaf(part=0, copy=0)),))
    label = make_labels(worked_out(made, layout))[0]
    assert (label.code, label.origin) == ("A1", "sheet 1, no cut")


@pytest.mark.parametrize(
    ("name", "note", "share"),
    [
        ("Side, left", "handed: mirror image of Side, right", "left"),
        ("Side", "interchangeable", "left or right"),
        ("Top or bottom", "interchangeable", "top or bottom"),
        ("Top", "", "top"),
        ("Bottom", "", "bottom"),
        ("Baffle", "", ""),
    ],
)
def test_every_part_of_a_carcass_has_its_share_of_the_triangle(
    name: str, note: str, share: str
) -> None:
    wanted = replace(part(name, 562, 300), note=note, cabinet="A")
    assert share_of(wanted) == share
    assert share_of(replace(wanted, cabinet="")) == ""  # a plain part is of no carcass


def test_a_share_that_is_open_is_to_be_blackened() -> None:
    made, layout = two_cabinets()
    side = replace(made.parts[0], name="Side", cabinet="A")
    labels = make_labels(worked_out(replace(made, parts=(side, *made.parts[1:])), layout))
    open_ones = [label for label in labels if label.share == "left or right"]
    assert open_ones
    assert all(label.note.endswith(BLACKEN) for label in open_ones)
    assert all(BLACKEN not in label.note for label in labels if not label.share)


@pytest.mark.parametrize(
    ("allowances", "edges"),
    [
        (("left end + 2", "left end + 1", "front + 3"), ("left", "front")),
        (("edge at the baffle + 3, taken off by the bevel",), ()),
    ],
)
def test_edges_with_wood_to_spare_are_drawn_only_where_all_have_a_side(
    allowances: tuple[str, ...], edges: tuple[str, ...]
) -> None:
    made, layout = two_cabinets()
    first = replace(made.parts[0], allowances=allowances)
    labels = make_labels(worked_out(replace(made, parts=(first, *made.parts[1:])), layout))
    assert {label.spare for label in labels if label.allowances} == {edges}


@pytest.mark.parametrize(
    ("side", "face", "front"),
    [
        # Stand inside a cabinet and face its left side: its front is on your left hand.
        ("left", Face.BACK, "left"),
        ("right", Face.BACK, "right"),
        # Seen from outside it is the other way round.
        ("left", Face.FRONT, "right"),
        ("right", Face.FRONT, "left"),
    ],
)
def test_the_front_is_known_of_a_side_that_has_its_place(side: str, face: Face, front: str) -> None:
    other = "right" if side == "left" else "left"
    made, layout = two_cabinets()
    handed = replace(
        made.parts[0], name=f"Side, {side}", cabinet="A", note=f"handed: mirror image of {other}"
    )
    job_of_it = replace(
        made, parts=(handed, *made.parts[1:]), saw=replace(made.saw, marked_face=face)
    )
    labels = make_labels(worked_out(job_of_it, layout))
    known = [label for label in labels if label.front]
    assert {label.front for label in known} == {front}
    assert len(known) == handed.count
    where = "inside" if face is Face.BACK else "outside"
    assert {label.face for label in known} == {f"{face.value.upper()} face: {where}"}
    assert all(label.face.startswith("this is") for label in labels if not label.front)


def test_the_front_of_what_may_stand_on_either_side_is_ticked_by_hand() -> None:
    for name, note in (("Side", "interchangeable"), ("Top", "handed: mirror image of Bottom")):
        part_of_it = replace(part(name, 562, 300), note=note, cabinet="A")
        assert front_of(part_of_it, Face.BACK) == ""
