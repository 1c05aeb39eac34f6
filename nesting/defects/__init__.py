"""Planning round places of real sheets that are not sound."""

from nesting.defects.leftovers import keep_what_is_sound, mark_leftovers
from nesting.defects.planning import solve_clear

__all__ = ["keep_what_is_sound", "mark_leftovers", "solve_clear"]
