"""Expanding designs: the calculator's front door."""

from collections.abc import Mapping
from itertools import chain

from nesting.cabinets.advice import find_questions, find_warnings
from nesting.cabinets.boards import Board
from nesting.cabinets.box import lay_out_box
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.design import Design
from nesting.cabinets.listing import list_battens, list_parts
from nesting.cabinets.sums import write_closing_sum
from nesting.lengths import Length, Unit


def expand(
    design: Design,
    *,
    letters: tuple[str, ...],
    measured: Mapping[Board, Length],
    step: Length,
    unit: Unit,
) -> CabinetBuild:
    """Return all that is cut for the cabinets of one design.

    Args:
        design: The design.
        letters: One for each of its cabinets.
        measured: Measured thickness of each board that has been measured. The others count with
            the thickness they are sold under, and a warning says so.
        step: Part sizes are rounded to this; see `nesting.cabinets.sums` for the rule.
        unit: The unit of sums, questions and warnings.

    Raises:
        InputError: The cabinet cannot be built as designed.
    """
    assert len(letters) == design.count, "a letter for each cabinet"
    construction = lay_out_box(design, measured, step=step, unit=unit)
    clashes = tuple(find_clashes(construction))
    assert not clashes, f"{design.name}: {'; '.join(clashes)}"
    parts = [list_parts(construction.panels, each, step=step, unit=unit) for each in letters]
    battens = [list_battens(construction.bars, each, step=step, unit=unit) for each in letters]
    width, depth, height = construction.outside
    return CabinetBuild(
        name=design.name,
        letters=letters,
        outside=(height, width, depth),
        parts=tuple(chain.from_iterable(parts)),
        battens=tuple(chain.from_iterable(battens)),
        sums=tuple(
            write_closing_sum(construction.whole(way.axis), way.terms, way.axis.value, unit)
            for way in construction.chains
        ),
        questions=tuple(find_questions(design)),
        warnings=tuple(find_warnings(design, construction, measured, parts[0], unit)),
        edges=construction.find_edges(),
        panels=construction.panels,
        bars=construction.bars,
        spaces=construction.spaces,
    )
