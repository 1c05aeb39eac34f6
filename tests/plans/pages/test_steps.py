"""Steps in two columns: none lost, in order down the first and then the second, about as long."""

import pytest

from plans.pages.shapes import Text, TickBox
from plans.pages.steps import GAP, MOST_ROWS, two_columns

WIDTH = 186.0


def steps(count: int) -> list[tuple[str, str]]:
    return [
        (f"{number}. Screw it on.", "After this no more: glue." if number % 5 == 0 else "")
        for number in range(1, count + 1)
    ]


@pytest.mark.parametrize("count", [1, 2, 7, 27, 48, 60])
def test_every_step_stands_once_with_its_box_and_in_order(count: int) -> None:
    numbers: list[int] = []
    boxes = 0
    for block in two_columns(steps(count), WIDTH):
        texts = [shape for shape in block.shapes if isinstance(shape, Text)]
        heads = [text for text in texts if text.words[0].isdigit()]
        in_columns = sorted(heads, key=lambda text: (text.x > WIDTH / 2, text.y))
        numbers += [int(text.words.partition(".")[0]) for text in in_columns]
        boxes += sum(isinstance(shape, TickBox) for shape in block.shapes)
    assert numbers == list(range(1, count + 1))
    assert boxes == count


def test_a_warning_stands_in_bold_below_its_own_step() -> None:
    (block,) = two_columns(steps(6), WIDTH)
    texts = [shape for shape in block.shapes if isinstance(shape, Text)]
    (warning,) = [text for text in texts if text.bold]
    (step,) = [text for text in texts if text.words.startswith("5.")]
    assert (warning.x, warning.y > step.y) == (step.x, True)


def test_the_columns_are_about_as_long_as_each_other() -> None:
    (block,) = two_columns(steps(11), WIDTH)
    middle = (WIDTH + GAP) / 2
    ends = [
        max(shape.y for shape in block.shapes if isinstance(shape, TickBox) and is_right == (
            shape.x > middle - 1))
        for is_right in (False, True)
    ]  # fmt: skip
    assert abs(ends[0] - ends[1]) < 0.2 * block.height


def test_more_steps_than_one_block_holds_make_several() -> None:
    assert len(two_columns(steps(2 * MOST_ROWS), WIDTH)) == 1
    assert len(two_columns(steps(2 * MOST_ROWS + 1), WIDTH)) == 2
