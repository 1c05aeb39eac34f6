"""The pages for the bench, made from the sample of the hall's bass cabinets."""

from functools import cache
from math import hypot
from pathlib import Path

import pytest

from nesting.lengths import mm
from nesting.reading.job_toml import read_job
from nesting.solve import solve
from plans.pages.bench_pages import bench_pages
from plans.pages.clashes import find_clashes
from plans.pages.frame import number_pages
from plans.pages.paper import A4, LETTER, PAPERS
from plans.pages.shapes import Line, LineKind, Page, Rectangle, Text
from plans.plan import Plan, make_plan
from tests.plans.pages.plan_samples import two_bass_cabinets_plan

SAMPLES = Path(__file__).parents[3] / "samples"


@cache
def plan_of(name: str) -> Plan:
    job = read_job(SAMPLES / f"{name}.toml")
    return make_plan(job, solve(job, effort=20, seed=1))


@cache
def pages_of(name: str, paper: str = "A4") -> tuple[Page, ...]:
    made = plan_of(name)
    return number_pages(bench_pages(made, PAPERS[paper]), made)


def words(page: Page) -> list[str]:
    return [shape.words for shape in page.shapes if isinstance(shape, Text)]


def said(title: str) -> str:
    pages = pages_of("hall_bass_cabinets")
    found = [page for page in pages if title in page.title.split("; ")]
    return " ".join(text for page in found for text in words(page))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("name", ["hall_bass_cabinets", "stage_wedges"])
def test_nothing_stands_in_the_way_of_anything(name: str, paper: str) -> None:
    for page in pages_of(name, paper):
        assert find_clashes(page) == ()


def test_pages_come_in_the_order_of_work() -> None:
    pages = pages_of("hall_bass_cabinets")
    titles = list(dict.fromkeys(title for page in pages for title in page.title.split("; ")))
    assert titles == [
        "Parts",
        "Measure first",
        "Frame and joints",
        "Assembly",
        "Holes",
        "Template H1, H2",
        "Template H3",
        "Template H4",
        "Template H5, H6",
        "Checks",
        "Covering",
    ]


def test_plain_parts_need_no_bench_page_but_their_list() -> None:
    for paper in (A4, LETTER):
        drafts = bench_pages(two_bass_cabinets_plan(), paper)
        assert {draft.title for draft in drafts} == {"Parts"}


def test_every_hole_has_its_figures_from_the_job_file() -> None:
    holes = said("Holes")
    for figure in ("232", "258", "274", "170", "465", "102", "120", "112", "170 × 90", "180"):
        assert figure in holes.split() or figure in holes
    assert "Circles in shallow passes" in holes


def test_printed_bolts_lie_on_the_circle_inside_the_panel() -> None:
    for panel in plan_of("hall_bass_cabinets").bench.holes:
        for hole in panel.holes:
            x, y = (float(words.split()[1]) for words in hole.centre)
            for bolt in hole.bolts:
                across, up = map(float, bolt.distances)
                # each printed figure is off by 0.05 at most
                assert abs(hypot(across - x, up - y) - hole.bolt_circle / mm(2)) < 0.15
                assert 0 < bolt.at[0] < panel.across
                assert 0 < bolt.at[1] < panel.up


def test_a_back_is_drawn_as_seen_from_behind() -> None:
    sides = {panel.panel: panel.sides for panel in plan_of("hall_bass_cabinets").bench.holes}
    assert sides["baffle"][:2] == ("left", "right")
    assert sides["back"][:2] == ("right", "left")
    assert sides["left side"][:2] == ("rear", "front")
    assert sides["right side"][:2] == ("front", "rear")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_tile_carries_a_square_of_100_mm_with_its_diagonal(paper: str) -> None:
    tiles = [
        page for page in pages_of("hall_bass_cabinets", paper) if page.title.startswith("Template")
    ]
    for page in tiles:
        squares = [
            shape
            for shape in page.shapes
            if isinstance(shape, Rectangle) and (shape.width, shape.height) == (100.0, 100.0)
        ]
        assert len(squares) == 1
        diagonals = [
            hypot(shape.x2 - shape.x1, shape.y2 - shape.y1)
            for shape in page.shapes
            if isinstance(shape, Line) and shape.kind is LineKind.SHEET_EDGE
        ]
        assert any(abs(length - 141.4214) < 0.001 for length in diagonals)
        assert "DO NOT USE" in " ".join(words(page))
        assert any(size in " ".join(words(page)) for size in ("cut-out", "window 170"))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_tiles_of_a_driver_hold_its_whole_cut_out(paper: str) -> None:
    # What two tiles share is drawn twice: together no less than the circle, pi times 232 mm.
    tiles = [p for p in pages_of("hall_bass_cabinets", paper) if p.title == "Template H1, H2"]
    drawn = sum(
        hypot(shape.x2 - shape.x1, shape.y2 - shape.y1)
        for page in tiles
        for shape in page.shapes
        if isinstance(shape, Line) and shape.kind is LineKind.CUT
    )
    assert 728.8 <= drawn < 1.5 * 728.8


def test_battens_are_proven_and_their_sticks_add_up() -> None:
    (section,) = plan_of("hall_bass_cabinets").bench.battens
    assert "proven" in section.verdict
    for stick in section.sticks:
        used = sum(stick.pieces) + stick.kerf * len(stick.pieces) + 2 * stick.trim
        assert abs(stick.length - used - mm(stick.left)) <= mm("0.1")
    assert sum(stick.count * len(stick.pieces) for stick in section.sticks) == 16


def test_what_waits_has_blanks_and_its_reserved_size() -> None:
    waiting = said("Measure first")
    for text in ("Baffle", "blank 864 × 444", "− 3.6 =", "each side 1.8 = 0.8 covering"):
        assert text in waiting


def test_diagonals_follow_pythagoras() -> None:
    assert "Side, left: 1006.2 both" in said("Checks")
    assert round(hypot(900, 450), 1) == 1006.2


def test_the_covering_is_ordered_no_shorter_than_laid_out() -> None:
    (roll,) = plan_of("hall_bass_cabinets").bench.rolls
    ends = max(piece.from_end + piece.along for piece in roll.pieces)
    assert ends == roll.laid_out <= roll.length
    assert "Solvents" in said("Covering")
    assert "underside" in said("Covering")


def test_each_hazard_is_in_full_once() -> None:
    cautions = plan_of("hall_bass_cabinets").cautions
    topics = [caution.topic for caution in cautions]
    for topic in ("Circles", "Router", "Solvents", "Connector", "Hanging", "Mains"):
        assert topics.count(topic) == 1


def test_turned_tiles_change_every_other_template_page_and_no_other() -> None:
    made = plan_of("hall_bass_cabinets")
    plain, turned = (bench_pages(made, A4, turns_tiles=turns) for turns in (False, True))
    changed = [one.beside for one, other in zip(plain, turned, strict=True) if one != other]
    # H1 and H2 take two tiles by two, the window of the handles two side by side
    assert changed == ["tile 2 of 4, full size", "tile 3 of 4, full size", "tile 2 of 2, full size"]
