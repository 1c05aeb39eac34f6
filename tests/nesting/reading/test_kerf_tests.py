"""The kerf from several cuts and one reading, from the job file to the page.

That many cuts are measured at once is common practice, no source; so are the 0.3 mm.
"""

import statistics
from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import inch, mm
from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.plan import make_plan

STOCK = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = "18 mm"
length = "1220 mm"
width = "610 mm"
[[part]]
name = "Shelf"
length = "500 mm"
width = "280 mm"
count = 2
"""


def comb(*tests: tuple[int, str]) -> str:
    return "".join(f"[[saw.kerf_test]]\ncuts = {n}\nmissing = {text}\n" for n, text in tests)


def read(text: str, head: str = "") -> Job:
    return read_job_text(head + STOCK + text, Path("comb.toml"))


def printed(job: Job) -> str:
    pages = make_pages(make_plan(job, solve(job, effort=0)), A4)
    words = (s.words for page in pages for s in page.shapes if isinstance(s, Text))
    return " ".join(words)


def refusal(text: str) -> str:
    with pytest.raises(InputError) as caught:
        read(text)
    return str(caught.value)


def test_what_is_missing_is_divided_by_the_cuts() -> None:
    assert read(comb((5, "12"))).saw.kerf == mm("2.4")
    assert read(comb((10, "27.4"))).saw.kerf == mm("2.7")  # 2.74 to a tenth


def test_several_tests_count_by_their_cuts() -> None:
    """The mean of the cuts themselves, by the standard library."""
    tests = ((4, "9.2"), (10, "25"), (7, "16.1"))
    cuts = [float(text) / n for n, text in tests for _ in range(n)]
    job = read(comb(*tests))
    assert abs(job.saw.kerf / mm(1) - statistics.fmean(cuts)) <= 0.05
    assert "2.4 mm, the mean of 21 cuts" in printed(job)


def test_a_test_in_inches_is_an_inch_kerf() -> None:
    job = read(comb((8, '"3/4"')), '[job]\nunits = "in"\n')
    assert job.saw.kerf == inch("0.095")  # 0.09375 to the nearest 0.005


def test_the_plan_is_made_with_the_kerf_of_the_test() -> None:
    """Two shelves of 500 and a kerf: what is left of the strip is smaller by the wider kerf."""
    made = [
        make_plan(job, solve(job, effort=0))
        for job in (read(comb((5, "16"))), read("[saw]\nkerf = 3.2\n"))
    ]
    assert made[0].sheets[0].rows == made[1].sheets[0].rows


@pytest.mark.parametrize(
    ("second", "is_told"), [("12.0", False), ("13.5", False), ("13.6", True), ("10.4", True)]
)
def test_tests_that_differ_by_more_than_0_3_mm_a_cut_are_told(
    second: str, *, is_told: bool
) -> None:
    page = printed(read(comb((5, "12.0"), (5, second))))
    assert ("The tests differ by 0.3 mm a cut" in page) == is_told


def test_a_kerf_and_tests_of_it_contradict_each_other() -> None:
    said = refusal("[saw]\nkerf = 2.4\n" + comb((5, "12")))
    assert "'kerf' is given, and tests of it too" in said
    assert "line 14" in said


def test_what_no_saw_removes_is_refused_with_its_line() -> None:
    assert "more than 10 mm a cut" in refusal(comb((2, "30")))
    assert "cuts" in refusal(comb((0, "12")))


def test_a_kerf_that_was_not_tested_is_said_to_be_the_usual_one() -> None:
    assert "kerf (default) 2.4 mm Saw a scrap" in printed(read(""))
