"""From a tree of cuts to the order in which a person makes them."""

from nesting.cut_sequence.effort import is_over_limit, minutes, piece_mass_kg
from nesting.cut_sequence.matching import Miss, missed_matches
from nesting.cut_sequence.order import order_cuts
from nesting.cut_sequence.sequence import MOST_OPEN_PIECES, Path, Sequence, Step
from nesting.cut_sequence.whole_first import list_work

__all__ = [
    "MOST_OPEN_PIECES",
    "Miss",
    "Path",
    "Sequence",
    "Step",
    "is_over_limit",
    "list_work",
    "minutes",
    "missed_matches",
    "order_cuts",
    "piece_mass_kg",
]
