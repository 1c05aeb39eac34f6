"""Random jobs with cabinets of all families, holes, a yard, a car and sessions, as job files.

All stock, fittings and prices are invented. A job that is refused, because a random hole lies too
near an edge, say, is no job: the next seed is taken.
"""

import random
from functools import cache
from pathlib import Path

from nesting.errors import InputError
from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job_text
from plans.plan import Plan, make_plan

NAMES = ("Box", "Wedge for the stage, left", "Schrank für Bühnenzubehör", "Caisson")


class Sizes:
    """Writes a length of so many millimetres in a unit, as somebody would choose it there."""

    def __init__(self, unit: str) -> None:
        self.unit = unit

    def __call__(self, millimetres: float) -> str:
        if self.unit == "mm":
            return f'"{round(2 * millimetres) / 2:g} mm"'
        eighths = max(1, round(millimetres / 25.4 * 8))
        whole, part = divmod(eighths, 8)
        words = " ".join(([str(whole)] if whole else []) + ([f"{part}/8"] if part else []))
        return f'"{words} in"'


def job_text(seed: int) -> str:
    """Return a random job file, the same for the same seed."""
    chance = random.Random(seed)  # noqa: S311 - repeatable samples, no secrets
    unit = chance.choice(("mm", "mm", "in"))
    size = Sizes(unit)
    hand, face = chance.choice(("left", "right")), chance.choice(("back", "front"))
    grain = chance.choice(("length", "none"))
    sheet = (
        f'[sheet]]\nname = "birch"\nmaterial = "birch plywood"\nthickness = {size(18)}\n'
        f"length = {size(2440)}\nwidth = {size(1220)}\nprice = 62\ntrim = {size(10)}\n"
        f'grain = "{grain}"'
    )
    tables = (
        f'job]\nname = "Whole job {seed}"\nunits = "{unit}"',
        f'saw]\nkerf = {size(3.2)}\nhand = "{hand}"\nmarked_face = "{face}"',
        sheet,
        f'[timber]]\nname = "pine"\nsection = [{size(20)}, {size(30)}]\nlength = {size(2400)}',
    )
    lines = [
        *(f"[{table}" for table in tables),
        *_places(chance, size),
        *_cabinet(chance, size, 0),
        *(_cabinet(chance, size, 1) if chance.random() < 0.4 else ()),
    ]
    return "\n".join(lines) + "\n"


def _places(chance: random.Random, size: Sizes) -> list[str]:
    """Return yard, car, session and covering, each in some of the jobs."""
    tables = {
        "yard": f"kerf = {size(3.2)}\nmax_cuts = {chance.randint(1, 4)}\nprice_per_cut = 1.5",
        "car": f"opening = [{size(1080)}, {size(760)}]\nfloor_length = {size(1620)}\n"
        f"arch_width = {size(1050)}",
        "session": f"minutes = {chance.choice((30, 60))}",
        "covering": f"thickness = {size(3.2)}",
    }
    return [f"[{name}]\n{text}" for name, text in tables.items() if chance.random() < 0.6]


def _cabinet(chance: random.Random, size: Sizes, number: int) -> list[str]:
    family = chance.choice(("box", "box", "wedge", "case"))
    height, width, depth = (chance.uniform(*span) for span in ((340, 800), (320, 700), (330, 500)))
    lines = [
        f'[[cabinet]]\nname = "{NAMES[chance.randrange(4)]} {number}"\nfamily = "{family}"',
        f"count = {chance.randint(1, 3)}\nheight = {size(height)}\nwidth = {size(width)}",
        f"depth = {size(depth)}",
    ]
    if family == "case":
        lines += [f'back = {{ fit = "inset", held_by = "pins" }}\nshelves = {chance.randint(1, 3)}']
        return [*lines, f"dividers = {chance.randint(1, 2)}"] if width > 500 else lines
    if family == "wedge":
        lines.append(f"top = {size(depth / 3)}\nfront = {size(height / 5)}")
        held = 'fit = "inset", held_by = "glue"'
        lines.append(f"baffle = {{ {held} }}\nback = {{ {held} }}")
    else:
        lines.append(f'baffle = {{ fit = "inset", set_back = {size(chance.choice((6, 30)))} }}')
        lines.append('back = { fit = "inset", wrapped = true }')
        lines.append(f"battens = {{ section = [{size(20)}, {size(30)}] }}")
        if chance.random() < 0.5:
            lines.append(f"braces = {{ depth = {size(100)}, count = 1 }}")
    return [*lines, *_holes(chance, size, width, height)]


def _holes(chance: random.Random, size: Sizes, width: float, height: float) -> list[str]:
    cut_out = min(width, height) * chance.uniform(0.3, 0.45)
    driver = (
        f'[[cabinet.hole]]\nname = "driver"\nfrom_top = {size(cut_out / 2 + 75)}\n'
        f"cut_out = {size(cut_out)}\nbolt_circle = {size(cut_out + 20)}\nbolts = 6\n"
        f"flange = {size(cut_out + 36)}\ndepth = {size(60)}"
    )
    handle = (
        '[[cabinet.hole]]\nname = "handle"\nkind = "handle"\npanel = "left side"\n'
        f"from_bottom = {size(130)}\nwindow = [{size(120)}, {size(80)}]\ndepth = {size(40)}"
    )
    return [hole for hole in (driver, handle) if chance.random() < 0.8]


@cache
def whole_plan(seed: int) -> Plan | None:
    """Return the plan of a random job after a short search; None where the job is refused."""
    try:
        job = read_job_text(job_text(seed), Path("whole.toml"))
    except InputError:
        return None
    return make_plan(job, solve_with_yard(job, effort=0, seed=seed))
