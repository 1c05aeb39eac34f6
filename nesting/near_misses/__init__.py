"""Near misses: sizes changed a little, and the job costs less."""

from nesting.near_misses.search import find_near_misses
from nesting.near_misses.sizes import Change, change_size
from nesting.near_misses.trials import NearMiss

__all__ = ["Change", "NearMiss", "change_size", "find_near_misses"]
