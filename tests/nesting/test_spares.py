"""Spares out of what a finished layout leaves over."""

from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.checks import check_layout
from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.layout import Layout, PartLeaf, Rect, RestLeaf, walk
from nesting.lengths import mm
from nesting.parts import Grain, is_spare
from nesting.spares import add_spares
from nesting.terms import Terms
from tests.nesting.hand_made import BIRCH, job, part, strips

PANEL = part("Panel", 800, 500, 4)


def laid_out(limit: str = "30", **changes: object) -> tuple[Job, Layout]:
    """Return four panels and two rails; 800 × 500 is left over, and a strip below 200 wide."""
    made = replace(
        job(replace(PANEL, **changes), part("Rail", 700, 80, 2)),  # type: ignore[arg-type]
        terms=Terms(spare_minutes=Decimal(limit)),
    )
    panels = [PartLeaf(part=0, copy=copy) for copy in range(4)]
    rails = [PartLeaf(part=1, copy=copy) for copy in range(2)]
    rows = [(mm(500), panels[:2]), (mm(500), panels[2:]), (mm(80), rails)]
    return made, Layout(sheets=(strips(made, rows),))


def spares(made: Job, layout: Layout) -> list[tuple[str, Rect]]:
    return [
        (made.parts[place.node.part].name, place.rect)
        for sheet in layout.sheets
        for place in walk(sheet.root, Rect(x=0, y=0, length=BIRCH.length, width=BIRCH.width))
        if isinstance(place.node, PartLeaf) and is_spare(made.parts[place.node.part].name)
    ]


def work(made: Job, layout: Layout) -> Decimal:
    return sum((minutes(made, order_cuts(made, tree)) for tree in layout.sheets), Decimal(0))


def test_a_spare_lies_in_what_was_left_and_every_rule_of_layouts_is_kept() -> None:
    made, layout = laid_out()
    whole = Rect(x=0, y=0, length=BIRCH.length, width=BIRCH.width)
    rests = [
        place.rect
        for place in walk(layout.sheets[0].root, whole)
        if isinstance(place.node, RestLeaf)
    ]
    grown, spared = add_spares(made, layout)
    found = spares(grown, spared)
    assert {name for name, _ in found} == {"Spare: Panel", "Spare: Rail"}
    for _, rect in found:
        assert any(
            rest.x <= rect.x
            and rest.y <= rect.y
            and rect.x + rect.length <= rest.x + rest.length
            and rect.y + rect.width <= rest.y + rest.width
            for rest in rests
        )
    assert set(check_layout(grown, spared)) <= set(check_layout(made, layout))
    assert len(spared.sheets) == len(layout.sheets)
    assert grown.parts[: len(made.parts)] == made.parts
    assert [each.spare_of for each in grown.parts[len(made.parts) :]] == [(0,), (1,)]


@pytest.mark.parametrize("limit", ["0", "0.5", "1", "2", "3", "5", "8"])
def test_spares_take_no_more_than_the_minutes_allowed(limit: str) -> None:
    made, layout = laid_out(limit)
    grown, spared = add_spares(made, layout)
    assert work(grown, spared) - work(made, layout) <= Decimal(limit)


def test_without_the_wish_nothing_changes() -> None:
    made, layout = laid_out()
    plain = replace(made, terms=Terms())
    assert add_spares(plain, layout) == (plain, layout)


def test_what_shows_comes_before_what_is_hidden() -> None:
    # both kinds are as large, and only one piece is left that either fits
    hidden, shown = replace(PANEL, count=3, is_hidden=True), replace(PANEL, name="Door", count=2)
    made = replace(job(hidden, shown), terms=Terms(spare_minutes=Decimal(30)))
    rows = [
        (mm(500), [PartLeaf(part=kind, copy=copy) for copy in range(made.parts[kind].count)])
        for kind in range(2)
    ]
    grown, spared = add_spares(made, Layout(sheets=(strips(made, rows),)))
    assert [name for name, _ in spares(grown, spared)] == ["Spare: Door"]


def test_grain_runs_in_a_spare_as_in_the_part() -> None:
    made, layout = laid_out(grain=Grain.WIDTH)
    grown, spared = add_spares(made, layout)
    assert "Spare: Panel" not in {name for name, _ in spares(grown, spared)}
