"""Plain parts, from [[part]] tables and from the rows of part lists alike."""

from dataclasses import dataclass
from enum import Enum
from typing import Final

from nesting.lengths import Length, mm
from nesting.parts import Grain, Part, Status
from nesting.reading.fields import Fields
from nesting.reading.stock import Stock, read_material
from nesting.reading.values import with_unit
from nesting.terms import Free

PART_KEYS: Final = (
    "name",
    "length",
    "width",
    "count",
    "grain",
    "material",
    "thickness",
    "oversize",
    "face",
    "match",
)
MOST_COPIES: Final = 20_000
MOST_OVERSIZE: Final = mm(200)


class Showing(Enum):
    """Whether a face of a part shows when the work is done."""

    SHOWS = "shows"
    HIDDEN = "hidden"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadPart:
    """A part and where it was read.

    Attributes:
        part: The part.
        fields: The table or row, for faults that show only beside other parts.
        has_default_grain: True where nothing was said about its grain.
        free: Its sizes that may change a little.
    """

    part: Part
    fields: Fields
    has_default_grain: bool
    free: tuple[Free, ...] = ()


def read_part(fields: Fields, stock: Stock, kerf: Length) -> ReadPart | None:
    """Return the part of a table or row, or None after recording its faults."""
    name = fields.text("name")
    length, width = fields.length("length"), fields.length("width")
    count = fields.whole("count", 1, least=1, most=MOST_COPIES)
    grain = fields.choice("grain", Grain, Grain.ANY)
    material, thickness = read_material(fields, stock)
    oversize = fields.length("oversize", 0, may_be_zero=True, most=MOST_OVERSIZE)
    face = fields.choice("face", Showing, Showing.SHOWS)
    match = fields.text("match", "")
    if not fields.is_sound:
        return None
    narrow = min(("width", width), ("length", length), key=lambda side: side[1])
    if narrow[1] < kerf:
        fields.fault(
            f"the part is {with_unit(narrow[1], fields.unit)} across, "
            f"less than the kerf of {with_unit(kerf, fields.unit)}",
            "Check the figure and its unit, and the kerf under [saw].",
            narrow[0],
        )
        return None
    if not stock.is_complete:
        return None
    part = Part(
        name=name,
        length=length,
        width=width,
        count=count,
        grain=grain,
        material=material,
        thickness=thickness,
        oversize=oversize,
        status=Status.OVERSIZE if oversize else Status.FINAL,
        match=match,
        is_hidden=face is Showing.HIDDEN,
    )
    return ReadPart(part=part, fields=fields, has_default_grain=not fields.has("grain"))


def check_together(parts: list[ReadPart]) -> None:
    """Record what is wrong with parts only beside others: names twice, no match, far too many."""
    first: dict[str, Fields] = {}
    shared: dict[str, set[Length]] = {}
    copies = 0
    for read in parts:
        name = read.part.name
        if name in first:
            read.fields.fault(
                f"the name {name!r} is taken already ({first[name].place})",
                "Give every part its own name; more of the same part is a higher count.",
                "name",
            )
        first.setdefault(name, read.fields)
        _check_match(read, shared)
        before, copies = copies, copies + read.part.count
        if before <= MOST_COPIES < copies:
            read.fields.fault(
                f"with this part the job comes to {copies} pieces, more than {MOST_COPIES}",
                "Check the counts, or split the job.",
                "count" if read.fields.has("count") else "",
            )


def _check_match(read: ReadPart, shared: dict[str, set[Length]]) -> None:
    """Record that a part shares no size with those before it that it must match.

    Args:
        read: The part.
        shared: For every word what the parts before have in common; this part is added.
    """
    match = read.part.match
    if not match:
        return
    own = {read.part.blank_length, read.part.blank_width}
    common = shared.get(match, own) & own
    if not common:
        read.fields.fault(
            f"it shares no size with the other parts that must match as {match!r}",
            "Give them an equal length or width, oversize counted, or take the word away.",
            "match",
        )
        return
    shared[match] = common
