"""What stands on each screen of the phone page, as HTML."""

from collections.abc import Iterable

from plans.phone.records import (
    Cut,
    End,
    Holes,
    Loading,
    Safety,
    Screen,
    SetUp,
    SheetStart,
    Shop,
    Stop,
    Yard,
)
from plans.writers.html_bench import end, holes
from plans.writers.html_sawing import cut, safety, set_up, sheet_start, stop
from plans.writers.html_trip import loading, shop, yard


def screen_body(screen: Screen) -> Iterable[str]:  # noqa: C901, PLR0911 - one line a kind
    """Return what stands on a screen."""
    match screen:
        case Shop():
            return shop(screen)
        case Yard():
            return yard(screen)
        case Loading():
            return loading(screen)
        case Safety():
            return safety(screen)
        case SetUp():
            return set_up(screen)
        case SheetStart():
            return sheet_start(screen)
        case Cut():
            return cut(screen)
        case Stop():
            return stop(screen)
        case Holes():
            return holes(screen)
        case End():
            return end(screen)
