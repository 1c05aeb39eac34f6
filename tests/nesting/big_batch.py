"""A batch for a small workshop: eight types of cabinet, about 500 parts. All of it is invented."""

from dataclasses import replace
from decimal import Decimal

from nesting.cabinets.boards import Board
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.expand import expand
from nesting.cabinets.letters import name_cabinets
from nesting.job import Job
from nesting.lengths import Unit, mm
from nesting.sheets import Sheet, Trim
from nesting.terms import Terms

BIRCH = Sheet(
    name="birch 18",
    material="birch plywood",
    thickness=mm(18),
    length=mm(2440),
    width=mm(1220),
    price=Decimal(70),
    trim=Trim(left=mm(10), right=mm(10), top=mm(10), bottom=mm(10)),
)
POPLAR = replace(
    BIRCH, name="poplar 12", material="poplar plywood", thickness=mm(12), price=Decimal(38)
)
TYPES = (
    (12, 600, 400, 350),
    (12, 720, 480, 400),
    (10, 500, 360, 300),
    (10, 450, 450, 320),
    (10, 860, 420, 380),
    (10, 640, 300, 300),
    (10, 380, 560, 330),
    (10, 540, 540, 360),
)
"""Count, height, width and depth in millimetres; 84 cabinets of six parts are 504 parts."""


def big_batch(limit: int | None) -> Job:
    """Return the job, with a limit of parts that lie about unfinished."""
    builds: list[CabinetBuild] = []
    already = 0
    for number, (count, height, width, depth) in enumerate(TYPES, start=1):
        design = BoxDesign(
            name=f"type {number}",
            count=count,
            height=mm(height),
            width=mm(width),
            depth=mm(depth),
            board=Board(material=BIRCH.material, thickness=BIRCH.thickness),
            baffle=Closing(fit=Fit.INSET),
            back=Closing(
                fit=Fit.INSET, board=Board(material=POPLAR.material, thickness=POPLAR.thickness)
            ),
        )
        letters = name_cabinets(count, already=already)
        already += count
        builds.append(expand(design, letters=letters, measured={}, step=mm("0.5"), unit=Unit.MM))
    return Job(
        name="Invented batch",
        step=mm("0.5"),
        sheets=(BIRCH, POPLAR),
        parts=tuple(part for build in builds for part in build.parts),
        cabinets=tuple(builds),
        terms=Terms(most_open=limit),
    )
