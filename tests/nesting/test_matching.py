"""Parts that must match, and the settings that they come off."""

from dataclasses import replace

from nesting.cut_sequence import missed_matches, order_cuts
from nesting.layout import Cut, Layout, Node, PartLeaf
from nesting.solve import solve_cheapest
from tests.nesting.hand_made import two_cabinets
from tests.nesting.search.jobs import make_job, make_part, make_sheet


def test_parts_off_one_setting_match() -> None:
    job, layout = two_cabinets()  # sides and tops are 300 wide, in two strips off one setting
    parts = tuple(replace(part, match="depth") for part in job.parts[:2]) + job.parts[2:]
    matched = replace(job, parts=parts)
    sequences = [order_cuts(matched, sheet) for sheet in layout.sheets]
    assert missed_matches(matched, layout, sequences) == ()


def test_parts_of_another_sheet_miss_their_group() -> None:
    job = make_job([make_part("side", 600, 400, 2, match="sides")], [make_sheet()])
    one = solve_cheapest(replace(job, parts=(replace(job.parts[0], count=1),)), effort=0).layout
    (sheet,) = one.sheets
    second = _with_copy(sheet.root, 1)
    layout = Layout(sheets=(sheet, replace(sheet, root=second)))
    sequences = [order_cuts(job, used) for used in layout.sheets]
    (miss,) = missed_matches(job, layout, sequences)
    assert (miss.match, miss.part, miss.count) == ("sides", 0, 1)


def _with_copy(node: Node, copy: int) -> Node:
    if isinstance(node, PartLeaf):
        return replace(node, copy=copy)
    if isinstance(node, Cut) and node.first is not None:
        return replace(node, first=_with_copy(node.first, copy))
    return node
