"""The first cuts of bought sheets, left to the yard, so that the pieces go into the car."""

from nesting.first_cuts.needs import count_left_outside, is_handled_whole
from nesting.first_cuts.planning import solve_with_yard

__all__ = ["count_left_outside", "is_handled_whole", "solve_with_yard"]
