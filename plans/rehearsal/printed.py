"""What a printed figure means: texts of the page, read as a person at the saw reads them."""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import TypeAlias

Nanometres: TypeAlias = int

NM_PER_MM = 1_000_000
SIDES = ("left", "right", "top", "bottom")

_FIGURE = re.compile(
    r"(?P<sign>[-−])?"
    r"(?:(?P<decimal>[0-9]{1,7}(?:\.[0-9]{1,3})?)"
    r"|(?:(?P<whole>[0-9]{1,7}) )?(?P<numerator>[0-9]{1,2})/(?P<denominator>[0-9]{1,2}))"
)
_TERM = re.compile(r"(?P<figure>.*[0-9])(?: (?P<word>[a-z]+))?")


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedUnit:
    """The unit of a page, and how far its figures can be trusted.

    Attributes:
        name: "mm" or "in".
        nanometres: Nanometres in one of it.
        step_name: What figures are rounded to, in words.
        half_step: The most by which a rounded figure lies off the planned one.
        part_tolerance: The most by which a sawn part may lie off its printed size.
    """

    name: str
    nanometres: Nanometres
    step_name: str
    half_step: Nanometres
    part_tolerance: Nanometres

    def show(self, length: Nanometres) -> str:
        """Return a length as messages give it, to 0.001 of the unit.

        >>> UNITS["mm"].show(17_700_000), UNITS["in"].show(358_775_000)
        ('17.7 mm', '14.125 in')
        """
        text = f"{round(Decimal(length) / self.nanometres, 3):f}".rstrip("0").rstrip(".")
        return f"{text} {self.name}"


UNITS = {
    # printed to 0.1 mm; parts are held to 0.1 mm
    "mm": PrintedUnit(
        name="mm",
        nanometres=NM_PER_MM,
        step_name="tenths of a millimetre",
        half_step=50_000,
        part_tolerance=100_000,
    ),
    # printed to 1/64 in = 396 875 nm; parts are held to half of that and 0.1 mm
    "in": PrintedUnit(
        name="in",
        nanometres=25_400_000,
        step_name="64ths of an inch",
        half_step=198_438,
        part_tolerance=298_438,
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class KeepSize:
    """A keep size as printed.

    Attributes:
        is_trim: True for "trim 10": the fresh edge lies there and the kerf on the raw side of it.
        size: From the edge measured from to the fresh edge.
    """

    is_trim: bool
    size: Nanometres


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One figure of a sum, and the word behind it, "" for none."""

    size: Nanometres
    word: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sum:
    """A sum as printed: the whole, and what it is made of."""

    total: Nanometres
    terms: tuple[Term, ...]


def read_figure(text: str, unit: PrintedUnit) -> Nanometres:
    """Return the length that a printed figure means.

    Raises:
        ValueError: It is not a figure that can be set on a tape in this unit.

    >>> read_figure("14 1/8", UNITS["in"]), read_figure("-30.4", UNITS["mm"])
    (358775000, -30400000)
    """
    match = _FIGURE.fullmatch(text)
    if match is None:
        raise ValueError(f"{text!r} is not a figure in {unit.name}")
    if match["decimal"]:
        amount = Fraction(match["decimal"])
    else:
        denominator = int(match["denominator"])
        if unit.name != "in" or denominator not in (2, 4, 8, 16, 32, 64):
            raise ValueError(f"{text!r} is not on a tape in {unit.name}")
        amount = int(match["whole"] or 0) + Fraction(int(match["numerator"]), denominator)
    return int(amount * unit.nanometres) * (-1 if match["sign"] else 1)


def read_size(text: str, unit: PrintedUnit) -> tuple[Nanometres, Nanometres]:
    """Return the two sides that a printed size such as "2440 × 1220" means.

    Raises:
        ValueError: It is not two figures.
    """
    sides = text.split(" × ")
    if len(sides) != 2:  # noqa: PLR2004 - a rectangle has two sides
        raise ValueError(f"{text!r} is not a size such as '562 × 300'")
    return read_figure(sides[0], unit), read_figure(sides[1], unit)


def read_keep(text: str, unit: PrintedUnit) -> KeepSize:
    """Return what a printed keep size such as "356" or "trim 10" means.

    Raises:
        ValueError: It is neither.
    """
    figure = text.removeprefix("trim ")
    return KeepSize(is_trim=figure != text, size=read_figure(figure, unit))


def read_trims(text: str, unit: PrintedUnit) -> tuple[tuple[str, Nanometres], ...]:
    """Return the edges, as drawn, and the trims that "left 10, right 10, top 10, bottom 5" means.

    Raises:
        ValueError: It does not name the four edges in this order, each with a figure.
    """
    trims = []
    for part in text.split(", "):
        side, _, figure = part.partition(" ")
        trims.append((f"{side} edge", read_figure(figure, unit)))
    if [name for name, _ in trims] != [f"{side} edge" for side in SIDES]:
        raise ValueError(f"{text!r} does not name the trims left, right, top and bottom")
    return tuple(trims)


def read_sum(text: str, unit: PrintedUnit) -> Sum:
    """Return the figures of a printed sum such as "2430 = 562 + 2.4 + 1865.6 left".

    Raises:
        ValueError: It is not a sum of figures.
    """
    total, equals, right = text.partition(" = ")
    if not equals:
        raise ValueError(f"{text!r} is not a sum such as '10 = 4 + 2 + 4 left'")
    terms = []
    for part in right.split(" + "):
        match = _TERM.fullmatch(part)
        if match is None:
            raise ValueError(f"{part!r} is not a figure in {unit.name}")
        terms.append(Term(size=read_figure(match["figure"], unit), word=match["word"] or ""))
    return Sum(total=read_figure(total, unit), terms=tuple(terms))
