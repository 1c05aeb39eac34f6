"""What is said on the pages of a sheet besides its cuts: stops, cabinets complete, test pieces."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType

from plans.sections.coupons import Coupon
from plans.sections.sessions import say_stop
from plans.sections.workshop import Workshop

NOTHING: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetNotes:
    """What is said of a sheet, or of several that are cut alike.

    Attributes:
        stops: By the number of a cut: the work can be left after it.
        closes: By the number of a cut: the cabinet of which all parts are there after it.
        test_piece: Where the test piece comes from; "" where none is left over.
    """

    stops: Mapping[str, str] = field(default_factory=lambda: NOTHING)
    closes: Mapping[str, str] = field(default_factory=lambda: NOTHING)
    test_piece: str = ""


def make_sheet_notes(workshop: Workshop, numbers: Sequence[int]) -> SheetNotes:
    """Return what is said of the sheets of these numbers, which are cut alike."""
    return SheetNotes(
        stops=_by_cut(_stops(workshop, numbers)),
        closes=_by_cut(_closes(workshop, numbers)),
        test_piece=say_test_piece(
            [coupon for coupon in workshop.coupons if int(coupon.sheet) in numbers]
        ),
    )


def say_test_piece(coupons: Sequence[Coupon]) -> str:
    """Return where the test pieces of sheets that are cut alike come from, "" for none."""
    if not coupons:
        return ""
    first = coupons[0]
    marks = ", ".join(coupon.mark for coupon in coupons)
    after = "" if first.cut == "-" else f" of cut {first.cut}"
    source = f"the waste{after}" if first.source == "waste" else f"{first.source}{after}, last"
    return f"Test piece for saw and router, {first.size}: out of {source}. Write {marks} on it."


def _stops(workshop: Workshop, numbers: Sequence[int]) -> Iterator[tuple[str, str]]:
    for row in workshop.sessions[:-1]:  # the end of the last one is the end of the work
        sheet, _, cut = row.last.partition(".")
        if int(sheet) in numbers:
            yield cut, f"STOP HERE. {say_stop(row, int(sheet), len(numbers))}"


def _closes(workshop: Workshop, numbers: Sequence[int]) -> Iterator[tuple[str, str]]:
    for kit in workshop.kits:
        sheet, _, cut = kit.closes.partition(".")
        if cut and int(sheet) in numbers:
            where = f"Sheet {sheet}: now" if len(numbers) > 1 else "Now"
            yield cut, f"{where} all {kit.parts} parts of cabinet {kit.cabinet} are there."


def _by_cut(said: Iterator[tuple[str, str]]) -> Mapping[str, str]:
    together: dict[str, str] = {}
    for cut, words in said:
        together[cut] = f"{together[cut]} {words}" if cut in together else words
    return MappingProxyType(together)
