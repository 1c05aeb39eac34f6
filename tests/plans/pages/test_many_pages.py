"""Generated plans, many of them: tiny parts, sixty on a sheet, long names, 64ths of an inch."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import PAPERS
from plans.pages.shapes import Role, Text
from plans.plan import Plan
from tests.plans.pages.plan_samples import random_plan

NAMES = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), min_size=1, max_size=90)


@st.composite
def plans(draw: st.DrawFn) -> Plan:
    counts = draw(st.lists(st.integers(1, 60), min_size=1, max_size=3))
    return random_plan(draw(st.integers(0, 10**6)), tuple(counts), job_name=draw(NAMES))


@pytest.mark.property
@settings(max_examples=120, deadline=None)
@given(plan=plans(), paper=st.sampled_from(sorted(PAPERS)))
def test_no_page_has_anything_in_the_way_and_no_cut_is_missing(plan: Plan, paper: str) -> None:
    pages = make_pages(plan, PAPERS[paper])
    for page in pages:
        assert find_clashes(page) == ()
    keeps = sorted(
        shape.words
        for page in pages
        for shape in page.shapes
        if isinstance(shape, Text) and shape.role is Role.KEEP
    )
    asked = [token for view in plan.sheets for row in view.rows for token in row.keep.split(" ")]
    assert keeps == sorted(asked)
