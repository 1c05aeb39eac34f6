"""Jobs that several tests use, and random ones."""

import random
from decimal import Decimal

from nesting.job import Job
from nesting.lengths import Unit, mm
from nesting.parts import Grain, Part
from nesting.saw import Saw
from nesting.sheets import Sheet, SheetGrain, Trim

BIRCH = "birch plywood"


def make_sheet(
    name: str = "birch 18", length: int = 2440, width: int = 1220, **more: object
) -> Sheet:
    """Return a sheet; sizes in millimetres."""
    values: dict[str, object] = {"material": BIRCH, "thickness": mm(18), "price": Decimal(62)}
    return Sheet(name=name, length=mm(length), width=mm(width), **(values | more))  # type: ignore[arg-type]


def make_part(name: str, length: int, width: int, count: int = 1, **more: object) -> Part:
    """Return a part; sizes in millimetres."""
    values: dict[str, object] = {"material": BIRCH, "thickness": mm(18)}
    return Part(name=name, length=mm(length), width=mm(width), count=count, **(values | more))  # type: ignore[arg-type]


def make_job(parts: list[Part], sheets: list[Sheet], **more: object) -> Job:
    """Return a job."""
    values: dict[str, object] = {"name": "test", "step": mm("0.5")}
    return Job(parts=tuple(parts), sheets=tuple(sheets), **(values | more))  # type: ignore[arg-type]


def make_random_job(number: int) -> Job:
    """Return the random job with a number: materials, grain, trims, limits and prices mixed."""
    dice = random.Random(number)  # noqa: S311 - a test, not a lock
    stocks = [(BIRCH, mm(18)), (BIRCH, mm(12)), ("poplar plywood", mm(12))][: dice.randint(1, 3)]
    sheets = [
        _make_random_sheet(dice, f"{material} {thickness} {kind}", material, thickness)
        for material, thickness in stocks
        for kind in range(dice.randint(1, 3))
    ]
    parts = []
    for kind in range(dice.randint(1, 12)):
        material, thickness = dice.choice(stocks)
        parts.append(
            make_part(
                f"part {kind}",
                dice.randint(30, dice.choice([400, 900, 1700])),
                dice.randint(30, dice.choice([300, 900])),
                dice.choice([1, 1, 2, 4, 9]),
                material=material,
                thickness=thickness,
                grain=dice.choice(list(Grain)),
                oversize=mm(dice.choice([0, 0, 0, 6])),
            )
        )
    kerf = dice.choice([mm(0), mm("2.4"), mm(3), mm("3.2")])
    return make_job(parts, sheets, saw=Saw(kerf=kerf), unit=dice.choice(list(Unit)))


def _make_random_sheet(dice: random.Random, name: str, material: str, thickness: int) -> Sheet:
    edges = ("left", "right", "top", "bottom")
    return make_sheet(
        name,
        dice.choice([2440, 2500, 1525, 1220, 800]),
        dice.choice([1220, 1250, 1525, 600]),
        material=material,
        thickness=thickness,
        grain=dice.choice(list(SheetGrain)),
        price=dice.choice([Decimal(0), Decimal("61.90"), Decimal(35), Decimal("20.5")]),
        count=dice.choice([None, None, 1, 3]),
        owned=dice.random() < 0.2,
        trim=Trim(**{edge: mm(dice.choice([0, 0, 1, 5, 10])) for edge in edges}),
    )
