"""The letters that name the cabinets of a job."""

USABLE_LETTERS = "ABCDEFJKRTUVY"
"""No letter that reads as another one upside-down, none that looks like a figure.

L and P are left out because the pages use them for other things.
"""


def name_cabinets(count: int, *, already: int = 0) -> tuple[str, ...]:
    """Return the letters of the next cabinets of a job: A, B ... Y, AA, AB and so on.

    Args:
        count: How many cabinets.
        already: How many cabinets of the job have their letter.

    >>> name_cabinets(2), name_cabinets(3, already=12)
    (('A', 'B'), ('Y', 'AA', 'AB'))
    """
    return tuple(_letter(number) for number in range(already, already + count))


def _letter(number: int) -> str:
    before, last = divmod(number, len(USABLE_LETTERS))
    return (_letter(before - 1) if before else "") + USABLE_LETTERS[last]
