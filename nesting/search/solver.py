"""The solver of linear and integer models, made so that it repeats itself and prints nothing."""

import os
from collections.abc import Iterator
from contextlib import contextmanager

import highspy

TIME_LIMIT_S = 300.0  # far above what any limit in iterations or nodes lets pass


def make_solver(*, seconds: float = TIME_LIMIT_S) -> highspy.Highs:
    """Return a solver on one thread with a fixed seed and a relative gap of 0.

    All solvers of a process must be made here: one made with another number of threads would
    make the later ones refuse to run.

    Args:
        seconds: Most time of one run.
    """
    with _quiet():
        solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)  # noqa: FBT003 - the solver's own signature
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("random_seed", 0)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("time_limit", min(seconds, TIME_LIMIT_S))
    return solver


@contextmanager
def _quiet() -> Iterator[None]:
    """Keep the greeting that the solver prints when it is made off standard output.

    A command may write its result there for another program to read.
    """
    kept, nowhere = os.dup(1), os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 1)
        yield
    finally:
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)
