"""Parts that must come out alike, and whether they come off one setting of the guide."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from nesting.cut_sequence.sequence import Path, Sequence, Step
from nesting.job import Job
from nesting.layout import Direction, Layout, PartLeaf, Rect, walk
from nesting.lengths import Length

Origin: TypeAlias = tuple[int, int] | None
"""Sheet, counted from 0, and number of the setting that a size comes off; None for no setting: the
size is what other cuts left over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Miss:
    """Copies of a part that come off another setting than most of their group.

    Attributes:
        match: The group, see `Part.match`.
        part: Index into `Job.parts`.
        size: The dimension that the group shares.
        count: How many copies.
    """

    match: str
    part: int
    size: Length
    count: int


def missed_matches(job: Job, layout: Layout, sequences: Iterable[Sequence]) -> tuple[Miss, ...]:
    """Return which copies of matching parts do not come off one setting, by group and part.

    A group's dimension is what the blanks of all its parts have in common; where that is both
    sides, as with equal parts, the side that comes off fewer settings is taken. Groups without a
    common dimension are left out. Settings are those of single sheets: a group on two sheets
    misses, because the guide is set anew.

    Args:
        job: The job.
        layout: Its layout.
        sequences: The order of cuts of every sheet of it.
    """
    origins = _list_origins(job, layout, sequences)
    misses = []
    for match in dict.fromkeys(part.match for part in job.parts if part.match):
        parts = [number for number, part in enumerate(job.parts) if part.match == match]
        per_size = [_miss(match, parts, size, origins) for size in _common_sizes(job, parts)]
        misses += min(per_size, key=lambda found: sum(miss.count for miss in found), default=[])
    return tuple(misses)


def _common_sizes(job: Job, parts: list[int]) -> list[Length]:
    """Return the dimensions that the blanks of some parts have in common, the smallest first."""
    sizes = [{job.parts[part].blank_length, job.parts[part].blank_width} for part in parts]
    return sorted(set.intersection(*sizes))


def _miss(
    match: str,
    parts: list[int],
    size: Length,
    origins: list[tuple[int, Length, Origin]],
) -> list[Miss]:
    """Return the misses of one group in one dimension."""
    found = [(part, origin) for part, own_size, origin in origins if own_size == size]
    counts = Counter((part, origin) for part, origin in found if part in parts)
    settings: Counter[Origin] = Counter()
    for (_, origin), count in counts.items():
        if origin is not None:
            settings[origin] += count
    common = min(settings, key=lambda origin: (-settings[origin], origin or (0, 0)), default=None)
    missed: Counter[int] = Counter()
    for (part, origin), count in counts.items():
        if origin is None or origin != common:
            missed[part] += count
    return [Miss(match=match, part=part, size=size, count=missed[part]) for part in sorted(missed)]


def _list_origins(
    job: Job, layout: Layout, sequences: Iterable[Sequence]
) -> list[tuple[int, Length, Origin]]:
    """Return for every copy of a part and both its dimensions what setting they come off.

    A dimension comes off the last cut across it, where the part lies on the side measured from.
    """
    origins = []
    for number, (sheet, sequence) in enumerate(zip(layout.sheets, sequences, strict=True)):
        steps = {step.path: step for step in sequence.steps}
        anywhere = Rect(x=0, y=0, length=0, width=0)
        for place in walk(sheet.root, anywhere):
            if not isinstance(place.node, PartLeaf):
                continue
            part = job.parts[place.node.part]
            along_x, along_y = part.blank_length, part.blank_width
            if place.node.turned:
                along_x, along_y = along_y, along_x
            for direction, size in ((Direction.CROSSCUT, along_x), (Direction.RIP, along_y)):
                setting = _find_setting(place.path, direction, steps)
                origin = None if setting is None else (number, setting)
                origins.append((place.node.part, size, origin))
    return origins


def _find_setting(path: Path, direction: Direction, steps: dict[Path, Step]) -> int | None:
    """Return the setting that one dimension of a part comes off, None for what is left over."""
    for depth in range(len(path) - 1, -1, -1):
        step = steps[path[:depth]]
        if step.direction is direction:
            return step.setting if path[depth] == 0 and not step.is_trim else None
    return None
