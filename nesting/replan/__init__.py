"""Planning again from the garage as it is."""

from nesting.replan.needs import SAME_LOT, Need
from nesting.replan.planning import Replanned, replan

__all__ = ["SAME_LOT", "Need", "Replanned", "replan"]
