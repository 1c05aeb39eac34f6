"""Joints whose parts come from sheets of different thickness, in words."""

from collections.abc import Iterator

from nesting.job import Job
from nesting.layout import Layout
from nesting.lengths import Length
from nesting.lots import find_mixed_joints
from plans.sections.numbers import show_with_unit

Lot = tuple[str, Length]
"""Name of a stock and its mean thickness."""


def say_mixed_joints(job: Job, layout: Layout) -> Iterator[str]:
    """Yield a sentence for every cabinet and pair of lots that meet in its joints."""
    found: dict[tuple[str, Lot, Lot], dict[str, None]] = {}
    for joint in find_mixed_joints(job, layout):
        pairs = zip(joint.stocks, joint.thicknesses, joint.parts, strict=True)
        (stock, real, part), (other_stock, other_real, other) = sorted(pairs)
        key = (joint.cabinet, (stock, real), (other_stock, other_real))
        found.setdefault(key, {})[f"{part} and {other}"] = None
    for (cabinet, *lots), parts in found.items():
        (stock, real), (other_stock, other_real) = lots
        yield (
            f"Cabinet {cabinet}, where {'; '.join(parts)} meet: the first is from {stock} "
            f"({show_with_unit(real, job.unit)}), the other from {other_stock} "
            f"({show_with_unit(other_real, job.unit)}). Set grooves and rebates to each, "
            "or cut both from one lot."
        )
