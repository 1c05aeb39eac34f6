"""Pages compared with pictures kept beside this file, as text.

After a change that is meant, look at the new pages, then run once with SETOUT_NEW_PICTURES=1 in
the environment and commit the pictures with the change.
"""

import os
from pathlib import Path

import pytest

from nesting.lengths import Unit, mm
from plans.pages.clashes import find_clashes
from plans.pages.frame import number_pages
from plans.pages.paper import Paper
from plans.pages.sheet_page import sheet_pages
from plans.sections.repeats import Repeat
from plans.writers.svg import write_svg
from tests.plans.pages.plan_samples import (
    CAUTION,
    Leaf,
    cross,
    make_sample_plan,
    make_sheet,
    rip,
    trimmed,
)

FOLDER = Path(__file__).parent
SMALL = Paper(name="small", width_mm=210.0, height_mm=190.0)


def small_sheet_page() -> bytes:
    tree = trimmed(
        cross(
            "600",
            rip("380", Leaf(code="A1", name="Side"), Leaf()),
            rip("380", Leaf(code="A6", name="Top"), Leaf(code="L1")),
        )
    )
    view = make_sheet(tree, mm(1220), mm(610))
    (draft, *_) = sheet_pages(Repeat(view=view, numbers=(1,)), Unit.MM, (CAUTION,), SMALL)
    (page,) = number_pages([draft], make_sample_plan((view,)))
    assert find_clashes(page) == ()
    return write_svg(page)


@pytest.mark.parametrize(("name", "draw"), [("small_sheet_page", small_sheet_page)])
def test_a_page_looks_as_it_did(name: str, draw: object) -> None:
    assert callable(draw)
    path = FOLDER / f"{name}.svg"
    drawn = draw()
    if os.environ.get("SETOUT_NEW_PICTURES") == "1":
        path.write_bytes(drawn)
    assert drawn.decode().splitlines() == path.read_text(encoding="utf-8").splitlines()
