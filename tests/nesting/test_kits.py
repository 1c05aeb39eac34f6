"""Cabinets complete soon: the order of sheets and who gets which part."""

from collections import Counter
from dataclasses import replace
from itertools import permutations

from nesting.checks import check_layout
from nesting.cut_sequence import order_cuts
from nesting.cut_sequence.sequence import Sequence
from nesting.job import Job
from nesting.kits import find_kits, find_most_open, order_for_kits
from nesting.layout import Layout, PartLeaf, Rect, walk
from nesting.lengths import mm
from nesting.parts import Part
from tests.nesting.hand_made import job, part, strips

SIDE, TOP = part("Side", 600, 380, 2), part("Top", 400, 380, 2)


def cabinets(*letters: str) -> tuple[Part, ...]:
    return tuple(replace(kind, cabinet=letter) for letter in letters for kind in (SIDE, TOP))


def sequences(made: Job, layout: Layout) -> tuple[Sequence, ...]:
    return tuple(order_cuts(made, sheet) for sheet in layout.sheets)


def by_kind(*letters: str) -> tuple[Job, Layout]:
    """Return a plan that cuts all sides first, then all tops; six parts on a sheet."""
    made = job(*cabinets(*letters))
    sides, tops = (
        [
            PartLeaf(part=index, copy=copy)
            for index, each in enumerate(made.parts)
            if each.name == name
            for copy in range(each.count)
        ]
        for name in ("Side", "Top")
    )
    sheets = [
        strips(made, [(mm(380), row[0:3]), (mm(380), row[3:6])])
        for leaves in (sides, tops)
        for row in (leaves[start : start + 6] for start in range(0, len(leaves), 6))
    ]
    return made, Layout(sheets=tuple(sheets))


def placed(layout: Layout) -> Counter[tuple[int, int]]:
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return Counter(
        (place.node.part, place.node.copy)
        for sheet in layout.sheets
        for place in walk(sheet.root, anywhere)
        if isinstance(place.node, PartLeaf)
    )


def test_every_part_is_still_cut_once_and_no_cut_changes() -> None:
    made, layout = by_kind(*"ABCDEF")
    ordered = order_for_kits(made, layout)
    assert placed(ordered) == placed(layout)
    assert check_layout(made, ordered) == check_layout(made, layout) == ()
    settings = sorted(sequence.settings for sequence in sequences(made, layout))
    assert sorted(sequence.settings for sequence in sequences(made, ordered)) == settings


def test_the_first_whole_cabinet_comes_as_early_as_any_order_of_sheets_allows() -> None:
    made, layout = by_kind(*"ABCDEF")
    ordered = order_for_kits(made, layout)
    first = find_kits(made, ordered, sequences(made, ordered))[0].closes
    assert first is not None
    earliest = []
    for order in permutations(layout.sheets):
        again = replace(layout, sheets=order)
        found = find_kits(made, again, sequences(made, again))[0].closes
        assert found is not None
        earliest.append(found[0])
    assert first[0] == min(earliest) == 2


def test_fewer_parts_lie_about_than_in_the_order_by_kind() -> None:
    made, layout = by_kind(*"ABCDEF")
    ordered = order_for_kits(made, layout)
    # by kind all twelve sides wait for the first two tops
    assert find_most_open(made, layout, sequences(made, layout)) >= 14
    # a sheet of sides, a sheet of tops: 6 + 2 until the first is closed
    assert find_most_open(made, ordered, sequences(made, ordered)) == 8


def test_the_kits_list_all_parts_in_the_order_of_cutting() -> None:
    made, layout = by_kind(*"ABC")
    ordered = order_for_kits(made, layout)
    kits = find_kits(made, ordered, sequences(made, ordered))
    assert [(kit.cabinet, kit.parts, kit.sheets) for kit in kits] == [
        ("A", 4, (1, 2)),
        ("B", 4, (1, 2)),
        ("C", 4, (1, 2)),
    ]
    assert all(len(kit.stack) == kit.parts and kit.closes for kit in kits)
    assert [kit.closes for kit in kits] == sorted(kit.closes or (9, 9) for kit in kits)


def test_a_cabinet_with_a_part_that_has_no_place_never_closes() -> None:
    made, layout = by_kind(*"ABC")
    more = replace(made, parts=(*made.parts, *cabinets("D")))
    ordered = order_for_kits(more, layout)
    kits = {kit.cabinet: kit for kit in find_kits(more, ordered, sequences(more, ordered))}
    assert kits["D"].closes is None
    assert all(kits[letter].closes for letter in "ABC")


def test_cabinets_of_other_sizes_keep_their_own_parts() -> None:
    made, layout = by_kind(*"ABC")
    other = replace(
        made, parts=(*made.parts[:4], *(replace(each, note="other") for each in made.parts[4:]))
    )
    ordered = order_for_kits(other, layout)
    anywhere = Rect(x=0, y=0, length=0, width=0)
    for sheet, before in zip(ordered.sheets, layout.sheets, strict=True):
        for now, was in zip(walk(sheet.root, anywhere), walk(before.root, anywhere), strict=True):
            if isinstance(now.node, PartLeaf) and isinstance(was.node, PartLeaf):
                kinds = [other.parts[node.part] for node in (now.node, was.node)]
                assert kinds[0].note == kinds[1].note


def test_a_job_without_cabinets_stays_as_it_is() -> None:
    made = job(SIDE)
    layout = Layout(
        sheets=(strips(made, [(mm(380), [PartLeaf(part=0, copy=0), PartLeaf(part=0, copy=1)])]),)
    )
    assert order_for_kits(made, layout) is layout
