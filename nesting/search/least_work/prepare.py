"""Loading the compiled kernels of the second search."""

from decimal import Decimal

from nesting.job import Job
from nesting.lengths import mm
from nesting.search.least_work.annealing import Annealing
from nesting.search.problem import SIDE_BY_SIDE, PartKind, Problem, SheetKind, SheetPlan
from nesting.sheets import Sheet


def touch() -> None:
    """Call every kernel once, on two parts of one sheet."""
    sheet = Sheet(name="", material="", thickness=mm(18), length=3, width=1)
    job = Job(name="", step=1, sheets=(sheet,), parts=())
    kind = PartKind(long=1, short=1, ways=(1,), copies=2, members=())
    stock = SheetKind(sheet=0, length=2, width=1, price=1, weight=1, count=2, grain=0)
    problem = Problem(grid=1, price_step=Decimal(1), kinds=(kind,), sheets=(stock,))
    plan = (SheetPlan(kind=0, codes=(0, 0, SIDE_BY_SIDE)),)
    annealing = Annealing(job, problem, plan, rounds=1, seed=1)
    while not annealing.is_done:
        annealing.advance()
