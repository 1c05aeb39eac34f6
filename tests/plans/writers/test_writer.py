import pytest

from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.writers.pdf import write_pdf
from plans.writers.svg import write_svg
from plans.writers.writer import WRITERS, Written
from tests.plans.pages.plan_samples import two_bass_cabinets_plan

PAGES = make_pages(two_bass_cabinets_plan(), A4)[:3]


@pytest.mark.parametrize("name", sorted(WRITERS))
def test_every_writer_gives_the_same_files_again(name: str) -> None:
    files = WRITERS[name](PAGES)
    assert files == WRITERS[name](PAGES)
    assert len({written.ending for written in files}) == len(files)
    assert all(written.content for written in files)


def test_a_pdf_holds_all_pages_and_an_svg_holds_one() -> None:
    assert WRITERS["pdf"](PAGES) == (Written(ending=".pdf", content=write_pdf(PAGES)),)
    assert [written.ending for written in WRITERS["svg"](PAGES)] == [
        ".page-01.svg",
        ".page-02.svg",
        ".page-03.svg",
    ]
    assert WRITERS["svg"](PAGES)[1].content == write_svg(PAGES[1])
