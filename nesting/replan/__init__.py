"""Planning again from the garage as it is."""

from nesting.replan.needs import Need
from nesting.replan.planning import Replanned, replan

__all__ = ["Need", "Replanned", "replan"]
