"""The covering model: choose sheets, each with a mix of parts, so that every part is cut.

Rows are part kinds with the copies needed, and the sheet kinds of which there are few. A sheet may
cut more than is needed; surplus parts are simply left out of it. A kind may also stay uncut, for
more than any sheet costs, so that the model always has a solution.

References:
    Gilmore and Gomory (1961), Operations Research 9, 849-859, from memory.
"""

from dataclasses import dataclass
from math import inf

import highspy
import numpy as np
from numpy.typing import NDArray

from nesting.search.problem import Problem
from nesting.search.solver import make_solver

Ints = NDArray[np.int64]
Floats = NDArray[np.float64]

LEFT_OUT = 10.0  # what a sheetful left uncut costs, in sheets of the heaviest kind


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaxed:
    """The solution of the model with parts of sheets allowed.

    Attributes:
        weight: What the sheets weigh, as a fraction of the heaviest kind.
        worths: What a part of each kind is worth, in the same unit, 0 or more. Shape (kinds,).
        fees: What one of each sheet kind costs beyond its weight, 0 or more. Shape (sheets,).
        uses: How often each of the columns is used, in their order. Shape (columns,).
        iterations: Work of the solver.
    """

    weight: float
    worths: Floats
    fees: Floats
    uses: Floats
    iterations: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """The best whole sheets found.

    Attributes:
        uses: How often each of the columns is used; None where nothing was found.
        iterations: Work of the solver.
    """

    uses: list[int] | None
    iterations: int


class Covering:
    """The relaxed model, to which columns are added."""

    def __init__(self, problem: Problem) -> None:
        """Make the model without any sheets."""
        self._problem = problem
        self.weights = scale_weights(problem)
        self._solver = make_solver()
        self._solver.setOptionValue("presolve", "off")
        _add_rows(self._solver, problem, self.weights)

    def add(self, counts: NDArray[np.float32], kinds: Ints) -> None:
        """Add columns: parts of each kind and the sheet kind. Shapes (n, kinds) and (n,)."""
        starts, rows, values = _list_entries(self._problem, counts, kinds)
        many = len(kinds)
        self._solver.addCols(
            many,
            self.weights[kinds],
            np.zeros(many),
            np.full(many, highspy.kHighsInf),
            len(rows),
            starts,
            rows,
            values,
        )

    def solve(self) -> Relaxed:
        """Solve the relaxed model with the columns so far."""
        self._solver.run()
        solution = self._solver.getSolution()
        duals = np.array(solution.row_dual)
        info = self._solver.getInfo()
        count = len(self._problem.kinds)
        fees = np.zeros(len(self._problem.sheets))
        fees[list_limited(self._problem)] = np.maximum(0.0, -duals[count:])
        return Relaxed(
            weight=info.objective_function_value,
            worths=np.maximum(0.0, duals[:count]),
            fees=fees,
            uses=np.array(solution.col_value[count:]),
            iterations=info.simplex_iteration_count,
        )


def choose(
    problem: Problem,
    counts: NDArray[np.float32],
    kinds: Ints,
    *,
    below: float,
    nodes: int,
    seconds: float = inf,
) -> Chosen:
    """Return the best choice of whole sheets that was found.

    Args:
        problem: Parts and sheets.
        counts: Parts of each kind on each sheet. Shape (n, kinds).
        kinds: Sheet kind of each sheet. Shape (n,).
        below: Only choices that weigh less than this matter; unit as in `Relaxed`.
        nodes: Most nodes of the search tree.
        seconds: Most time; the nodes are meant to end it long before.
    """
    weights = scale_weights(problem)
    solver = make_solver(seconds=seconds)
    solver.setOptionValue("mip_max_nodes", nodes)
    solver.setOptionValue("objective_bound", below)
    _add_rows(solver, problem, weights)
    starts, rows, values = _list_entries(problem, counts, kinds)
    first, many = solver.getNumCol(), len(kinds)
    most = np.array([kind.copies for kind in problem.kinds])
    solver.addCols(
        many,
        weights[kinds],
        np.zeros(many),
        np.full(many, float(most.max())),
        len(rows),
        starts,
        rows,
        values,
    )
    whole = np.full(first + many, int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    solver.changeColsIntegrality(len(whole), np.arange(len(whole), dtype=np.int32), whole)
    solver.run()
    info = solver.getInfo()
    uses = None
    if info.primal_solution_status == highspy.SolutionStatus.kSolutionStatusFeasible:
        uses = [round(value) for value in solver.getSolution().col_value[first:]]
    return Chosen(uses=uses, iterations=max(0, info.simplex_iteration_count))


def scale_weights(problem: Problem) -> Floats:
    """Return the weights of the sheet kinds as fractions of the heaviest."""
    weights = np.array([sheet.weight for sheet in problem.sheets], dtype=np.float64)
    scaled: Floats = weights / weights.max()
    return scaled


def list_limited(problem: Problem) -> list[int]:
    """Return the sheet kinds of which there may be too few."""
    return [number for number, sheet in enumerate(problem.sheets) if sheet.count < problem.copies]


def _add_rows(solver: highspy.Highs, problem: Problem, weights: Floats) -> None:
    """Add the rows, and the columns of parts left uncut."""
    for kind in problem.kinds:
        solver.addRow(float(kind.copies), highspy.kHighsInf, 0, _NO_ROWS, _NO_VALUES)
    for number in list_limited(problem):
        solver.addRow(
            -highspy.kHighsInf, float(problem.sheets[number].count), 0, _NO_ROWS, _NO_VALUES
        )
    largest = max(sheet.area for sheet in problem.sheets)
    for number, kind in enumerate(problem.kinds):
        cost = float(weights.max()) * (1 + LEFT_OUT * kind.area / largest)
        row = np.array([number], dtype=np.int32)
        solver.addCol(cost, 0.0, float(kind.copies), 1, row, np.ones(1))


_NO_ROWS = np.zeros(0, dtype=np.int32)
_NO_VALUES = np.zeros(0)


def _list_entries(
    problem: Problem, counts: NDArray[np.float32], kinds: Ints
) -> tuple[NDArray[np.int32], NDArray[np.int32], Floats]:
    """Return the entries of columns, as the solver takes them: starts, rows and values."""
    limited = list_limited(problem)
    is_kind = kinds[:, None] == np.array(limited, dtype=np.int64)[None, :]
    table = np.concatenate([counts.astype(np.float64), is_kind.astype(np.float64)], axis=1)
    columns, rows = np.nonzero(table)
    starts = np.searchsorted(columns, np.arange(len(kinds)))
    return starts.astype(np.int32), rows.astype(np.int32), table[columns, rows]
