"""The whole plan, and its fingerprint."""

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from nesting.job import Job
from nesting.layout import Layout, PartLeaf, Unplaced
from nesting.lengths import Unit, mm
from nesting.saw import Face
from nesting.sheets import Trim
from plans.plan import Figures, Plan, make_plan
from tests.nesting.hand_made import BIRCH, SAW, job, part, strips, two_cabinets
from tests.plans.processes import print_by_seed

ROOT = Path(__file__).parent.parent.parent
# Signs that look like a sign, maybe another one, when turned by 180 degrees (from memory).
LIKE_SIGNS_UPSIDE_DOWN = {"0": "0O", "1": "1I", "2": "2Z", "3": "E", "5": "S5", "7": "L", "8": "8B"}


def plan(made: Job, layout: Layout) -> Plan:
    return make_plan(made, Figures(layout=layout, bound=Decimal(62)))


def test_the_plan_of_two_cabinets_has_every_section() -> None:
    whole = plan(*two_cabinets())
    assert (whole.job_name, whole.unit) == ("Test shelves", Unit.MM)
    assert len(whole.sheets) == len(whole.sequences) == 1
    assert len(whole.parts) == 10
    assert len(whole.labels) == 13
    assert len(whole.offcuts) == 3
    assert whole.cautions
    assert whole.overview.bound_text == whole.shopping.bound_text
    assert whole.overview.bound_text == "Proven cheapest: no plan can cost less than 62.00."


def test_the_same_inputs_give_the_same_plan() -> None:
    assert plan(*two_cabinets()) == plan(*two_cabinets())


def test_the_fingerprint_is_the_same_in_every_process() -> None:
    code = (
        "from tests.nesting.hand_made import two_cabinets; from plans.plan import *; "
        "job, layout = two_cabinets(); print(make_plan(job, Figures(layout=layout)).fingerprint)"
    )
    assert len(print_by_seed(code)) == 1


def changed_jobs() -> list[tuple[str, Job]]:
    made, _ = two_cabinets()
    side, top, brace = made.parts
    return [
        ("kerf", replace(made, saw=replace(SAW, kerf=mm("2.5")))),
        ("guide offset", replace(made, saw=replace(SAW, base_left=mm("38.1")))),
        ("marked face", replace(made, saw=replace(SAW, marked_face=Face.FRONT))),
        ("thickness read", replace(made, sheets=(replace(BIRCH, measured=(mm("17.6"),)),))),
        ("price", replace(made, sheets=(replace(BIRCH, price=Decimal("62.01")),))),
        ("far trim", replace(made, sheets=(replace(BIRCH, trim=replace(BIRCH.trim, top=mm(9))),))),
        ("name", replace(made, name="Other shelves")),
        ("unit", replace(made, unit=Unit.INCH)),
        ("note on a label", replace(made, parts=(side, top, replace(brace, note="glue first")))),
    ]


@pytest.mark.parametrize(
    ("what", "other"), changed_jobs(), ids=[what for what, _ in changed_jobs()]
)
def test_any_change_gives_another_fingerprint(what: str, other: Job) -> None:
    made, layout = two_cabinets()
    assert plan(other, layout).fingerprint != plan(made, layout).fingerprint, what


def test_a_size_that_differs_by_a_tenth_gives_another_fingerprint() -> None:
    codes = set()
    for length in ("562", "562.1", "561.9"):
        made = job(part("Side", length, 300))
        sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=0)])])
        codes.add(plan(made, Layout(sheets=(sheet,))).fingerprint)
    assert len(codes) == 3


def test_a_fingerprint_upside_down_is_no_fingerprint() -> None:
    made, layout = two_cabinets()
    for number in range(200):
        code = plan(replace(made, name=f"Job {number}"), layout).fingerprint
        letters, figures = code.split("-")
        assert (len(letters), len(figures)) == (3, 5)
        assert letters.isalpha()
        assert figures.isdigit()
        # Turned, it starts with its last figure: never with one of the letters in use.
        assert not set(LIKE_SIGNS_UPSIDE_DOWN.get(figures[-1], "")) & set("ACFJKRTUVY")
        assert not set(figures) & set("69")


def test_a_plan_of_nothing_but_unplaced_parts() -> None:
    made = job(part("Beam", 2600, 100, 2))
    gap = Unplaced(part=0, count=2, reason="longer than every sheet")
    whole = plan(made, Layout(sheets=(), unplaced=(gap,)))
    assert (whole.sheets, whole.labels, whole.offcuts) == ((), (), ())
    assert [row.code for row in whole.parts] == ["A1", "A2"]
    assert whole.overview.unplaced == ("2 × Beam: longer than every sheet",)


def test_owned_sheets_need_no_money() -> None:
    made, layout = two_cabinets()
    owned = replace(BIRCH, owned=True, price=Decimal(0), trim=Trim())
    whole = plan(replace(made, sheets=(owned,)), layout)
    assert whole.shopping.cost == "0.00"
    assert whole.shopping.bound_text == "Nothing has to be bought."
    assert whole.overview.figures[1] == "0 sheets to buy, 0.00"
