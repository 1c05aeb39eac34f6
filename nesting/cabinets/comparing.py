"""Comparing two builds of one design: every size that a change of thickness, say, has moved."""

from collections.abc import Iterator

from nesting.cabinets.build import CabinetBuild
from nesting.lengths import Length, Unit, format_length


def compare_builds(
    before: CabinetBuild, after: CabinetBuild, unit: Unit = Unit.MM
) -> tuple[str, ...]:
    """Return every size that differs, such as "Baffle: width 464 -> 464.6".

    Args:
        before: A build of a design.
        after: Another build of it, with other thicknesses or with another step, say.
        unit: The unit to write in.
    """
    old, new = dict(_list_sizes(before)), dict(_list_sizes(after))
    changes = []
    for name in dict.fromkeys((*old, *new)):
        if old.get(name) != new.get(name):
            was, now = (
                format_length(sizes[name], unit) if name in sizes else "none"
                for sizes in (old, new)
            )
            changes.append(f"{name} {was} → {now}")
    return tuple(changes)


def _list_sizes(build: CabinetBuild) -> Iterator[tuple[str, Length]]:
    """Yield name and size of everything that is cut for the first cabinet of a build."""
    for name, size in zip(("height", "width", "depth"), build.outside, strict=True):
        yield f"Outside: {name}", size
    first = build.letters[0]
    for part in build.parts:
        if part.cabinet == first:
            yield f"{part.name}: length", part.length
            yield f"{part.name}: width", part.width
    for batten in build.battens:
        if batten.cabinet == first:
            yield f"{batten.name}: length", batten.length
