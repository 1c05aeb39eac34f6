"""Cautions: in full once, and as a short line where the hazard is.

A plan is a drawing, not training. No caution says that something is safe.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One caution.

    Attributes:
        topic: One or two words, such as "Support".
        full: The note on the safety page, own words.
        short: The line at the step.
        where: Which pages carry the short line: any of "sheet", "shopping", "parts", "overview".
        defer_to: Who or what decides, such as "your saw's manual".
    """

    topic: str
    full: str
    short: str
    where: frozenset[str]
    defer_to: str
