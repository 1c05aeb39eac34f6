"""What every search method offers, so that methods can be compared, combined and added."""

from typing import Protocol

from nesting.search.problem import Plan


class Method(Protocol):
    """A way to find plans for one problem. It may keep what it learns between calls."""

    @property
    def rounds(self) -> int:
        """How many plans or changes of plans were tried so far."""
        ...

    def improve(self, best: Plan, steps: int) -> Plan:
        """Return a plan at least as good as the best so far.

        Args:
            best: The best plan of any method so far; may place nothing at all.
            steps: How much work to do at most, about. A step is one look at a place for a part,
                the same on every machine; some tens of millions take a second.

        Returns:
            A better plan, or the given one where none was found.
        """
        ...
