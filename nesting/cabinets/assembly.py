"""The order of assembly, and what becomes impossible after each step.

Holes are cut and T-nuts pulled in while a panel still lies on the bench; what goes inside comes
before the panel that closes the box. Common practice, no source.
"""

from collections.abc import Iterator

from nesting.cabinets.bench_tasks import (
    AssemblyTask,
    Bench,
    Plan,
    cut_joints,
    finish_edges,
    prepare,
    say_screws,
)
from nesting.cabinets.closing_design import Closing, Fit, Fitted
from nesting.cabinets.construction import Construction
from nesting.cabinets.ends import CLOSED_BY, find_closings, find_end
from nesting.cabinets.fittings import AssemblyWishes, LoadsFrom
from nesting.cabinets.holes import HoleKind
from nesting.cabinets.openings import find_openings, is_put_in_from_inside
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.cabinets.ways_out import fits_flat


def order_tasks(plan: Plan) -> tuple[AssemblyTask, ...]:
    """Return the steps of assembly in order."""
    bench = Bench(plan=plan)
    construction = plan.construction
    _stand_carcass(bench)
    here = [*find_closings(construction, "front"), *find_closings(construction, "rear")]
    here = [panel for panel in here if not _is_grooved(plan, panel)]
    early = [panel for panel in here if _is_early(plan, panel)]
    late = [panel for panel in here if panel not in early]
    for panel in early:
        _close(bench, panel, is_last=panel is early[-1] and not late)
    if _find_planted(plan):
        finish_edges(bench)
    if plan.covering is not None:
        bench.add("Cover the carcass. Let the glue of the covering set.")
    for panel in late:
        _close(bench, panel, is_last=panel is late[-1])
    _finish(bench)
    return tuple(bench.tasks)


def _stand_carcass(bench: Bench) -> None:
    construction = bench.plan.construction
    closings = find_closings(construction)
    grooved = tuple(panel.name for panel in closings if _is_grooved(bench.plan, panel))
    carcass = tuple(each.name for each in construction.shell if each not in closings)
    ends = {find_end(construction, panel) for panel in closings if panel.name in grooved}
    is_closed = ends == set(CLOSED_BY)
    let_in = _find_let_in(construction)
    carcass += tuple(each.name for each in construction.inner) if is_closed else let_in
    cut_joints(bench)
    prepare(bench, (*carcass, *grooved))
    if is_closed:
        _fill(bench)
    listed = [*carcass, *(f"{name} in its groove" for name in grooved)]
    screws = say_screws(bench.plan, lambda row: {row.through, row.into} <= set(carcass))
    bench.add(
        f"Glue up the carcass: {', '.join(listed)}.{screws} Check its diagonals.",
        panels=(*carcass, *grooved),
        closes=grooved[-1] if grooved else "",
    )
    if not _find_planted(bench.plan):
        finish_edges(bench)
    if is_closed:
        return
    if _rear_must_wait(bench):
        _stand_frame(bench, "front")
        return
    if not _baffle_comes_from_rear(bench):
        _stand_inner(bench)
    for end in ("front", "rear"):
        _stand_frame(bench, end)


def _find_let_in(construction: Construction) -> tuple[str, ...]:
    """Return inner panels that sit in grooves, or hold others in theirs: glued up together."""
    return tuple(
        inner.name
        for inner in construction.inner
        if any(inner.box.overlap(panel.box) for panel in construction.panels if panel != inner)
    )


def _stand_inner(bench: Bench) -> None:
    let_in = _find_let_in(bench.plan.construction)
    inner = tuple(each.name for each in bench.plan.construction.inner if each.name not in let_in)
    if inner:
        prepare(bench, inner)
        screws = say_screws(bench.plan, lambda row: row.into in inner or row.through in inner)
        bench.add(f"Fit {', '.join(inner)}.{screws}", panels=inner)


def _stand_frame(bench: Bench, end: str) -> None:
    if any(bar.name.startswith(f"{end} frame") for bar in bench.plan.construction.bars):
        screws = say_screws(bench.plan, lambda row: row.through.startswith(f"{end} frame"))
        bench.add(f"Fix the {end} frame of battens.{screws}", frames=(f"{end} frame",))


def _find_planted(plan: Plan) -> bool:
    """Return whether some closing is planted: the outside edges are whole only after it."""
    return any(closing and closing.fit is Fit.PLANTED for closing in plan.closings.values())


def _is_grooved(plan: Plan, panel: Panel) -> bool:
    """Return whether a closing sits in a groove: it goes in while the carcass is glued up."""
    closing = plan.find_closing(panel)
    return closing is not None and closing.fit is Fit.GROOVE


def _is_early(plan: Plan, panel: Panel) -> bool:
    """Return whether a closing goes in before the carcass is covered."""
    closing = plan.find_closing(panel)
    if closing is None or plan.covering is None or not closing.fit.is_late:
        return True
    return closing.fitted is Fitted.BEFORE_COVERING


def _close(bench: Bench, panel: Panel, *, is_last: bool) -> None:
    closing, name = bench.plan.find_closing(panel), panel.name
    is_front = find_end(bench.plan.construction, panel) == "front"
    if panel.oversize:
        bench.add(f"Measure the place of the {name} and trim it.")
    prepare(bench, (name,))
    if closing is not None and closing.wrapped and bench.plan.covering is not None:
        bench.add(f"Cover the {name}.")
    if is_last:
        _fill(bench)
    comes_from = " from the rear" if is_front and _baffle_comes_from_rear(bench) else ""
    screws = say_screws(bench.plan, lambda row: row.through == name)
    bench.add(f"Put the {name} in{comes_from}.{screws}", panels=(name,), closes=name)
    if comes_from:
        _stand_inner(bench)
        if _rear_must_wait(bench):
            _stand_frame(bench, "rear")


def _fill(bench: Bench) -> None:
    """Add what goes inside, before the box is closed."""
    wishes = bench.plan.wishes
    bench.inside_is_done = True
    if wishes.wiring:
        bench.add("Lay the wires inside and fasten them, with length to spare at both ends.")
    if wishes.damping:
        bench.add("Fix the damping to the inside.")
    for item in wishes.items:
        bench.add(f"Put in the {item.name}.")
    for placed in bench.plan.holes:
        if is_put_in_from_inside(placed):
            bench.add(f"Fix the {placed.hole.name} from the inside.", fitted=(placed.hole.name,))


def _finish(bench: Bench) -> None:
    if not bench.inside_is_done:
        _fill(bench)
    for placed in bench.plan.holes:
        is_fitted = placed.hole.wall or placed.hole.kind is HoleKind.CABLE
        if not is_fitted and not is_put_in_from_inside(placed):
            bench.add(f"Fit the {placed.hole.name} from outside.", fitted=(placed.hole.name,))
    hardware = bench.plan.hardware
    counted = ((hardware.feet, "feet"), (hardware.corners, "corner pieces"))
    named = [f"{count} {name}" for count, name in counted if count]
    if hardware.handles:
        named.append(f"{hardware.handles} handles")
    if named:
        bench.add(f"Screw on {', '.join(named)}.")


def _baffle_comes_from_rear(bench: Bench) -> bool:
    closing = bench.plan.closings.get("baffle")
    is_inset = closing is not None and closing.fit is Fit.INSET
    return is_inset and bench.plan.wishes.baffle_from is LoadsFrom.REAR


def _rear_must_wait(bench: Bench) -> bool:
    """Return whether a baffle from the rear does not pass the rear frame."""
    return _baffle_comes_from_rear(bench) and not baffle_passes(bench.plan.construction)


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
