"""What must be true of the plan as a whole: its price, its sheets, its codes."""

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from nesting.errors import Fault
from plans.rehearsal.records import WRITTEN, PlanFile, Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT

# Prices are written to a hundredth; half of one is lost at most.
CENT = Fraction(1, 200)


def check_totals(plan: PlanFile) -> Iterator[Fault]:
    """Yield what is wrong with the plan as a whole."""
    cost = sum((sheet.price for sheet in plan.sheets), start=Fraction(0))
    if abs(cost - plan.cost) > CENT:
        yield _fault("plan", f"it costs {_money(plan.cost)}, but its sheets {_money(cost)}")
    if plan.is_complete and plan.bound > plan.cost + CENT:
        yield _fault(
            "plan", f"it costs {_money(plan.cost)}, less than its bound {_money(plan.bound)}"
        )
    codes = Counter(code for sheet in plan.sheets for code in _codes(sheet))
    for code, count in codes.items():
        if count > 1:
            yield _fault(code, f"{count} things of this plan carry this code")
    for place, sheet in enumerate(plan.sheets, start=1):
        if sheet.number != place:
            yield _fault(f"sheet {sheet.number}", f"it is number {place} of the plan")
        yield from _sheet(sheet, plan)


def _codes(sheet: Sheet) -> Iterator[str]:
    """Yield the code of every thing that a sheet is cut into and that is written on."""
    held = {row.hold for row in sheet.rows}
    yield from held
    yield from (part.code for part in sheet.parts)
    yield from (offcut.code for offcut in sheet.offcuts)


def _sheet(sheet: Sheet, plan: PlanFile) -> Iterator[Fault]:
    where = f"sheet {sheet.number}"
    real = (sheet.length, sheet.width)
    for printed, side in zip(sheet.printed_size, real, strict=True):
        if abs(printed - side) > plan.unit.half_step:
            yield _fault(
                where, f"a side is printed {plan.unit.show(printed)}, but is {plan.unit.show(side)}"
            )
    trims = dict(sheet.trim)
    for edge, printed in sheet.printed_trim:
        if abs(printed - trims[edge]) > plan.unit.half_step + WRITTEN:
            yield _fault(
                where,
                f"the trim of the {edge.value} is printed {plan.unit.show(printed)}, but is "
                f"{plan.unit.show(trims[edge])}",
            )
    first = next(other for other in plan.sheets if other.stock == sheet.stock)
    if _as_bought(first) != _as_bought(sheet):
        yield _fault(where, f"it is not like sheet {first.number}, of the same stock")


def _as_bought(sheet: Sheet) -> tuple[object, ...]:
    """Return what two sheets of one stock have in common."""
    return sheet.length, sheet.width, sheet.thickness, sheet.grain, sheet.price, sheet.trim


def _money(amount: Fraction) -> str:
    return f"{round(amount * 100) / 100:.2f}"


def _fault(where: str, what: str) -> Fault:
    return Fault(where=where, what=what, remedy=DO_NOT_CUT)
