"""Sums: a size as a formula, rounded once and written out.

**The rounding rule.** Everything the saw is set to is a multiple of the job's step.

1. The three outside sizes are rounded first, to the nearest step, and everything else is worked
   out from the rounded ones: panels that run through are as long as the outside.
2. A panel that stands between two others is rounded to the nearest step, halves upwards: the
   outside is then off by at most half a step.
3. A panel or batten that goes into an opening is rounded down: it is never larger than the opening,
   because the panels round the opening were rounded to the nearest step from the same numbers.

Measured thicknesses, set-backs, coverings and clearances are not rounded; nothing is rounded twice.
Parts with the same formula come out alike. Every printed sum holds within one step.
"""

from dataclasses import dataclass
from enum import Enum

from nesting.cabinets.space import Axis, Interval
from nesting.lengths import Length, Unit, format_length, round_to


class Rounding(Enum):
    """Which way a size goes to the step."""

    NEAREST = "to the nearest"
    DOWN = "rounded down to"


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One length of a sum, and what it is in words."""

    length: Length
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """The extent of a panel along one axis: a whole, less what stands before either end.

    Attributes:
        axis: The direction.
        whole: What the sum begins with, such as the outside width.
        named: What the whole is, in words.
        offset: Where the whole begins on the axis.
        low: Panels that stand between the low end of the whole and the opening.
        high: The same at the high end.
        low_clear: Covering and clearance between the opening and the panel, at the low end.
        high_clear: The same at the high end.
        low_let_in: How far the panel is let into what stands before its low end.
        high_let_in: The same at the high end.
        rounding: Which way the size goes to the step.
    """

    axis: Axis
    whole: Length
    named: str
    offset: Length = 0
    low: tuple[Term, ...] = ()
    high: tuple[Term, ...] = ()
    low_clear: tuple[Term, ...] = ()
    high_clear: tuple[Term, ...] = ()
    low_let_in: Length = 0
    high_let_in: Length = 0
    rounding: Rounding = Rounding.NEAREST

    @property
    def opening(self) -> Length:
        """What the panels before either end leave."""
        return self.whole - add(self.low) - add(self.high)

    @property
    def size(self) -> Length:
        """Exact size, before rounding."""
        clear = add(self.low_clear) + add(self.high_clear)
        return self.opening - clear + self.low_let_in + self.high_let_in

    @property
    def opening_interval(self) -> Interval:
        """Where the opening begins and ends on the axis."""
        start = self.offset + add(self.low)
        return (start, start + self.opening)

    @property
    def interval(self) -> Interval:
        """Where the panel begins and ends on the axis, exact."""
        start = self.opening_interval[0] + add(self.low_clear) - self.low_let_in
        return (start, start + self.size)


def add(terms: tuple[Term, ...]) -> Length:
    """Return the sum of some terms."""
    return sum(term.length for term in terms)


def round_size(span: Span, step: Length) -> Length:
    """Return the size that is cut: a multiple of the step, see the rule above."""
    if span.rounding is Rounding.DOWN:
        return span.size // step * step
    return round_to(span.size, step)


def write_sum(span: Span, step: Length, unit: Unit) -> str:
    """Return how a size came about: "464.5 = 500 - 17.7 - 17.7 (464.6, to the nearest 0.5)".

    Where covering or clearance is taken off an opening, the opening's own sum and what each end
    is made of follow after semicolons.
    """
    rounded = round_size(span, step)
    clear = [add(terms) for terms in (span.low_clear, span.high_clear)]
    around = [*span.low, *span.high]
    let_in = [length for length in (span.low_let_in, span.high_let_in) if length]
    if any(clear):
        right = _subtract(span.opening, clear, unit)
    elif around:
        right = _subtract(span.whole, [term.length for term in around], unit)
    else:
        right = span.named
    right += "".join(f" + {format_length(length, unit)}" for length in let_in)
    note = ""
    if rounded != span.size:
        exact, to = format_length(span.size, unit), format_length(step, unit)
        note = f" ({exact}, {span.rounding.value} {to})"
    return f"{format_length(rounded, unit)} = {right}{note}{_explain_clearance(span, unit)}"


def _explain_clearance(span: Span, unit: Unit) -> str:
    if not (span.low_clear or span.high_clear):
        return ""
    around = [term.length for term in (*span.low, *span.high)]
    opening = _subtract(span.whole, around, unit) if around else span.named
    pieces = [f"opening {format_length(span.opening, unit)} = {opening}"]
    if span.low_clear == span.high_clear:
        pieces.append(list_terms("each side", span.low_clear, unit))
    else:
        for end, terms in zip(span.axis.ends, (span.low_clear, span.high_clear), strict=True):
            pieces.append(list_terms(end, terms, unit))
    return "".join(f"; {piece}" for piece in pieces)


def list_terms(name: str, terms: tuple[Term, ...], unit: Unit) -> str:
    """Return a sum in words, such as "each side 2.2 = 1.2 covering + 1 clearance"."""
    listed = " + ".join(f"{format_length(term.length, unit)} {term.what}" for term in terms)
    return f"{name} {format_length(add(terms), unit)} = {listed or '0'}"


def _subtract(whole: Length, lengths: list[Length], unit: Unit) -> str:
    return " - ".join(format_length(length, unit) for length in (whole, *lengths))


def write_closing_sum(whole: Length, terms: tuple[Term, ...], named: str, unit: Unit) -> str:
    """Return a sum that closes the box, such as "500 = 17.7 + 464.6 + 17.7 (width: ...)".

    The terms are printed sizes. What rounding left over is a term of its own, so that the sum is
    exact for whoever adds it up.
    """
    rest = whole - add(terms)
    right = " + ".join(format_length(term.length, unit) for term in terms)
    words = [term.what for term in terms]
    if rest:
        right += f" {'+' if rest > 0 else '-'} {format_length(abs(rest), unit)}"
        words.append("rounding")
    return f"{format_length(whole, unit)} = {right} ({named}: {', '.join(words)})"
