"""What the second search counts besides minutes, in thousandths of a minute. Judgement."""

TOO_LONG = 1000_000
"""For a cut longer than the guide. It cannot be made: more than any part unplaced."""
NARROW = 10_000
"""For a cut across a piece too narrow to hold: avoided where any way is found."""
SLIVER = 500
"""For a leftover narrower than what can be held."""
MISS = 1000
"""For a part that comes off another setting than those it must match. Three times as much harms
tight jobs."""
TIDY = 100
"""The most that is taken off a sheet for large leftovers."""
