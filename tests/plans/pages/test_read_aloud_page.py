"""The page that is read aloud: complete, and not to be misread when it is turned round."""

import pytest

from plans.pages.clashes import find_clashes
from plans.pages.fonts import printable
from plans.pages.lettering import FIGURE
from plans.pages.pages import make_pages
from plans.pages.paper import PAPERS
from plans.pages.shapes import Page, Text
from plans.pages.strokes import UNDERLINE, strokes_of
from plans.plan import Plan
from plans.sections.read_aloud import make_spoken
from tests.plans.pages.plan_samples import random_plan, two_bass_cabinets_plan

PLANS = (two_bass_cabinets_plan(), *(random_plan(seed, (30, 12)) for seed in range(4)))


def spoken_pages(plan: Plan, paper: str) -> list[Page]:
    pages = make_pages(plan, PAPERS[paper], read_aloud=True)
    return [page for page in pages if page.title.startswith("Read aloud")]


def body(page: Page) -> list[Text]:
    texts = [shape for shape in page.shapes if isinstance(shape, Text)]
    first = next(place for place, text in enumerate(texts) if text.words.startswith("cut "))
    return texts[first:]


@pytest.mark.parametrize("paper", sorted(PAPERS))
@pytest.mark.parametrize("plan", PLANS)
def test_every_cut_is_on_it_and_nothing_stands_in_the_way(plan: Plan, paper: str) -> None:
    pages = spoken_pages(plan, paper)
    printed = " ".join(text.words for page in pages for text in body(page))
    for view in plan.sheets:
        for cut in make_spoken(view):
            assert printable(f"{cut.number} {cut.hold} {cut.keep}") in printed
    for page in pages:
        assert find_clashes(page) == ()


@pytest.mark.parametrize("plan", PLANS)
def test_every_6_and_9_is_underlined_and_every_figure_to_set_is_large(plan: Plan) -> None:
    for page in spoken_pages(plan, "A4"):
        for text in body(page):
            lines = [stroke for stroke in strokes_of(text) if stroke.pen == UNDERLINE]
            assert len(lines) == sum(sign in "69" for sign in text.words)
            if text.words.startswith(("keep", "trim", "guide")):
                assert text.height >= FIGURE


def test_nothing_else_of_the_plan_changes() -> None:
    plan = two_bass_cabinets_plan()
    plain = make_pages(plan, PAPERS["A4"])
    both = make_pages(plan, PAPERS["A4"], read_aloud=True)
    others = [page for page in both if not page.title.startswith("Read aloud")]
    assert [page.title for page in others] == [page.title for page in plain]
    assert {page.fingerprint for page in both} == {plan.fingerprint}
