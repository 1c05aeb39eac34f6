"""One size of a job changed, for all copies together."""

from dataclasses import dataclass, replace

from nesting.cabinets.build import CabinetBuild
from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import Length
from nesting.parts import Part
from nesting.rebuilding import rebuild, with_builds
from nesting.terms import Dimension, Free


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One size that changes.

    Attributes:
        free: The size.
        before: What it is.
        after: What it would be.
        room: Inside of one cabinet then, free of what stands in it, in cubic nanometres; None for
            a plain part.
        room_before: The same now.
    """

    free: Free
    before: Length
    after: Length
    room: int | None = None
    room_before: int | None = None


def change_size(job: Job, free: Free, by: Length) -> Job | None:
    """Return the job with one size changed for all copies, or None where it cannot be built."""
    if not free.is_cabinet:
        parts = tuple(
            _resize(part, free.dimension, by) if _is_meant(part, free) else part
            for part in job.parts
        )
        if any(part is None for part in parts):
            return None
        return replace(job, parts=tuple(part for part in parts if part is not None))
    return with_builds(
        job,
        (
            _resize_cabinets(job, build, free.dimension, by) if build.name == free.of else build
            for build in job.cabinets
        ),
    )


def describe_change(job: Job, changed: Job, free: Free) -> Change:
    """Return how one size differs between two jobs."""
    before, room_before = _size_and_room(job, free)
    after, room = _size_and_room(changed, free)
    return Change(free=free, before=before, after=after, room=room, room_before=room_before)


def fits_in(parts: tuple[Part, ...], others: tuple[Part, ...]) -> bool:
    """Return whether each part fits in the one that has its place in another list."""
    return len(parts) == len(others) and all(
        part.blank_length <= other.blank_length
        and part.blank_width <= other.blank_width
        and part.count <= other.count
        and (part.grain, part.material, part.thickness)
        == (other.grain, other.material, other.thickness)
        for part, other in zip(parts, others, strict=True)
    )


def _is_meant(part: Part, free: Free) -> bool:
    return not part.cabinet and part.name == free.of


def _resize(part: Part, dimension: Dimension, by: Length) -> Part | None:
    length = part.length + (by if dimension is Dimension.LENGTH else 0)
    width = part.width + (by if dimension is Dimension.WIDTH else 0)
    return replace(part, length=length, width=width) if min(length, width) > 0 else None


def _resize_cabinets(
    job: Job, build: CabinetBuild, dimension: Dimension, by: Length
) -> CabinetBuild | None:
    assert build.design is not None, f"{build.name}: its design is not known"
    design = build.design
    try:
        match dimension:
            case Dimension.HEIGHT:
                design = replace(design, height=design.height + by)
            case Dimension.WIDTH:
                design = replace(design, width=design.width + by)
            case Dimension.DEPTH | Dimension.LENGTH:
                design = replace(design, depth=design.depth + by)
    except InputError:
        return None
    return rebuild(job, build, design)


def _size_and_room(job: Job, free: Free) -> tuple[Length, int | None]:
    if not free.is_cabinet:
        part = next(part for part in job.parts if _is_meant(part, free))
        return part.length if free.dimension is Dimension.LENGTH else part.width, None
    build = next(build for build in job.cabinets if build.name == free.of)
    assert build.design is not None
    sizes = {
        Dimension.HEIGHT: build.design.height,
        Dimension.WIDTH: build.design.width,
        Dimension.DEPTH: build.design.depth,
    }
    return sizes[free.dimension], build.fit_out.room.net if build.fit_out else None
