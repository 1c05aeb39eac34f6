"""The first page: what is built, what it rests on, and how good the plan is."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class AssumedNumber:
    """A number assumed, with room beside it for the reading.

    Attributes:
        name: "kerf".
        value: "2.4 mm".
        origin: "default" or "from the job file".
        check: How to check it.
    """

    name: str
    value: str
    origin: str
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Overview:
    """What the first page says.

    Attributes:
        what: Lines that say what is built: cabinets with outside sizes, or the number of parts.
        sums: Sums that close each cabinet.
        figures: Lines such as "3 sheets, 25 parts, 48 cuts, 14 settings, about 163 minutes".
        bound_text: How close to cheapest this is proven to be.
        assumed: The numbers assumed.
        questions: What the design leaves open.
        warnings: What to look at before buying.
        unplaced: Parts that do not fit, each with its reason.
        legend: The words and signs used, each explained: setting, keep size, statuses, hatches.
    """

    what: tuple[str, ...]
    sums: tuple[str, ...]
    figures: tuple[str, ...]
    bound_text: str
    assumed: tuple[AssumedNumber, ...]
    questions: tuple[str, ...]
    warnings: tuple[str, ...]
    unplaced: tuple[str, ...]
    legend: tuple[tuple[str, str], ...]
