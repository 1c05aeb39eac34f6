"""Which hand holds the saw: what of the guide comes first, and where to stand.

Nothing else of a plan depends on it. Where to stand is common practice, no source: beside the
line of the cut, on the side of the guide, so that the body is out of the blade's line.
"""

from dataclasses import dataclass

from nesting.saw import Hand


@dataclass(frozen=True, slots=True, kw_only=True)
class Handed:
    """What depends on the hand.

    Attributes:
        columns: The guide columns in the order in which they are printed.
        stand: The stand mark in words.
        note: The caution that goes with it, whichever hand is chosen.
    """

    columns: tuple[str, str]
    stand: str
    note: str


NOTE = (
    "Many circular saws are built for the right hand, and people who know disagree about which "
    "side of the motor the blade should be. Ask your saw's manual and your dealer."
)


def make_handed(hand: Hand) -> Handed:
    """Return what depends on the hand that holds the saw."""
    if hand is Hand.RIGHT:
        return Handed(
            columns=("left", "right"), stand="stand left of the line of the cut", note=NOTE
        )
    return Handed(columns=("right", "left"), stand="stand right of the line of the cut", note=NOTE)


def say_stand(handed: Handed) -> str:
    """Return the stand mark as a sentence.

    >>> say_stand(make_handed(Hand.LEFT))
    'Stand right of the line of the cut.'
    """
    return f"{handed.stand[:1].upper()}{handed.stand[1:]}."
