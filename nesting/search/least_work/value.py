"""What a layout is worth: the work that it makes, then what its leftovers are good for."""

from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.cut_sequence import Sequence, minutes, missed_matches, order_cuts
from nesting.job import Job
from nesting.layout import By, Cut, Layout, Node, PartLeaf, SheetLayout
from nesting.search.least_work.leftovers import count_slivers, rate_leftovers
from nesting.search.least_work.prices import MISS, SLIVER

TOLERANCE = Decimal("0.01")
"""How much of the least minutes better leftovers may cost."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Value:
    """How good a layout is; the least is the best.

    Attributes:
        too_long: Cuts at home that are longer than the guide: they cannot be made.
        narrow: Cuts at home across a piece that is too narrow to be held.
        burden: Work at the saw in minutes, in the best order found, and what parts that miss those
            they must match and slivers count.
        leftovers: How useful the leftovers are, negative.
        minutes: The work alone.
    """

    too_long: int
    narrow: int
    burden: Decimal
    leftovers: tuple[int, ...]
    minutes: Decimal

    def is_worse_work(self, other: "Value") -> bool:
        """Return whether this asks for more minutes, and saves no cut that is hard to make."""
        hard, other_hard = (self.too_long, self.narrow), (other.too_long, other.narrow)
        return hard >= other_hard and self.minutes > other.minutes


class Scale:
    """Finds values, and remembers in which order sheets cut alike are cut."""

    def __init__(self, job: Job) -> None:
        """Know nothing yet."""
        self.job = job
        self.known: dict[SheetLayout, Sequence] = {}

    def weigh(self, layout: Layout) -> Value:
        """Return the value of a layout."""
        job = self.job
        sequences = [self._order(sheet) for sheet in layout.sheets]
        steps = [step for sequence in sequences for step in sequence.steps if step.by is By.HOME]
        work = sum((minutes(job, sequence) for sequence in sequences), Decimal(0))
        misses = sum(miss.count for miss in missed_matches(job, layout, sequences))
        slivers = sum(count_slivers(job, sheet) for sheet in layout.sheets)
        return Value(
            too_long=sum(len(sequence.too_long) for sequence in sequences),
            narrow=sum(
                min(step.piece.length, step.piece.width) < job.saw.smallest_held for step in steps
            ),
            burden=work + Decimal(MISS * misses + SLIVER * slivers) / 1000,
            leftovers=tuple(-number for number in rate_leftovers(job, layout)),
            minutes=work,
        )

    def _order(self, sheet: SheetLayout) -> Sequence:
        shape = replace(sheet, root=_forget_parts(sheet.root))
        if shape not in self.known:
            self.known[shape] = order_cuts(self.job, shape)
        return self.known[shape]


def pick_best(values: list[Value]) -> int:
    """Return which of some values is the best, where better leftovers may cost a little work."""
    best = min(values)
    most = best.burden + TOLERANCE * best.minutes
    close = [
        number
        for number, value in enumerate(values)
        if (value.too_long, value.narrow) == (best.too_long, best.narrow) and value.burden <= most
    ]
    return min(close, key=lambda number: (values[number].leftovers, values[number]))


_ANY_PART = PartLeaf(part=0, copy=0)


def _forget_parts(node: Node) -> Node:
    """Return a tree whose leaves do not tell which part they are."""
    if isinstance(node, PartLeaf):
        return _ANY_PART
    if not isinstance(node, Cut):
        return node
    return replace(
        node,
        first=None if node.first is None else _forget_parts(node.first),
        second=None if node.second is None else _forget_parts(node.second),
    )
