"""Strip sums: every figure of a row, and what is left."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import HealthCheck, given, settings

from nesting.job import Job
from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.sheets import Trim
from plans.sections.cut_table import StripSum
from plans.sections.strip_sums import make_sums
from tests.nesting.hand_made import BIRCH, guillotine_jobs, job, part, strips, two_cabinets
from tests.plans.sections.helpers import worked_out


def sums_of(made: Job, layout: Layout) -> list[StripSum]:
    return [line for sheet in worked_out(made, layout).sheets for line in make_sums(made, sheet)]


def assert_closes(text: str) -> None:
    total, terms = text.split(" = ")
    figures = [Fraction(term.split()[0]) for term in terms.split(" + ")]
    assert sum(figures) == Fraction(total)
    assert text.endswith(" left")


def test_two_cabinets_print_the_sum_of_every_strip() -> None:
    assert {line.piece: line.text for line in sums_of(*two_cabinets())} == {
        "P2": "1210 = 300 + 2.4 + 300 + 2.4 + 80 + 2.4 + 522.8 left",
        "P3": "2430 = 562 + 2.4 + 562 + 2.4 + 562 + 2.4 + 562 + 2.4 + 172.4 left",
        "P5": "2430 = 400 + 2.4 + 400 + 2.4 + 400 + 2.4 + 400 + 2.4 + 820.4 left",
        "P7": "2430 = 400 + 2.4 + 400 + 2.4 + 1625.2 left",
    }


def test_the_far_trim_is_no_slack() -> None:
    slack = {line.piece: line.slack for line in sums_of(*two_cabinets())}
    assert slack == {"P2": "512.8", "P3": "162.4", "P5": "810.4", "P7": "1615.2"}


def four_across(width: int) -> StripSum:
    stock = replace(BIRCH, trim=Trim())
    made = job(part("Shelf", width, 600, 4), sheets=[stock])
    leaves = [(mm(width), [PartLeaf(part=0, copy=copy, turned=True)]) for copy in range(4)]
    return sums_of(made, Layout(sheets=(strips(made, leaves),)))[0]


def test_less_slack_than_1_mm_a_cut_and_2_mm_is_tight() -> None:
    # 4 x 303 and 4 kerfs of 2.4 in 1220 leave -1.6: the fourth cut runs off. 4 x 301 leave 6.4,
    # more than 4 x 1 + 2; 4 x 302 leave 2.4, less.
    assert (four_across(301).slack, four_across(301).is_tight) == ("6.4", False)
    assert (four_across(302).slack, four_across(302).is_tight) == ("2.4", True)


def test_a_row_that_fills_its_piece_has_no_slack() -> None:
    line = four_across(303)
    assert line.text == "1220 = 303 + 2.4 + 303 + 2.4 + 303 + 2.4 + 303 + 0.8 + 0 left"
    assert (line.slack, line.is_tight) == ("0", True)


def test_a_trim_stands_in_the_sum_of_its_row() -> None:
    stock = replace(BIRCH, trim=Trim(bottom=mm(10)))
    made = job(part("Shelf", 562, 300), sheets=[stock])
    layout = Layout(sheets=(strips(made, [(mm(300), [PartLeaf(part=0, copy=0)])]),))
    assert sums_of(made, layout)[0].text == "1220 = 10 trim + 300 + 2.4 + 907.6 left"


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(guillotine_jobs(most_cuts=15))
def test_every_sum_closes_exactly(made: tuple[Job, Layout]) -> None:
    for line in sums_of(*made):
        assert_closes(line.text)
        assert Fraction(line.slack) >= 0
