"""What a layout takes and leaves: sheets, leftovers, the yard's cuts, different layouts."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from nesting.job import Job
from nesting.layout import By, Cut, Layout, PartLeaf, Rect, RestLeaf, SheetLayout, walk
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Sheets of one kind in a way to buy.

    Attributes:
        stock: Name of the kind.
        count: How many.
        each: Price of one; 0 where it is owned.
        owned: Whether it stands in the garage already.
    """

    stock: str
    count: int
    each: Decimal
    owned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """A leftover worth keeping.

    Attributes:
        stock: Name of the kind of sheet it comes from.
        length: Extent along the length of that sheet.
        width: Extent along its width.
    """

    stock: str
    length: Length
    width: Length


def list_lots(job: Job, layout: Layout) -> Iterator[Lot]:
    """Yield the sheets of a layout, bought ones first."""
    counts = Counter(sheet.sheet for sheet in layout.sheets)
    for index in sorted(counts, key=lambda index: (job.sheets[index].owned, index)):
        sheet = job.sheets[index]
        yield Lot(
            stock=sheet.name,
            count=counts[index],
            each=Decimal(0) if sheet.owned else sheet.price,
            owned=sheet.owned,
        )


def list_left(job: Job, layout: Layout) -> Iterator[Left]:
    """Yield the leftovers worth keeping, in the order of the layout."""
    for used in layout.sheets:
        sheet = job.sheets[used.sheet]
        whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
        for place in walk(used.root, whole):
            if isinstance(place.node, RestLeaf) and place.node.is_offcut:
                yield Left(stock=sheet.name, length=place.rect.length, width=place.rect.width)


def count_yard_cuts(layout: Layout) -> int:
    """Return how many cuts the yard makes."""
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return sum(
        isinstance(place.node, Cut) and place.node.by is By.YARD
        for sheet in layout.sheets
        for place in walk(sheet.root, anywhere)
    )


def price_yard_cuts(job: Job, layout: Layout) -> Decimal:
    """Return what the yard is paid for its cuts."""
    return Decimal(0) if job.yard is None else job.yard.price_per_cut * count_yard_cuts(layout)


def count_layouts(job: Job, layout: Layout) -> int:
    """Return how many different ways of cutting a sheet there are; like parts count as the same."""
    return len({(sheet.sheet, tuple(_shape(job, sheet))) for sheet in layout.sheets})


def _shape(job: Job, sheet: SheetLayout) -> Iterator[tuple[object, ...]]:
    for place in walk(sheet.root, Rect(x=0, y=0, length=0, width=0)):
        match place.node:
            case Cut() as cut:
                yield place.path, cut.direction, cut.at, cut.removed, cut.by
            case PartLeaf() as leaf:
                part = job.parts[leaf.part]
                yield place.path, part.blank_length, part.blank_width, leaf.turned
            case RestLeaf():
                yield (place.path,)
