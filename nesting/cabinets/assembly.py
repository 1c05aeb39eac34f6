"""The order of assembly, and what becomes impossible after each step.

Holes are cut and T-nuts pulled in while a panel still lies on the bench; what goes inside comes
before the panel that closes the box. Common practice, no source.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from nesting.cabinets.construction import Construction
from nesting.cabinets.design import Closing, Covering, Fit, Fitted
from nesting.cabinets.ends import CLOSED_BY, find_closings, find_end
from nesting.cabinets.fittings import AssemblyWishes, Hardware, LoadsFrom
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Fastener, HoleKind
from nesting.cabinets.openings import find_openings, is_put_in_from_inside
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.cabinets.ways_out import fits_flat


@dataclass(frozen=True, slots=True, kw_only=True)
class AssemblyTask:
    """One step before it is known what it shuts out.

    Attributes:
        what: The step in a sentence.
        panels: Panels that stand after it.
        frames: Frames that stand after it.
        fitted: Holes that are filled after it.
        closes: The panel that it closes the cabinet with; empty for none.
    """

    what: str
    panels: tuple[str, ...] = ()
    frames: tuple[str, ...] = ()
    fitted: tuple[str, ...] = ()
    closes: str = ""


@dataclass(slots=True, kw_only=True)
class _Bench:
    """What the order of assembly is worked out from, and the tasks so far."""

    construction: Construction
    holes: tuple[PlacedHole, ...]
    covering: Covering | None
    closings: dict[str, Closing | None]
    wishes: AssemblyWishes
    hardware: Hardware
    tasks: list[AssemblyTask] = field(default_factory=list)
    inside_is_done: bool = False

    def add(
        self,
        what: str,
        *,
        panels: tuple[str, ...] = (),
        frames: tuple[str, ...] = (),
        fitted: tuple[str, ...] = (),
    ) -> None:
        """Append a step."""
        self.tasks.append(AssemblyTask(what=what, panels=panels, frames=frames, fitted=fitted))


def order_tasks(
    construction: Construction,
    holes: tuple[PlacedHole, ...],
    covering: Covering | None,
    closings: dict[str, Closing | None],
    wishes: AssemblyWishes,
    hardware: Hardware,
) -> tuple[AssemblyTask, ...]:
    """Return the steps of assembly in order.

    Args:
        construction: The cabinet.
        holes: Its holes.
        covering: What it is covered with, None for nothing.
        closings: What the design says of "baffle" and "back".
        wishes: What the order has to respect.
        hardware: What is screwed on at the end.
    """
    bench = _Bench(
        construction=construction,
        holes=holes,
        covering=covering,
        closings=closings,
        wishes=wishes,
        hardware=hardware,
    )
    _stand_carcass(bench)
    here = [*find_closings(construction, "front"), *find_closings(construction, "rear")]
    early = [panel for panel in here if _is_early(bench, panel)]
    late = [panel for panel in here if panel not in early]
    for panel in early:
        _close(bench, panel, is_last=panel is early[-1] and not late)
    if covering is not None:
        bench.add("Cover the carcass. Let the glue of the covering set.")
    for panel in late:
        _close(bench, panel, is_last=panel is late[-1])
    _finish(bench)
    return tuple(bench.tasks)


def _stand_carcass(bench: _Bench) -> None:
    construction = bench.construction
    closing_names = {panel.name for panel in find_closings(construction)}
    carcass = tuple(each.name for each in construction.shell if each.name not in closing_names)
    carcass += _find_let_in(construction)
    _prepare(bench, carcass)
    bench.add(f"Glue up the carcass: {', '.join(carcass)}. Check its diagonals.", panels=carcass)
    if _rear_must_wait(bench):
        _stand_frame(bench, "front")
        return
    if not _baffle_comes_from_rear(bench):
        _stand_inner(bench)
    for end in ("front", "rear"):
        _stand_frame(bench, end)


def _find_let_in(construction: Construction) -> tuple[str, ...]:
    """Return inner panels that sit in grooves of the carcass: they are glued up with it."""
    return tuple(
        inner.name
        for inner in construction.inner
        if any(inner.box.overlap(panel.box) for panel in construction.shell)
    )


def _prepare(bench: _Bench, panels: tuple[str, ...]) -> None:
    """Add the holes and T-nuts of panels that still lie on the bench."""
    for placed in bench.holes:
        if placed.panel.name not in panels:
            continue
        bench.add(f"Cut the hole for the {placed.hole.name} in the {placed.panel.name}.")
        if placed.hole.fastener is Fastener.T_NUTS:
            bench.add(
                f"Pull in {placed.hole.bolts} T-nuts of the {placed.hole.name} on the "
                f"{placed.panel.name} with a bolt; do not hammer them."
            )
        if placed.hole.wall:
            bench.add(f"Glue the boards of the {placed.hole.name} behind the {placed.panel.name}.")


def _stand_inner(bench: _Bench) -> None:
    let_in = _find_let_in(bench.construction)
    inner = tuple(each.name for each in bench.construction.inner if each.name not in let_in)
    if inner:
        _prepare(bench, inner)
        bench.add(f"Fit {', '.join(inner)}.", panels=inner)


def _stand_frame(bench: _Bench, end: str) -> None:
    if any(bar.name.startswith(f"{end} frame") for bar in bench.construction.bars):
        bench.add(f"Fix the {end} frame of battens.", frames=(f"{end} frame",))


def _find_closing(bench: _Bench, panel: Panel) -> Closing | None:
    return bench.closings.get(CLOSED_BY[find_end(bench.construction, panel)])


def _is_early(bench: _Bench, panel: Panel) -> bool:
    """Return whether a closing goes in before the carcass is covered."""
    closing = _find_closing(bench, panel)
    if closing is None or bench.covering is None or closing.fit is not Fit.INSET:
        return True
    return closing.fitted is Fitted.BEFORE_COVERING


def _close(bench: _Bench, panel: Panel, *, is_last: bool) -> None:
    closing, name = _find_closing(bench, panel), panel.name
    is_front = find_end(bench.construction, panel) == "front"
    if panel.oversize:
        bench.add(f"Measure the place of the {name} and trim it.")
    _prepare(bench, (name,))
    if closing is not None and closing.wrapped and bench.covering is not None:
        bench.add(f"Cover the {name}.")
    if is_last:
        _fill(bench)
    comes_from = " from the rear" if is_front and _baffle_comes_from_rear(bench) else ""
    bench.tasks.append(
        AssemblyTask(what=f"Put the {name} in{comes_from}.", panels=(name,), closes=name)
    )
    if comes_from:
        _stand_inner(bench)
        if _rear_must_wait(bench):
            _stand_frame(bench, "rear")


def _fill(bench: _Bench) -> None:
    """Add what goes inside, before the box is closed."""
    wishes = bench.wishes
    bench.inside_is_done = True
    if wishes.wiring:
        bench.add("Lay the wires inside and fasten them, with length to spare at both ends.")
    if wishes.damping:
        bench.add("Fix the damping to the inside.")
    for item in wishes.items:
        bench.add(f"Put in the {item.name}.")
    for placed in bench.holes:
        if is_put_in_from_inside(placed):
            bench.add(f"Fix the {placed.hole.name} from the inside.", fitted=(placed.hole.name,))


def _finish(bench: _Bench) -> None:
    if not bench.inside_is_done:
        _fill(bench)
    for placed in bench.holes:
        is_fitted = placed.hole.wall or placed.hole.kind is HoleKind.CABLE
        if not is_fitted and not is_put_in_from_inside(placed):
            bench.add(f"Fit the {placed.hole.name} from outside.", fitted=(placed.hole.name,))
    hardware = bench.hardware
    counted = ((hardware.feet, "feet"), (hardware.corners, "corner pieces"))
    named = [f"{count} {name}" for count, name in counted if count]
    if hardware.handles:
        named.append(f"{hardware.handles} handles")
    if named:
        bench.add(f"Screw on {', '.join(named)}.")


def _baffle_comes_from_rear(bench: _Bench) -> bool:
    closing = bench.closings.get("baffle")
    is_inset = closing is not None and closing.fit is Fit.INSET
    return is_inset and bench.wishes.baffle_from is LoadsFrom.REAR


def _rear_must_wait(bench: _Bench) -> bool:
    """Return whether a baffle from the rear does not pass the rear frame."""
    return _baffle_comes_from_rear(bench) and not baffle_passes(bench.construction)


def baffle_passes(construction: Construction) -> bool:
    """Return whether the baffle goes flat through the rear with its frame in place."""
    openings = find_openings(
        construction,
        (),
        panels=frozenset(),
        frames=frozenset({"front frame", "rear frame"}),
        fitted=frozenset(),
    )
    rear = next(opening for opening in openings if opening.name == "the open rear")
    return all(
        fits_flat((baffle.box.size(Axis.WIDTH), baffle.box.size(Axis.HEIGHT)), rear.sides)
        for baffle in find_closings(construction, "front")
    )


def list_warnings(
    construction: Construction, wishes: AssemblyWishes, closings: dict[str, Closing | None]
) -> Iterator[str]:
    """Yield what the order of assembly leaves to be decided."""
    closing = closings.get("baffle")
    is_inset = closing is not None and closing.fit is Fit.INSET
    if is_inset and wishes.baffle_from is LoadsFrom.REAR and not baffle_passes(construction):
        yield (
            "The baffle goes in from the rear and does not pass the rear frame: the rear frame is "
            "fixed after it, and the baffle cannot be taken out again."
        )
