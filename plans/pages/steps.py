"""Steps with boxes to tick, in two columns: down the first, then down the second."""

from collections.abc import Sequence

from plans.pages.blocks import Block, moved, side_by_side, stack
from plans.pages.lettering import paragraph
from plans.pages.rows import TICK_COLUMN, rule, ticked

GAP = 5.0
MOST_ROWS = 6  # in one block of two columns; the next one begins below a rule


def two_columns(steps: Sequence[tuple[str, str]], width: float) -> list[Block]:
    """Return steps in blocks of two columns.

    Args:
        steps: What is done, and a warning below it or "".
        width: Room for both columns.
    """
    most = 2 * MOST_ROWS
    blocks = [_columns(steps[start : start + most], width) for start in range(0, len(steps), most)]
    return [*blocks[:1], *(stack([_rule(width), block]) for block in blocks[1:])]


def _rule(width: float) -> Block:
    return Block(height=1.6, shapes=moved((rule(width),), 0.0, 0.8))


def _columns(steps: Sequence[tuple[str, str]], width: float) -> Block:
    each = (width - GAP) / 2
    blocks = [_step(words, warning, each) for words, warning in steps]
    half = sum(block.height for block in blocks) / 2
    first: list[Block] = []
    while blocks and sum(block.height for block in first) < half:
        first.append(blocks.pop(0))
    return side_by_side([(0.0, stack(first)), (each + GAP, stack(blocks))])


def _step(words: str, warning: str, width: float) -> Block:
    step = ticked(words, width)
    if not warning:
        return step
    below = paragraph(warning, width - TICK_COLUMN, x=TICK_COLUMN, bold=True)
    return stack([step, below, Block(height=1.0)])
