"""What a person types after `setout mark`, read into marks."""

import re
from collections.abc import Iterator
from typing import Final

from nesting.errors import Fault, InputError
from nesting.garage.events import CutMade
from nesting.garage.marking import find_sheet
from nesting.garage.planned import Planned
from nesting.garage.sheet_readings import Size
from nesting.lengths import Length, Unit, parse_length
from nesting.reading.values import LONGEST
from nesting.sheets import Defect, Use

_CUTS: Final = re.compile(
    r"(?P<sheet>[0-9]{1,6})\.(?:(?P<all>all)|(?P<cut>[0-9]{1,6})"
    r"(?:\s*[-–]\s*(?:(?P<last_sheet>[0-9]{1,6})\.)?(?P<last>[0-9]{1,6}))?)"
)
MARKED: Final = {Use.NOTHING: ("--defect", "defect"), Use.HIDDEN_PARTS: ("--stain", "stain")}
"""The option for each kind of defect, and what it is called."""
_TIMES: Final = re.compile(r"\s*[x×*]\s*", re.IGNORECASE)


def read_cuts(text: str, planned: Planned) -> Iterator[CutMade]:
    """Yield the cuts that a text names: "1.7", "1.1-1.7", "1.1-7" or "1.all".

    Raises:
        InputError: It names no cut of the plan.
    """
    match = _CUTS.fullmatch(text.strip())
    if match is None:
        raise _refused(
            text,
            "it does not name cuts",
            "Write sheet and cut such as 1.7, a range such as 1.1-1.7, or 1.all for sheet 1.",
        )
    sheet = int(match["sheet"])
    if match["all"]:
        first, last = 1, len(find_sheet(planned, sheet).cuts)
    else:
        first = int(match["cut"])
        last = int(match["last"] or first)
    if match["last_sheet"] and int(match["last_sheet"]) != sheet:
        raise _refused(text, "it runs over two sheets", "Give one range for each sheet.")
    if last < first:
        raise _refused(text, "it runs backwards", f"Write {sheet}.{last}-{sheet}.{first}.")
    most = len(find_sheet(planned, sheet).cuts)
    # One beyond is told apart by the plan; more than one would only be more of the same.
    for cut in range(first, max(first, min(last, most + 1)) + 1):
        yield CutMade(sheet=sheet, cut=cut)


def read_size(text: str, unit: Unit, option: str) -> Size:
    """Return the two lengths of a text such as "440.5x860".

    Raises:
        InputError: It is not two lengths.
    """
    sides = _TIMES.split(text.strip())
    if len(sides) != 2:  # noqa: PLR2004 - a size has two sides
        raise _refused(f"{option} {text}", "it is not a size", "Write it such as 440.5x860.")
    first, second = (_length(side, unit, option) for side in sides)
    return first, second


def read_lengths(text: str, unit: Unit, option: str) -> tuple[Length, ...]:
    """Return the lengths of a text such as "17.6,17.8".

    Raises:
        InputError: One of them is not a length.
    """
    return tuple(_length(each, unit, option) for each in text.split(","))


def read_length(text: str, unit: Unit, option: str) -> Length:
    """Return the one length of a text such as "17.6".

    Raises:
        InputError: It is not one length; a decimal comma would make two of it.
    """
    if "," in text:
        raise _refused(
            f"{option} {text}", "it has a comma", "Write one length, with a point such as 18.5."
        )
    return _length(text, unit, option)


def read_defect(text: str, unit: Unit, use: Use) -> Defect:
    """Return the defect of a text such as "410,260,120x90".

    Args:
        text: Two tape readings from the home corner, and the size.
        unit: Of bare numbers.
        use: What may lie on it.

    Raises:
        InputError: It is not that.
    """
    option, what = MARKED[use]
    words = text.split(",")
    if len(words) != 3:  # noqa: PLR2004 - two readings and a size
        raise _refused(
            f"{option} {text}",
            "it is not two distances and a size",
            "Write it such as 410,260,120x90: from the home corner along the sheet's length, along "
            "its width, and how large it is.",
        )
    x, y = (_length(word, unit, option, may_be_zero=True) for word in words[:2])
    length, width = read_size(words[2], unit, option)
    return Defect(what=what, x=x, y=y, length=length, width=width, use=use)


def _length(text: str, unit: Unit, option: str, *, may_be_zero: bool = False) -> Length:
    try:
        length = parse_length(text, unit)
    except InputError as error:
        fault = error.faults[0]
        raise _refused(option, fault.what, fault.remedy) from None
    if length == 0 and not may_be_zero:
        raise _refused(option, "a length is 0", "Give what the tape shows.")
    if length > LONGEST:
        raise _refused(option, f"{text.strip()!r} is too long to be meant", "Check the figures.")
    return length


def _refused(where: str, what: str, remedy: str) -> InputError:
    return InputError([Fault(where=where, what=what, remedy=remedy)])
