"""The second search: at the sheets found, the layout with the least work and the best leftovers."""

from nesting.search.least_work.less_work import Worked, find_less_work, less_work

__all__ = ["Worked", "find_less_work", "less_work"]
