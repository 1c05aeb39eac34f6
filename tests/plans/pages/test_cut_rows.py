from dataclasses import replace

import pytest

from nesting.lengths import Unit
from plans.pages.blocks import Block
from plans.pages.cut_rows import columns, table_rows
from plans.pages.lettering import BIG, FIGURE, NOTE
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Line, LineKind, Role, Text, TickBox
from plans.pages.strokes import strokes_of
from plans.sections.cut_table import CutRow
from tests.plans.pages.plan_samples import two_bass_cabinets

ROWS = two_bass_cabinets().rows
PLACE = columns(Unit.MM, A4.body_width)


def texts(block: Block) -> list[Text]:
    return [shape for shape in block.shapes if isinstance(shape, Text)]


def one(row: CutRow, unit: Unit = Unit.MM, paper: Paper = A4) -> Block:
    return table_rows((row,), columns(unit, paper.body_width))[0]


def heights(block: Block, role: Role) -> set[float]:
    return {text.height for text in texts(block) if text.role is role}


def test_a_row_carries_every_figure_of_its_cut() -> None:
    row = ROWS[3]
    words = {text.words for text in texts(one(row))}
    assert {row.number, row.hold, f"{row.hold_mass} kg", row.keep, row.keep_code} <= words
    assert {row.guide_left, row.guide_right, row.free_code, row.hold_size} <= words
    assert {"top", "edge"} <= words
    assert any(isinstance(shape, TickBox) for shape in one(row).shapes)


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize(
    ("keep", "unit"),
    [("380", Unit.MM), ("2249.3", Unit.MM), ("trim 10", Unit.MM), ("7 1/4", Unit.INCH)],
)
def test_the_keep_size_is_the_largest_figure_of_its_row(
    keep: str, unit: Unit, paper: Paper
) -> None:
    block = one(replace(ROWS[2], keep=keep), unit, paper)
    largest = max(text.height for text in texts(block))
    assert largest == BIG
    assert BIG in heights(block, Role.KEEP)


def test_a_long_fraction_keeps_its_whole_inches_large() -> None:
    block = one(replace(ROWS[2], keep="14 23/64"), Unit.INCH)
    keeps = {text.words: text.height for text in texts(block) if text.role is Role.KEEP}
    assert keeps["14"] == BIG
    assert keeps["23/64"] >= FIGURE


@pytest.mark.parametrize("size", ["2440 × 1220", "2249.3 × 1153.2", "48 23/64 × 23 59/64"])
def test_the_held_size_is_never_set_small_but_on_two_lines(size: str) -> None:
    block = one(replace(ROWS[2], hold_size=size))
    assert heights(block, Role.FIGURE) == {FIGURE}
    said = " ".join(text.words for text in texts(block) if text.x == PLACE.hold)
    assert size in said


@pytest.mark.parametrize(
    ("unusable", "struck"),
    [("", set()), ("left", {"L"}), ("right", {"R"}), ("both", {"L", "R"})],
)
def test_a_guide_place_that_would_lie_off_the_piece_is_struck_out(
    unusable: str, struck: set[str]
) -> None:
    block = one(replace(ROWS[2], guide_left="111", guide_right="222", unusable=unusable))
    names = {"111": "L", "222": "R"}
    assert {names[text.words] for text in texts(block) if text.is_struck} == struck
    for text in texts(block):
        assert bool(strokes_of(text)) == text.is_struck or text.role is not Role.FIGURE


def test_a_rule_stands_where_the_guide_moves_and_only_there() -> None:
    blocks = table_rows(ROWS, PLACE)
    ruled = [
        any(isinstance(shape, Line) and shape.kind is LineKind.RULE for shape in block.shapes)
        for block in blocks
    ]
    assert ruled == [not row.same_as for row in ROWS]
    assert not all(ruled)


def test_rows_of_one_setting_are_joined_by_a_bar_and_say_as_which_cut() -> None:
    blocks = table_rows(ROWS, PLACE)
    for row, block in zip(ROWS, blocks, strict=True):
        if row.same_as:
            assert f"as cut {row.same_as}" in {text.words for text in texts(block)}
            kinds = {shape.kind for shape in block.shapes if isinstance(shape, Line)}
            assert LineKind.SAME_SETTING in kinds


def test_two_people_are_called_for_in_words() -> None:
    light = one(replace(ROWS[3], people=1, remark=""))
    heavy = one(replace(ROWS[3], people=2, remark="TWO PEOPLE"))
    crowded = one(replace(ROWS[3], hold="P100", hold_mass="136.7", people=2, remark=""))
    assert not any("people" in text.words.lower() for text in texts(light))
    assert sum("people" in text.words.lower() for text in texts(heavy)) == 1
    assert sum("people" in text.words.lower() for text in texts(crowded)) == 1


def test_a_remark_stands_whole_below_its_row() -> None:
    remark = "clamp or cut by hand: 45 wide, and the piece hangs free at its far end unless held"
    block = one(replace(ROWS[3], remark=remark, people=2))
    said = " ".join(text.words for text in texts(block))
    for word in remark.capitalize().split(" "):
        assert word in said
    assert min(text.height for text in texts(block)) >= NOTE


def test_the_other_hand_swaps_the_guide_figures_and_nothing_else() -> None:
    row = ROWS[3]
    right, left = (
        {(text.words, text.x): text.y for text in texts(table_rows((row,), PLACE, (1,), sides)[0])}
        for sides in (("left", "right"), ("right", "left"))
    )
    moved = {words for (words, x), y in right.items() if left[words, x] != y}
    assert right.keys() == left.keys()
    assert moved == {"L", "R", row.guide_left, row.guide_right}
