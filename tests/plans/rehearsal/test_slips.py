"""One figure changed by 2 mm, anywhere: at least 99 of 100 such slips are caught.

They are caught by what comes off the virtual saw; the fingerprint is not looked at.
"""

from collections.abc import Callable
from typing import Any

import pytest

from plans.rehearsal import rehearse
from tests.plans.rehearsal.mutations import Figure, figures_of, random_slips, slip
from tests.plans.rehearsal.real_plans import planned
from tests.plans.rehearsal.samples import SAMPLES, inches, metric

Json = dict[str, Any]
# Random jobs whose plans have 20 to 45 cuts: both units, both faces, trims, oversize parts.
SEEDS = (4, 5, 9, 14, 22, 25)


def missed(document: Json, slips: list[tuple[Figure, Json]]) -> list[Figure]:
    assert rehearse(document).faults == ()
    return [figure for figure, changed in slips if not rehearse(changed).faults]


def share_caught(each: int) -> tuple[int, float, list[Figure]]:
    """Return how many slips were tried, the share caught, and those that were not."""
    escaped: list[Figure] = []
    count = 0
    for seed in SEEDS:
        document = planned(seed)[3]
        slips = list(random_slips(document, each, seed))
        count += len(slips)
        escaped += missed(document, slips)
    return count, 1 - len(escaped) / count, escaped


def test_99_of_100_random_slips_in_real_plans_are_caught() -> None:
    count, share, escaped = share_caught(each=20)
    assert count == 120
    assert share >= 0.99, escaped


@pytest.mark.slow
def test_297_of_300_random_slips_in_real_plans_are_caught(
    record_property: Callable[[str, object], None],
) -> None:
    count, share, escaped = share_caught(each=50)
    record_property("share of slips caught", share)
    assert count == 300
    assert share >= 0.99, escaped


@pytest.mark.parametrize("sample", SAMPLES)
def test_every_slip_in_a_printed_figure_of_a_sample_is_caught(sample: str) -> None:
    document = SAMPLES[sample]()
    assert missed(document, every_printed_slip(document)) == []


@pytest.mark.slow
@pytest.mark.parametrize("seed", SEEDS)
def test_every_slip_in_a_printed_figure_of_a_real_plan_is_caught(seed: int) -> None:
    document = planned(seed)[3]
    assert missed(document, every_printed_slip(document)) == []


def every_printed_slip(document: Json) -> list[tuple[Figure, Json]]:
    return [
        (figure, slip(document, figure, sign))
        for figure in figures_of(document)
        if "printed" in figure.path
        for sign in (-1, 1)
    ]


def test_a_slip_changes_one_figure_by_2_mm_and_nothing_else() -> None:
    keep = ("sheets", 0, "printed", "rows", 2, "keep")
    changed = slip(metric(), Figure(keep, 0), 1)
    assert changed["sheets"][0]["printed"]["rows"][2]["keep"] == "358"
    changed["sheets"][0]["printed"]["rows"][2]["keep"] = "356"
    assert changed == metric()


def test_slips_on_a_page_in_inches_are_5_64ths_the_nearest_to_2_mm() -> None:
    guide = ("sheets", 0, "printed", "rows", 0, "guide_left")
    for sign, text in ((1, "12 45/64"), (-1, "12 35/64")):
        changed = slip(inches(), Figure(guide, 0), sign)
        assert changed["sheets"][0]["printed"]["rows"][0]["guide_left"] == text


def test_the_figures_of_a_sum_slip_one_by_one() -> None:
    text = ("sheets", 0, "printed", "sums", 0, "text")
    figures = [figure for figure in figures_of(metric()) if figure.path == text]
    assert [figure.place for figure in figures] == [0, 1, 2, 3]
    assert (
        slip(metric(), figures[2], 1)["sheets"][0]["printed"]["sums"][0]["text"]
        == "490 = 356 + 4.4 + 131.6 left"
    )
