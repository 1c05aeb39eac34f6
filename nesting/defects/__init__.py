"""Planning round places of real sheets that are not sound."""

from nesting.defects.leftovers import mark_leftovers
from nesting.defects.planning import solve_clear

__all__ = ["mark_leftovers", "solve_clear"]
