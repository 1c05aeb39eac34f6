"""Parts: the rectangles to be cut."""

from dataclasses import dataclass, replace
from enum import Enum

from nesting.errors import Fault, InputError
from nesting.lengths import Length


class Grain(Enum):
    """The side of a part that must run with the face grain of its sheet."""

    LENGTH = "length"
    WIDTH = "width"
    ANY = "any"


class Status(Enum):
    """How far a part's size can be trusted before the work has begun."""

    FINAL = "final"
    OVERSIZE = "oversize"
    MEASURE_FIRST = "measure first"


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A part's place in a strip: a piece that is cut free whole, then cut into its parts in order.

    Parts of one cabinet that name the same strip lie in it one behind the other with nothing but a
    kerf between them.

    Attributes:
        name: What it is for, such as "grain round".
        place: The part's place in it, from 1; parts of one kind follow each other.
        is_across: True where the parts lie side by side across their own length.
        before: What is done before it is cut apart.
        low_edge: The edge of its parts that lies at the sheet's home edge where the strip runs
            along the sheet, such as "front"; empty where it does not matter.
        otherwise: What to do where it fits no sheet.
    """

    name: str
    place: int
    is_across: bool = False
    before: str
    low_edge: str = ""
    otherwise: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A kind of rectangular part, finished size, and how many of it are needed.

    Attributes:
        name: What it is called, such as "Side". Unique together with the cabinet.
        length: Finished size along the part's own length. Positive.
        width: Finished size across it. Positive.
        count: Number of copies, at least 1.
        grain: The side that runs with the face grain.
        material: Material of the sheet it must come from.
        thickness: Nominal thickness of that sheet.
        oversize: How much larger the blank is in both directions. Not negative.
        extra_length: What the blank has besides along its length, for edges that are worked on
            after the saw, such as bevels or edges trimmed flush. Not negative.
        extra_width: The same across it.
        allowances: Which edges those are and how much each has, in words.
        status: Final, oversize, or measured from the work before the last cut.
        cabinet: Letter of the cabinet it belongs to, empty for a plain part.
        sums: How each size came about, such as "464.6 = 500 - 17.7 - 17.7"; empty for a plain part.
        match: Parts that share a non-empty value must come out alike in the dimension it names.
        to_do: What is still done to the part after it is cut, in order.
        note: What its label says besides, such as "interchangeable".
        is_hidden: True where no face of it shows when the work is done: covered, or inside.
        strip: The strip that it is cut from with other parts; None for none.
        spare_of: Where this is a spare, the indices into `Job.parts` of the parts that it can stand
            in for; empty for a part that is needed.
    """

    name: str
    length: Length
    width: Length
    count: int = 1
    grain: Grain = Grain.ANY
    material: str
    thickness: Length
    oversize: Length = 0
    extra_length: Length = 0
    extra_width: Length = 0
    allowances: tuple[str, ...] = ()
    status: Status = Status.FINAL
    cabinet: str = ""
    sums: tuple[str, ...] = ()
    match: str = ""
    to_do: tuple[str, ...] = ()
    note: str = ""
    is_hidden: bool = False
    strip: Strip | None = None
    spare_of: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        """Refuse what no part can be."""
        faults = []
        if self.length <= 0 or self.width <= 0:
            faults.append(
                Fault(
                    where=f"part {self.name!r}",
                    what="its length and width must be more than 0",
                    remedy="Give the finished size of the part.",
                )
            )
        if min(self.oversize, self.extra_length, self.extra_width) < 0:
            faults.append(
                Fault(
                    where=f"part {self.name!r}",
                    what="its oversize is negative",
                    remedy="Give how much larger the blank is, 0 for none.",
                )
            )
        if self.count < 1:
            faults.append(
                Fault(
                    where=f"part {self.name!r}",
                    what=f"its count is {self.count}",
                    remedy="Give a whole number of 1 or more, or take the part out.",
                )
            )
        if faults:
            raise InputError(faults)

    @property
    def blank_length(self) -> Length:
        """Length that is cut from the sheet."""
        return self.length + self.oversize + self.extra_length

    @property
    def blank_width(self) -> Length:
        """Width that is cut from the sheet."""
        return self.width + self.oversize + self.extra_width


SPARE = "Spare"


def make_spare(part: Part, of: tuple[int, ...]) -> Part:
    """Return one more of a part, for a cut that went wrong; no joint and no kit waits for it.

    Args:
        part: The part.
        of: Indices into `Job.parts` of all parts that it can stand in for.
    """
    cabinet = f" for {part.cabinet}" if part.cabinet else ""
    name = f"{SPARE}{cabinet}: {part.name}"
    return replace(part, name=name, cabinet="", count=1, match="", strip=None, spare_of=of)


def is_spare(name: str) -> bool:
    """Return whether a name in a plan is that of a spare."""
    head, colon, _ = name.partition(": ")
    return bool(colon) and (head == SPARE or head.startswith(f"{SPARE} for "))


@dataclass(frozen=True, slots=True, kw_only=True)
class Batten:
    """A length of solid timber of rectangular section.

    Attributes:
        name: What it is, such as "rear frame, long".
        length: Finished length.
        section: Thickness and width of the section, the smaller first.
        count: Number of copies, at least 1.
        cabinet: Letter of the cabinet it belongs to, empty for none.
        sums: How the length came about, and how far the batten stands behind an edge.
        status: Final, oversize, or measured from the work before the last cut.
        oversize: How much longer it is cut at first. Not negative.
    """

    name: str
    length: Length
    section: tuple[Length, Length]
    count: int = 1
    cabinet: str = ""
    sums: tuple[str, ...] = ()
    status: Status = Status.FINAL
    oversize: Length = 0
