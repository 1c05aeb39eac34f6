"""Jobs with defects: by hand, and made by chance."""

import random
from dataclasses import replace
from decimal import Decimal

from nesting.job import Job
from nesting.lengths import mm
from nesting.parts import Part
from nesting.sheets import Defect, Sheet, Use
from tests.nesting.hand_made import BIRCH, job

KNOT = Defect(what="knot hole", x=mm(600), y=mm(300), length=mm(80), width=mm(50))
STAIN = replace(KNOT, what="stain", use=Use.HIDDEN_PARTS)


def unsound(*defects: Defect, name: str = "birch 18, no. 1") -> Sheet:
    """Return the one sheet of birch that has some defects; it is owned."""
    return replace(BIRCH, name=name, count=1, owned=True, price=Decimal(0), defects=tuple(defects))


def chance_job(seed: int) -> Job:
    """Return a job of a few parts, some hidden, on sheets of which most have defects."""
    chance = random.Random(seed)  # noqa: S311
    parts = tuple(
        Part(
            name=f"part {number}",
            length=mm(chance.randrange(200, 900, 10)),
            width=mm(chance.randrange(80, 500, 10)),
            count=chance.randint(1, 4),
            material=BIRCH.material,
            thickness=BIRCH.thickness,
            is_hidden=chance.random() < 0.3,
        )
        for number in range(chance.randint(3, 8))
    )
    sheets = [unsound(*_defects(chance), name=f"no. {number}") for number in range(3)]
    if chance.random() < 0.5:
        sheets.append(BIRCH)
    return job(*parts, sheets=sheets)


def _defects(chance: random.Random) -> list[Defect]:
    return [
        Defect(
            x=mm(chance.randrange(2300)),
            y=mm(chance.randrange(1100)),
            length=mm(chance.randrange(10, 200)),
            width=mm(chance.randrange(10, 200)),
            use=chance.choice(list(Use)),
        )
        for _ in range(chance.randint(1, 3))
    ]
