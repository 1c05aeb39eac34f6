"""The first cuts of bought sheets, left to the yard, so that the pieces go into the car."""

from nesting.first_cuts.planning import solve_with_yard

__all__ = ["solve_with_yard"]
