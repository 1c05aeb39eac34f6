"""Expanding designs: the calculator's front door."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import chain

from nesting.cabinets.advice import find_questions, find_warnings
from nesting.cabinets.bench_advice import find_bench_advice
from nesting.cabinets.boards import Board
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.comparing import compare_builds
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign, GrainRound
from nesting.cabinets.families import Design, lay_out
from nesting.cabinets.fit_out import FitOut, Subject, fit_out
from nesting.cabinets.from_holes import take_own
from nesting.cabinets.grain_round import LOOPS, bind_loop, number_loop
from nesting.cabinets.handing import name_handed
from nesting.cabinets.hole_places import note_holes
from nesting.cabinets.joint_first import bind_pairs, warn_of_no_pair
from nesting.cabinets.listing import list_battens, list_parts
from nesting.cabinets.port_boards import list_port_boards
from nesting.cabinets.showing import find_hidden_kinds
from nesting.cabinets.sums import write_closing_sum
from nesting.errors import InputError
from nesting.lengths import Length, Unit
from nesting.parts import Part


def expand(
    design: Design,
    *,
    letters: tuple[str, ...],
    measured: Mapping[Board, Length],
    step: Length,
    unit: Unit,
    kerf: Length | None = None,
    spreads: Mapping[Board, Length] | None = None,
) -> CabinetBuild:
    """Return all that is cut for the cabinets of one design.

    Args:
        design: The design.
        letters: One for each of its cabinets.
        measured: Measured thickness of each board that has been measured. The others count with
            the thickness they are sold under, and a warning says so.
        step: Part sizes are rounded to this; see `nesting.cabinets.sums` for the rule.
        unit: The unit of sums, questions and warnings.
        kerf: The saw's kerf, for advice; None where it is not known.
        spreads: By how much the readings of each measured board differ; None for not at all.

    Raises:
        InputError: The cabinet cannot be built as designed.
    """
    assert len(letters) == design.count, "a letter for each cabinet"
    construction = construct(design, measured, step=step, unit=unit)
    parts = [_list_own(design, construction, each, step=step, unit=unit) for each in letters]
    fitted = _fit_out(design, construction, letters, measured, step=step, unit=unit)
    lining = [list_port_boards(fitted.boards, each, step=step, unit=unit) for each in letters]
    battens = [list_battens(construction.bars, each, step=step, unit=unit) for each in letters]
    width, depth, height = construction.outside
    warnings = [
        *find_warnings(design, construction, measured, parts[0], unit, spreads=spreads or {}),
        *warn_of_no_pair(design, construction),
    ]
    build = CabinetBuild(
        name=design.name,
        letters=letters,
        outside=(height, width, depth),
        parts=tuple(
            chain.from_iterable((*own, *boards) for own, boards in zip(parts, lining, strict=True))
        ),
        battens=tuple(chain.from_iterable(battens)),
        sums=tuple(
            write_closing_sum(construction.whole(way.axis), way.terms, way.axis.value, unit)
            for way in construction.chains
        ),
        questions=tuple(find_questions(design)),
        warnings=tuple(warnings),
        advice=tuple(find_bench_advice(design, construction, kerf=kerf, unit=unit)),
        edges=construction.find_edges(),
        panels=construction.panels,
        bars=construction.bars,
        spaces=construction.spaces,
        fit_out=fitted,
        design=design,
    )
    bare = replace(build, parts=parts[0])
    changes = _compare_with_nominal(bare, design, measured, step, unit)
    return take_own(replace(build, changes=changes), unit)


def construct(
    design: Design, measured: Mapping[Board, Length], *, step: Length, unit: Unit
) -> Construction:
    """Return one cabinet in space, checked, with handed parts named.

    Args:
        design: The design.
        measured: Measured thicknesses.
        step: Part sizes are rounded to this.
        unit: The unit of sums and of what is to be done.

    Raises:
        InputError: The cabinet cannot be built as designed.
    """
    construction = lay_out(design, measured, step=step, unit=unit)
    clashes = tuple(find_clashes(construction))
    assert not clashes, f"{design.name}: {'; '.join(clashes)}"
    loop = LOOPS[design.grain_round] if isinstance(design, BoxDesign) else ()
    drilled = [hole.panel for hole in design.fittings.holes]
    named = name_handed(
        number_loop(construction.shell, loop), always=frozenset(loop) or frozenset(drilled)
    )
    return replace(construction, shell=note_holes(named, design.fittings.holes))


def _list_own(
    design: Design, construction: Construction, letter: str, *, step: Length, unit: Unit
) -> tuple[Part, ...]:
    """Return the parts of one cabinet, those that must come from one strip bound together."""
    hidden = find_hidden_kinds(design, construction)
    parts = list_parts(construction.panels, letter, step=step, unit=unit, hidden=hidden)
    if not isinstance(design, BoxDesign):
        return parts
    if design.grain_round is not GrainRound.NO:
        return bind_loop(parts, construction.shell, design.grain_round)
    return bind_pairs(parts, construction) if design.joint_first else parts


def _fit_out(
    design: Design,
    construction: Construction,
    letters: tuple[str, ...],
    measured: Mapping[Board, Length],
    *,
    step: Length,
    unit: Unit,
) -> FitOut:
    subject = Subject(
        name=design.name,
        letters=letters,
        construction=construction,
        covering=design.covering,
        baffle=design.baffle,
        back=design.back,
    )
    return fit_out(subject, design.fittings, measured, step=step, unit=unit)


def _compare_with_nominal(
    build: CabinetBuild,
    design: Design,
    measured: Mapping[Board, Length],
    step: Length,
    unit: Unit,
) -> tuple[str, ...]:
    """Return the sizes that differ from those of boards as thick as they are called."""
    if all(real == board.thickness for board, real in measured.items()):
        return ()
    try:
        nominal = construct(design, {}, step=step, unit=unit)
    except InputError:
        return ()
    before = replace(
        build,
        parts=list_parts(nominal.panels, build.letters[0], step=step, unit=unit),
        battens=list_battens(nominal.bars, build.letters[0], step=step, unit=unit),
    )
    return compare_builds(before, build, unit)
