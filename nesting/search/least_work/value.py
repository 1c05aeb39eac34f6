"""What a layout is worth: the work that it makes, then what its leftovers are good for."""

from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.layout import Cut, Layout, Node, PartLeaf, SheetLayout
from nesting.search.least_work.leftovers import rate_leftovers


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Value:
    """How good a layout is; the least is the best.

    Attributes:
        too_long: Cuts at home that are longer than the guide: they cannot be made.
        minutes: Work at the saw, in the best order found.
        leftovers: How useful the leftovers are, negative.
    """

    too_long: int
    minutes: Decimal
    leftovers: tuple[int, ...]


class Scale:
    """Finds values, and remembers what sheets cut alike take."""

    def __init__(self, job: Job) -> None:
        """Know nothing yet."""
        self.job = job
        self.known: dict[SheetLayout, tuple[int, Decimal]] = {}

    def weigh(self, layout: Layout) -> Value:
        """Return the value of a layout."""
        sheets = [self._weigh_sheet(sheet) for sheet in layout.sheets]
        return Value(
            too_long=sum(too_long for too_long, _ in sheets),
            minutes=sum((time for _, time in sheets), Decimal(0)),
            leftovers=tuple(-number for number in rate_leftovers(self.job, layout)),
        )

    def _weigh_sheet(self, sheet: SheetLayout) -> tuple[int, Decimal]:
        """Return the cuts longer than the guide and the minutes of one sheet."""
        shape = replace(sheet, root=_forget_parts(sheet.root))
        if shape not in self.known:
            sequence = order_cuts(self.job, shape)
            self.known[shape] = (len(sequence.too_long), minutes(self.job, sequence))
        return self.known[shape]


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
