"""One finished cabinet in words: size, mass, volume, ways out, and what is to be looked at."""

from collections import Counter
from collections.abc import Iterator

from nesting.cabinets.bays import find_bays
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.hole_bodies import NM3_PER_LITRE
from nesting.cabinets.space import Axis
from nesting.lengths import Unit, mm, round_to
from plans.sections.numbers import show, show_kg

PARTING = ("Shelf", "Divider")
TENTH = mm("0.1")
"""Bays that are spread evenly are divided in whole nanometres; a rule shows no more than this."""


def say_finished(build: CabinetBuild, unit: Unit) -> Iterator[str]:
    """Yield the volume, the mass and the ways out of one finished cabinet."""
    fit = build.fit_out
    if fit is None:
        return
    width, depth, height = (show(side, unit) for side in fit.finished)
    yield (
        f"Each, finished: {height} × {width} × {depth} {unit.value} over all, about "
        f"{show_kg(fit.mass.whole)} kg with what is fitted, without glue, covering and screws"
    )
    gross, net = (_litres(volume) for volume in (fit.room.gross, fit.room.net))
    yield f"Inside: {gross} litres, {net} of them free of braces, battens and fittings"
    yield from _say_bays(build, unit)
    for way in fit.ways:
        if way.passes:
            yield way.text[:1].upper() + way.text[1:]


def _say_bays(build: CabinetBuild, unit: Unit) -> Iterator[str]:
    """Yield the clear size of each bay, where shelves or dividers make several."""
    parting = [panel for panel in build.panels if panel.kind in PARTING]
    if not parting:
        return
    counts = Counter(
        " × ".join(
            show(round_to(bay.size(axis), TENTH), unit) for axis in (Axis.WIDTH, Axis.HEIGHT)
        )
        for bay in find_bays(build.spaces[0].box, parting)
    )
    listed = ", ".join(f"{count} of {size}" for size, count in counts.items())
    yield f"Bays, clear width × height from the bottom up: {listed} {unit.value}"


def _litres(volume: int) -> str:
    """Return cubic nanometres as litres to 0.1."""
    tenths = (2 * volume * 10 + NM3_PER_LITRE) // (2 * NM3_PER_LITRE)
    return f"{tenths // 10}.{tenths % 10}"


def list_fit_warnings(build: CabinetBuild) -> Iterator[str]:
    """Yield what meets, what does not get out, and what else is to be looked at."""
    fit = build.fit_out
    if fit is None:
        return
    yield from fit.clashes
    for way in fit.ways:
        if not way.passes:
            yield way.text[:1].upper() + way.text[1:]
    yield from fit.warnings
