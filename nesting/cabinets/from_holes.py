"""Parts that come out of holes: from the disc of a round one, or the piece of a window.

They are cut when the hole is made, and never from a sheet.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.discs import MARGIN, FromHole, fits_in_hole
from nesting.cabinets.fittings import Fittings
from nesting.cabinets.holes import Hole
from nesting.cabinets.panels import Panel
from nesting.errors import Fault, InputError
from nesting.lengths import Unit, format_length
from nesting.parts import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class _Giver:
    """A hole of one cabinet that gives a part."""

    build: CabinetBuild
    cabinet: str
    hole: Hole
    unit: Unit

    @property
    def fittings(self) -> Fittings:
        """What the design says of its fittings."""
        assert self.build.design is not None, f"{self.build.name}: its design is not known"
        return self.build.design.fittings

    @property
    def panel(self) -> Panel:
        """The panel that the hole is cut in."""
        return next(panel for panel in self.build.panels if panel.name == self.hole.panel)

    def refuse(self, what: str, remedy: str) -> InputError:
        """Return a refusal of what the hole is to give."""
        where = f"cabinet {self.build.name!r}, hole"
        what = f"hole {self.hole.name!r}: {what}"
        return InputError([Fault(where=where, what=what, remedy=remedy)])


def take_own(build: CabinetBuild, unit: Unit) -> CabinetBuild:
    """Return a build whose cabinets take parts of their own from their holes, as they are told.

    Raises:
        InputError: A part does not come out of the hole that is to give it.
    """
    left, taken = list(build.parts), list[FromHole]()
    for giver in _list_givers(build, unit):
        found = _find(left, giver.hole.gives, giver.cabinet)
        if found is not None:
            taken.append(_take(left, found, giver))
    return _keep(replace(build, parts=tuple(left)), taken, unit)


def take_plain(
    parts: Iterable[Part], build: CabinetBuild, unit: Unit
) -> tuple[tuple[Part, ...], CabinetBuild]:
    """Return the plain parts that are left for the sheets, and the build with those from holes.

    Args:
        parts: The plain parts that are needed.
        build: Cabinets whose own parts are taken already.
        unit: The unit of messages.

    Raises:
        InputError: There is no such part, or it does not come out of its hole.
    """
    left, taken = list(parts), list[FromHole]()
    own = {(each.cabinet, each.hole) for each in build.from_holes}
    for giver in _list_givers(build, unit):
        if (giver.cabinet, giver.hole.name) in own:
            continue
        found = _find(left, giver.hole.gives, "")
        if found is None:
            raise giver.refuse(
                f"it is to give {giver.hole.gives!r}, of which nothing is left to cut",
                "Name a [[part]], or a part of this cabinet as 'setout parts' lists it, with a "
                "count of one for each such hole at least.",
            )
        taken.append(_take(left, found, giver))
    return tuple(left), _keep(build, taken, unit)


def offer_from_holes(build: CabinetBuild, parts: Iterable[Part], unit: Unit) -> Iterator[str]:
    """Yield for each hole that gives nothing yet which parts of a job it could give.

    Args:
        build: The cabinets with the holes.
        parts: The parts of the job that come from sheets.
        unit: The unit to write in.
    """
    candidates = [part for part in parts if part.cabinet in ("", *build.letters)]
    for hole in build.design.fittings.holes if build.design else ():
        giver = _Giver(build=build, cabinet="", hole=hole, unit=unit)
        names = dict.fromkeys(
            part.name for part in candidates if not hole.gives and _comes_out(part, giver)
        )
        if names:
            yield (
                f"{', '.join(names)} would come out of the {hole.leaves} of the {hole.name}: "
                f'write gives = "{next(iter(names))}" there, and no sheet is cut for it.'
            )


def _list_givers(build: CabinetBuild, unit: Unit) -> Iterator[_Giver]:
    assert build.design is not None, f"{build.name}: its design is not known"
    for letter in build.letters:
        for hole in build.design.fittings.holes:
            if hole.gives:
                yield _Giver(build=build, cabinet=letter, hole=hole, unit=unit)


def _find(parts: list[Part], name: str, cabinet: str) -> int | None:
    return next(
        (
            number
            for number, part in enumerate(parts)
            if part.name == name and part.cabinet == cabinet
        ),
        None,
    )


def _take(left: list[Part], number: int, giver: _Giver) -> FromHole:
    """Take one copy of a part from those that are left."""
    part, hole, panel = left[number], giver.hole, giver.panel
    if (part.material, part.thickness) != (panel.board.material, panel.board.thickness):
        raise giver.refuse(
            f"{part.name!r} is not of the board that the {panel.name} is cut from",
            "Name a part of the same material and thickness.",
        )
    if not _comes_out(part, giver):
        sides = " × ".join(
            format_length(side, giver.unit) for side in (part.blank_length, part.blank_width)
        )
        raise giver.refuse(
            f"a piece of {sides} does not come out of its {hole.leaves}",
            "What the cutter takes, the pivot hole and a margin of "
            f"{format_length(MARGIN, giver.unit)} {giver.unit.value} are left out; see "
            "[cabinet.discs]. Take 'gives' out, or name a smaller part.",
        )
    if part.count == 1:
        del left[number]
    else:
        left[number] = replace(part, count=part.count - 1)
    return FromHole(
        part=replace(part, count=1, strip=None),
        cabinet=giver.cabinet,
        hole=hole.name,
        panel=panel.kind,
        cut_out=hole.cut_out,
        window=hole.window,
        kerf=giver.fittings.disc_kerf,
        pivot=giver.fittings.pivot,
    )


def _comes_out(part: Part, giver: _Giver) -> bool:
    """Return whether a part's blank comes out of a hole of the same board."""
    panel, fittings = giver.panel, giver.fittings
    is_same = (part.material, part.thickness) == (panel.board.material, panel.board.thickness)
    return is_same and fits_in_hole(
        part, giver.hole, panel, kerf=fittings.disc_kerf, pivot=fittings.pivot
    )


def _keep(build: CabinetBuild, taken: list[FromHole], unit: Unit) -> CabinetBuild:
    """Return a build with some parts from its holes, each cut after its hole."""
    fit_out = build.fit_out
    if not taken or fit_out is None:
        return build
    steps = {each.hole: _say_step(each, unit) for each in taken}
    holes = tuple(
        replace(sheet, order=(*sheet.order, steps[sheet.name])) if sheet.name in steps else sheet
        for sheet in fit_out.holes
    )
    return replace(
        build,
        fit_out=replace(fit_out, holes=holes),
        from_holes=(*build.from_holes, *taken),
    )


def _say_step(taken: FromHole, unit: Unit) -> str:
    part = taken.part
    size = " × ".join(format_length(side, unit) for side in (part.blank_length, part.blank_width))
    beside = "beside its pivot hole, " if taken.cut_out and taken.pivot else ""
    return (
        f"From the {taken.leaves} cut the {part.name}, {size}: {beside}"
        f"{format_length(MARGIN, unit)} off every edge of it, by hand or with a jigsaw, the "
        f"{taken.leaves} clamped to the bench."
    )
