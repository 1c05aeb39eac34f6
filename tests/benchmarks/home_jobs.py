"""Ten jobs of the size that a person cuts at home. All of them are invented.

Sheets are 2440 x 1220 mm, the kerf is 2.4 mm. Each line of parts reads name, length, width, count,
where it matters the side that runs with the grain, and in brackets what must match.
"""

from nesting.job import Job
from nesting.lengths import mm
from nesting.parts import Grain, Part
from nesting.saw import Saw
from nesting.sheets import Sheet, Trim

BOARD = "invented board"

JOBS: dict[str, tuple[int, str]] = {
    "two cabinets": (
        0,
        (
            "side 560 400 4 (depth), top or bottom 464 400 4 (depth), back 524 464 2 (front), "
            "baffle 524 464 2 (front)"
        ),
    ),
    "four cabinets": (
        10,
        (
            "side 500 350 8 (depth), top or bottom 364 350 8 (depth), back 464 364 4 (front), "
            "baffle 464 364 4 (front)"
        ),
    ),
    "three with braces": (
        10,
        (
            "side 700 450 6 (depth), top or bottom 564 450 6 (depth), back 664 564 3 (front), "
            "baffle 664 564 3 (front), brace 564 80 6"
        ),
    ),
    "two designs, tight": (
        0,
        (
            "side 480 330 6 (depth), top or bottom 404 330 6 (depth), front 444 404 3 (front), "
            "lid 444 404 3 (front), tall side 610 290 4 (tall depth), tall end 310 290 4 (tall "
            "depth), tall front 574 310 2 (tall front), tall back 574 310 2 (tall front), cleat "
            "310 60 2"
        ),
    ),
    "two designs": (
        10,
        (
            "side 450 300 8 (depth), top or bottom 334 300 8 (depth), front 414 334 4 (front), "
            "back 414 334 4 (front), small side 380 250 4 (small depth), small end 264 250 4 "
            "(small depth), small front 344 264 2 (small front), small back 344 264 2 (small "
            "front), brace 334 70 4"
        ),
    ),
    "eight stools": (
        0,
        (
            "seat 360 300 8, leg 420 280 16 (leg), rail 264 90 16 (inside width), shelf 264 240 "
            "8 (inside width)"
        ),
    ),
    "wardrobe": (
        10,
        (
            "side 2000 580 2 length (depth), divider 1960 560 1 length, top 1164 580 2 length "
            "(depth), door 1955 396 3 length, shelf 573 550 8 any, drawer side 500 160 6 any "
            "(drawer height), drawer end 518 160 6 any (drawer height), drawer bottom 518 486 3 "
            "any, plinth 1164 80 2 length, back 990 573 2 any"
        ),
    ),
    "kitchen with grain": (
        10,
        (
            "side 720 560 14 length (depth), bottom 564 560 7 length (depth), shelf 562 520 7 "
            "length, rail 564 100 14 length, door 716 297 8 length, drawer front 596 140 4 "
            "width, plinth 1800 120 2 length, end panel 870 600 2 length"
        ),
    ),
    "big mix": (
        0,
        (
            "bench side 820 500 4 (bench depth), bench shelf 1150 500 4 (bench depth), bench "
            "back 1150 380 2, crate side 520 310 12 (crate height), crate end 374 310 12 (crate "
            "height), crate base 516 374 6, ramp 1200 420 4, ramp rib 400 115 12, case side 640 "
            "280 8 (case depth), case end 333 280 8 (case depth), case front 604 333 8, lid 652 "
            "345 4, block 160 120 8"
        ),
    ),
    "drawers": (
        10,
        (
            "carcass side 900 500 2 (depth), carcass top 764 500 2 (depth), divider 764 482 3, "
            "deep side 450 220 4 (deep height), deep end 696 220 4 (deep height), shallow side "
            "450 120 8 (shallow height), shallow end 696 120 8 (shallow height), base 714 440 "
            "6, front 758 238 2, low front 758 138 4"
        ),
    ),
}


def make_home_job(name: str) -> Job:
    """Return one of the invented jobs."""
    trim, text = JOBS[name]
    sheet = Sheet(
        name="sheet",
        material=BOARD,
        thickness=mm(18),
        length=mm(2440),
        width=mm(1220),
        trim=Trim(left=mm(trim), bottom=mm(trim)),
    )
    return Job(
        name=name,
        step=mm("0.5"),
        saw=Saw(kerf=mm("2.4")),
        sheets=(sheet,),
        parts=tuple(_read_part(line) for line in text.split(", ")),
    )


def _read_part(line: str) -> Part:
    """Return the part of one line."""
    line, _, match = line.rstrip(")").partition(" (")
    words = line.split()
    grain = Grain.ANY
    if not words[-1].isdigit():
        grain = Grain(words.pop())
    length, width, count = (int(word) for word in words[-3:])
    return Part(
        name=" ".join(words[:-3]),
        length=mm(length),
        width=mm(width),
        count=count,
        grain=grain,
        material=BOARD,
        thickness=mm(18),
        match=match,
    )
