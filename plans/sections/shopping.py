"""What to buy: sheets, battens, covering and small goods."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cut_sequence import piece_mass_kg
from nesting.job import Job
from nesting.layout import Rect
from nesting.lengths import Unit
from nesting.sheets import Sheet, SheetGrain
from plans.sections.battens import BattenSection, make_batten_sections
from plans.sections.bound import Bound, plan_cost, say_bound
from plans.sections.covering import make_roll_plans
from plans.sections.numbers import show, show_kg, show_money, show_size, show_with_unit
from plans.sections.ways import WayLine
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLine:
    """Sheets of one kind to buy, or to fetch from the garage.

    Attributes:
        count: How many.
        stock: Name of the stock.
        material: Material and nominal thickness with unit.
        size: Size as text with unit.
        grain_text: "GRAIN RUNS ALONG THE 2440", or "NO GRAIN".
        each: Price of one as text, "owned" where it is in the garage.
        total: Price of all, "" where owned.
        mass: Mass of one in kilograms as text.
    """

    count: int
    stock: str
    material: str
    size: str
    grain_text: str
    each: str
    total: str
    mass: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherLine:
    """Anything else on the list: how much, what, and which parts it is for."""

    amount: str
    what: str
    purpose: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shopping:
    """The shopping list.

    Attributes:
        sheets: Lines of sheets, bought ones first.
        others: Battens, covering and small goods.
        cost: Total price as text.
        bound_text: How close to cheapest this is proven to be.
        card: What to look at when choosing sheets off the stack.
        ways: Other ways to buy, cheapest first; empty where none were looked for.
    """

    sheets: tuple[SheetLine, ...]
    others: tuple[OtherLine, ...]
    cost: str
    bound_text: str
    card: tuple[str, ...]
    ways: tuple[WayLine, ...] = ()


EDGE_DISTANCE = {Unit.MM: "50 mm", Unit.INCH: "2 in"}
"""How far from the edge the thickness is read.

References:
    EN 324-1:1993: eight readings about 50 mm from the edge, at each corner and mid-side.
"""

CARD = (
    "Diagonals: measure both. Equal diagonals, square sheet.",
    "Flatness: sight along both edges and both diagonals; leave a bowed sheet in the stack.",
    "Edges: no voids, no crushed or swollen stretches, no loose plies.",
    "Both faces: turn it over. Look for patches, stains and scratches on the good face.",
    "Corners: all four whole. Mark the best one as the home corner.",
    "Same stack for all, please: sheets of one stack are closest in thickness.",
)
"""What else to look at when choosing sheets off the stack."""


def make_shopping(worked: Worked, bound: Bound, ways: tuple[WayLine, ...] = ()) -> Shopping:
    """Return the shopping list: sheets, battens, the price and how good it is."""
    return Shopping(
        sheets=tuple(_sheet_lines(worked)),
        others=tuple(_other_lines(worked.job)),
        cost=show_money(plan_cost(worked)),
        bound_text=say_bound(worked, bound),
        card=(_thickness_line(worked.job.unit), *CARD),
        ways=ways,
    )


def _thickness_line(unit: Unit) -> str:
    return (
        f"Thickness: measure at eight places, {EDGE_DISTANCE[unit]} from the edge: at each corner "
        "and the middle of each side. Write the readings down."
    )


def _sheet_lines(worked: Worked) -> Iterator[SheetLine]:
    """Yield a line for every kind of sheet used, bought ones first."""
    job = worked.job
    counts = Counter(sheet.sequence.sheet for sheet in worked.sheets)
    for index in sorted(counts, key=lambda index: (job.sheets[index].owned, index)):
        sheet, count = job.sheets[index], counts[index]
        whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
        yield SheetLine(
            count=count,
            stock=sheet.name,
            material=f"{sheet.material} {show_with_unit(sheet.thickness, job.unit)}",
            size=f"{show_size(sheet.length, sheet.width, job.unit)} {job.unit.value}",
            grain_text=_grain_words(job, sheet),
            each="owned" if sheet.owned else show_money(sheet.price),
            total="" if sheet.owned else show_money(sheet.price * count),
            mass=show_kg(piece_mass_kg(sheet, whole)),
        )


def _grain_words(job: Job, sheet: Sheet) -> str:
    """Return the grain in words for the shop, where nothing is drawn."""
    if sheet.grain is SheetGrain.NONE:
        return "NO GRAIN"
    along = sheet.length if sheet.grain is SheetGrain.LENGTH else sheet.width
    if sheet.length == sheet.width:
        return f"GRAIN: look which {show(along, job.unit)} it runs along, and mark it"
    return f"GRAIN RUNS ALONG THE {show(along, job.unit)}"


def _other_lines(job: Job) -> Iterator[OtherLine]:
    """Yield all that is bought besides sheets: battens, covering and small goods."""
    for section in make_batten_sections(job):
        yield from _batten_lines(section)
    for roll in make_roll_plans(job):
        yield OtherLine(
            amount=roll.amount,
            what=f"{roll.title}, roll {roll.width_text} wide",
            purpose=roll.order,
        )
    for build in job.cabinets:
        for line in build.fit_out.goods if build.fit_out else ():
            yield OtherLine(
                amount=f"{line.count} ×" if line.count else "",
                what=line.name if line.count else line.text,
                purpose=build.name,
            )


def _batten_lines(section: BattenSection) -> Iterator[OtherLine]:
    """Yield the timber to buy for one section, or its length where no timber is named."""
    listed = "; ".join(section.pieces)
    if not section.buy:
        yield OtherLine(
            amount=section.total,
            what=f"batten {section.section}, in all, without saw cuts and ends",
            purpose=listed,
        )
    for number, line in enumerate(section.buy):
        price = f", {line.price}" if line.price else ""
        yield OtherLine(
            amount=f"{line.count} ×",
            what=f"{line.name}: batten {section.section}, {line.length} long{price}",
            purpose="" if number else f"{section.verdict} All lengths: page Frame and joints.",
        )
