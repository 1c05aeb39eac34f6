"""Checking the solids: nothing overlaps, and no gap is left that nobody declared.

Panels of the shell and declared spaces must fill the outside exactly. As they may not overlap and
none may stick out, it is enough that their volumes add up. Where boxes overlap, as they do at a
rebate, the wood there must be taken out of one of the two. What stands in the inside is checked
apart; only where it is let into the shell does its wood count with the shell's. All in whole
numbers; only where corners of a slope were rounded is there a tolerance, of nanometres.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations, pairwise

from nesting.cabinets.construction import Construction
from nesting.cabinets.panels import Bar, Cut, Panel, Shared, Space
from nesting.cabinets.profiles import ROUNDED, Profile, do_overlap, profile_of
from nesting.cabinets.space import Axis, Box


@dataclass(frozen=True, slots=True, kw_only=True)
class _Solid:
    """A panel, a batten or a space, as far as it takes room."""

    name: str
    box: Box
    profile: Profile | None = None
    cuts: tuple[Cut, ...] = ()

    @property
    def hull_twice(self) -> int:
        """Twice its volume before wood is taken out."""
        if self.profile is None:
            return 2 * self.box.volume
        return self.profile.area_twice * self.box.size(self.profile.axis)

    @property
    def volume_twice(self) -> int:
        """Twice its volume, less the wood taken out."""
        return self.hull_twice - sum(cut.volume_twice for cut in self.cuts)


def find_clashes(construction: Construction) -> Iterator[str]:
    """Yield what is wrong with the solids of a cabinet, nothing where all is well."""
    shell = [_solid(panel) for panel in construction.shell]
    spaces = [_solid(space) for space in construction.spaces]
    inner = [_solid(panel) for panel in construction.inner]
    bars = [_solid(bar) for bar in construction.bars]
    yield from _find_overlaps([*shell, *spaces], construction.shared)
    yield from _find_overlaps([*inner, *bars], construction.shared)
    yield from _find_cuts_outside(shell)
    for solid in [*shell, *spaces]:
        if not construction.box.contains(solid.box):
            yield f"the {solid.name} sticks out"
    let_in = 0
    for solid in [*inner, *bars]:
        inside = _room_in(solid, spaces)
        outside = solid.hull_twice - inside
        if outside and outside != _room_in(solid, _cuts_as_solids(shell)):
            yield f"the {solid.name} does not stand in the inside"
        else:
            let_in += outside
    yield from _find_gap(construction, [*shell, *spaces], let_in)
    for edge in construction.find_edges():
        if not edge.owner:
            yield f"no panel runs through at the {edge.name} edge"


def _solid(source: Panel | Bar | Space) -> _Solid:
    return _Solid(
        name=source.name,
        box=source.box,
        profile=source.profile,
        cuts=source.cuts if isinstance(source, Panel) else (),
    )


def _cuts_as_solids(shell: list[_Solid]) -> list[_Solid]:
    return [_Solid(name=cut.what, box=cut.box) for solid in shell for cut in solid.cuts]


def _room_in(solid: _Solid, spaces: Iterable[_Solid]) -> int:
    """Return twice the volume of a solid that lies within some spaces; all of it or its overlap.

    In a space with a profile a solid lies wholly or counts as outside.
    """
    room = 0
    for space in spaces:
        common = solid.box.overlap(space.box)
        if common and space.profile is None:
            room += 2 * common.volume
        elif common and space.profile and _is_within(_outline(solid, Axis.WIDTH), space.profile):
            room += solid.hull_twice
    return room


def _is_within(outline: Profile, around: Profile) -> bool:
    """Return whether an outline lies in another, but for what rounding corners does."""
    return all(
        -(ROUNDED * (abs(b[0] - a[0]) + abs(b[1] - a[1])))
        <= (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])
        for a, b in pairwise((*around.corners, around.corners[0]))
        for x, y in outline.corners
    )


def _find_gap(construction: Construction, filling: list[_Solid], let_in: int) -> Iterator[str]:
    width, depth, height = construction.outside
    wanted, slack = 2 * construction.box.volume, 0
    if construction.outline is not None:
        wanted = construction.outline.area_twice * construction.box.size(construction.outline.axis)
        slack = ROUNDED * 8 * (width * depth + width * height + depth * height)
    missing = wanted - sum(solid.volume_twice for solid in filling) - let_in
    if missing > slack:
        yield f"{missing // 2} nm³ of the outside box are neither wood nor a declared space"
    if missing < -slack:
        yield f"there are {-missing // 2} nm³ more of wood and spaces than the outside holds"


def _find_cuts_outside(shell: list[_Solid]) -> Iterator[str]:
    for solid in shell:
        for cut in solid.cuts:
            if not solid.box.contains(cut.box):
                yield f"the {cut.what} runs out of the {solid.name}"


def _find_overlaps(solids: list[_Solid], shared: tuple[Shared, ...]) -> Iterator[str]:
    declared = {frozenset((each.first, each.second)): each.box for each in shared}
    for first, second in combinations(solids, 2):
        overlap = first.box.overlap(second.box)
        if overlap is None or overlap == declared.get(frozenset((first.name, second.name))):
            continue
        if _do_meet(first, second) and not _is_taken_out(overlap, first.cuts + second.cuts):
            yield f"the {first.name} and the {second.name} overlap"


def _do_meet(first: _Solid, second: _Solid) -> bool:
    """Return whether two solids whose boxes overlap do so themselves, cuts apart."""
    profile = first.profile or second.profile
    if profile is None:
        return True
    return do_overlap(_outline(first, profile.axis), _outline(second, profile.axis))


def _outline(solid: _Solid, axis: Axis) -> Profile:
    return solid.profile or profile_of(solid.box, axis)


def _is_taken_out(place: Box, cuts: tuple[Cut, ...]) -> bool:
    return not place.without(cut.box for cut in cuts)
