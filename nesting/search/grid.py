"""From a job to problems on a whole-number grid, one for each material and thickness."""

from collections.abc import Iterable
from decimal import Decimal
from math import gcd, lcm

from nesting.job import Job
from nesting.lengths import Length
from nesting.parts import Grain, Part
from nesting.search.problem import LONG_ALONG_X, LONG_ALONG_Y, PartKind, Problem, SheetKind
from nesting.sheets import Sheet, SheetGrain

FINEST_AREA = 100  # sheet areas count in hundredths of the largest one
BOUGHT = 16  # how much more bought area counts than own, where money is equal
LARGEST_WEIGHT = 2**60  # the kernels add weights in 64 bits


def list_groups(job: Job) -> tuple[tuple[str, Length], ...]:
    """Return the materials and thicknesses that the parts ask for, in the order of the parts."""
    return tuple(dict.fromkeys((part.material, part.thickness) for part in job.parts))


def list_ways(part: Part, sheet: Sheet) -> tuple[bool, ...]:
    """Return the values of `turned` that the grain allows, the plain one first."""
    if part.grain is Grain.ANY or sheet.grain is SheetGrain.NONE:
        return (False, True)
    return ((part.grain is Grain.LENGTH) is (sheet.grain is SheetGrain.WIDTH),)


def fits_turned(part: Part, sheet: Sheet, *, turned: bool) -> bool:
    """Return whether one part fits the usable sheet as it lies."""
    along_x, along_y = part.blank_length, part.blank_width
    if turned:
        along_x, along_y = along_y, along_x
    return along_x <= sheet.usable_length and along_y <= sheet.usable_width


def fits(part: Part, sheet: Sheet) -> bool:
    """Return whether a part fits a sheet in a way that its grain allows."""
    return any(fits_turned(part, sheet, turned=turned) for turned in list_ways(part, sheet))


def make_problem(job: Job, material: str, thickness: Length) -> Problem | None:
    """Return the problem of one material and thickness, or None where nothing of it fits.

    Parts that fit no sheet and sheets that fit no part are left out. The grid step is the greatest
    common divisor of the lengthened part sizes; sheets are rounded down to it, which loses
    nothing, because every row of parts is a whole number of steps.
    """
    group = [
        index
        for index, sheet in enumerate(job.sheets)
        if (sheet.material, sheet.thickness) == (material, thickness) and sheet.count != 0
    ]
    wanted = [
        index
        for index, part in enumerate(job.parts)
        if (part.material, part.thickness) == (material, thickness)
        and any(fits(part, job.sheets[sheet]) for sheet in group)
    ]
    used = [
        index for index in group if any(fits(job.parts[part], job.sheets[index]) for part in wanted)
    ]
    if not used:
        return None
    kerf = job.saw.kerf
    parts = [job.parts[index] for index in wanted]
    grid = gcd(*(side + kerf for part in parts for side in (part.blank_length, part.blank_width)))
    kinds = _make_kinds(job, wanted, used, grid)
    copies = sum(kind.copies for kind in kinds)
    prices, price_step = scale_prices([job.sheets[index].price for index in used])
    sheets = _make_sheets(job, used, grid, copies, prices)
    return Problem(grid=grid, price_step=price_step, kinds=kinds, sheets=sheets)


def _make_kinds(
    job: Job, wanted: Iterable[int], used: list[int], grid: int
) -> tuple[PartKind, ...]:
    """Return the part kinds, the largest first."""
    members: dict[tuple[int, int, tuple[int, ...]], list[tuple[int, int]]] = {}
    for index in wanted:
        part = job.parts[index]
        sides = (
            (part.blank_length + job.saw.kerf) // grid,
            (part.blank_width + job.saw.kerf) // grid,
        )
        ways = tuple(_pack_ways(part, job.sheets[sheet]) for sheet in used)
        members.setdefault((max(sides), min(sides), ways), []).append((index, part.count))
    kinds = [
        PartKind(
            long=long,
            short=short,
            ways=ways,
            copies=sum(count for _, count in parts),
            members=tuple(parts),
        )
        for (long, short, ways), parts in members.items()
    ]
    return tuple(sorted(kinds, key=lambda kind: (-kind.area, -kind.long, kind.ways)))


def _pack_ways(part: Part, sheet: Sheet) -> int:
    """Return the ways in which a part may lie and fits, as the sum of their flags."""
    ways = 0
    for turned in list_ways(part, sheet):
        if fits_turned(part, sheet, turned=turned):
            is_long_along_x = (part.blank_length >= part.blank_width) is not turned
            if part.blank_length == part.blank_width:
                is_long_along_x = True
            ways |= LONG_ALONG_X if is_long_along_x else LONG_ALONG_Y
    return ways


def _make_sheets(
    job: Job, used: list[int], grid: int, copies: int, prices: list[int]
) -> tuple[SheetKind, ...]:
    """Return the sheet kinds in the order of the job."""
    sheets = [job.sheets[index] for index in used]
    weights = weigh_sheets(sheets, prices, copies)
    return tuple(
        SheetKind(
            sheet=index,
            length=(sheet.usable_length + job.saw.kerf) // grid,
            width=(sheet.usable_width + job.saw.kerf) // grid,
            price=price,
            weight=weight,
            count=copies if sheet.count is None else min(sheet.count, copies),
            grain={SheetGrain.NONE: 0, SheetGrain.LENGTH: 1, SheetGrain.WIDTH: 2}[sheet.grain],
        )
        for index, sheet, price, weight in zip(used, sheets, prices, weights, strict=True)
    )


def weigh_sheets(sheets: list[Sheet], prices: list[int], copies: int) -> list[int]:
    """Return what one sheet of each kind counts, so that the smaller sum is the better plan.

    Money decides; where it is equal, less bought area; then less area and fewer sheets. With
    prices so fine that the sums would not fit 64 bits, prices are rounded up to a coarser step.
    """
    largest = max(sheet.length * sheet.width for sheet in sheets)
    small = []
    for sheet in sheets:
        area = -(-FINEST_AREA * sheet.length * sheet.width // largest)
        small.append(area * (1 if sheet.owned else BOUGHT) + 1)
    step = copies * max(small) + 1
    while max(prices) * step * copies > LARGEST_WEIGHT:
        prices = [-(-price // 2) for price in prices]
    weights = [price * step + extra for price, extra in zip(prices, small, strict=True)]
    common = gcd(*weights)
    return [weight // common for weight in weights]


def scale_prices(prices: Iterable[Decimal]) -> tuple[list[int], Decimal]:
    """Return prices as whole numbers of a step, and the step.

    >>> scale_prices([Decimal("62.00"), Decimal("15.5"), Decimal(0)])
    ([4, 1, 0], Decimal('15.50'))
    """
    listed = list(prices)
    ratios = [price.as_integer_ratio() for price in listed]
    scale = lcm(*(denominator for _, denominator in ratios))
    whole = [numerator * (scale // denominator) for numerator, denominator in ratios]
    common = gcd(*whole) or 1
    steps = [number // common for number in whole]
    step = next((price / n for price, n in zip(listed, steps, strict=True) if n), Decimal(1))
    return steps, step
