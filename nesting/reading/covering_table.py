"""The table [covering]: what the cabinets of a job are covered with."""

from collections.abc import Iterator
from typing import Final

from nesting.cabinets.closing_design import Covering
from nesting.job import Assumption
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.tables import Table
from nesting.reading.values import with_unit

THICKEST_COVERING: Final = mm(20)
MOST_EASE: Final = mm(20)
BARE: Final = "none"


def read_covering(table: Table, usual: Covering | None = None) -> Covering | None:
    """Return a covering, None where there is no such table.

    Args:
        table: The table [covering], or the covering of one cabinet.
        usual: Where what is left out comes from; None for the defaults.
    """
    if table.is_absent:
        return usual
    fallback = usual or default_covering(table.unit)
    covering = Covering(
        thickness=table.length(
            "thickness", fallback.thickness, may_be_zero=True, most=THICKEST_COVERING
        ),
        ease=table.length("ease", fallback.ease, may_be_zero=True, most=MOST_EASE),
        lining=table.length("lining", fallback.lining, may_be_zero=True, most=THICKEST_COVERING),
    )
    table.finish()
    return covering


def default_covering(unit: Unit) -> Covering:
    """Return what a covering is taken to be where nothing is said. Judgement, no source."""
    length: Length = inch("1/32") if unit is Unit.INCH else mm(1)
    return Covering(thickness=length, ease=length)


def assume_covering(covering: Covering | None, table: Table) -> Iterator[Assumption]:
    """Yield what is taken for granted about the covering of the job, nothing where it has none."""
    if covering is None:
        return
    yield Assumption(
        name="one layer of covering",
        value=with_unit(covering.thickness, table.unit),
        is_default=not table.has("thickness"),
        check="Glue a scrap to a scrap and measure how much thicker it is.",
    )
    yield Assumption(
        name="clearance on each side of a panel in a covered opening",
        value=with_unit(covering.ease, table.unit),
        is_default=not table.has("ease"),
        check="Slide two covered scraps past each other.",
    )
