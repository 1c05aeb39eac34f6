"""Sizes that may change, delivery, sessions and batches, as the job file says them."""

from decimal import Decimal
from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import inch, mm
from nesting.reading.job_toml import read_job_text
from nesting.terms import Dimension, Evening, Free, Terms

SHEET = """[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
"""
SHELF = '[[part]]\nname = "Shelf"\nlength = 600\nwidth = 300\n'
BOX = '[[cabinet]]\nname = "Box"\nheight = 500\nwidth = 400\ndepth = 350\n'


def read(text: str) -> Job:
    return read_job_text(SHEET + text, Path("job.toml"))


def message(text: str) -> str:
    with pytest.raises(InputError) as caught:
        read(text)
    return str(caught.value)


def test_nothing_is_free_and_nothing_is_asked_unless_it_is_said() -> None:
    assert read(SHELF).terms == Terms()


def test_free_sizes_belong_to_their_cabinet_or_part() -> None:
    job = read(
        SHELF
        + 'free = ["width"]\n'
        + BOX
        + 'free = ["depth", "height", "depth"]\nfree_limit = "1 in"\n'
    )
    assert job.terms.free == (
        Free(of="Shelf", is_cabinet=False, dimension=Dimension.WIDTH, limit=mm(20)),
        Free(of="Box", is_cabinet=True, dimension=Dimension.DEPTH, limit=inch(1)),
        Free(of="Box", is_cabinet=True, dimension=Dimension.HEIGHT, limit=inch(1)),
    )
    assert [each.name for each in job.assumptions if "change" in each.name] == [
        "width of Shelf may change by",
        "depth of Box may change by",
        "height of Box may change by",
    ]


@pytest.mark.parametrize(
    ("text", "sizes", "last"),
    [
        (SHELF + 'free = "depth"\n', "'length' and 'width'", "width"),
        (SHELF + "free = 5\n", "'length' and 'width'", "width"),
        (BOX + 'free = ["length"]\n', "'height', 'width' and 'depth'", "depth"),
    ],
)
def test_a_size_that_is_not_there_cannot_be_free(text: str, sizes: str, last: str) -> None:
    said = message(text)
    assert "key 'free': it does not name a size of this." in said
    assert said.endswith(f'Write one or more of {sizes}, such as free = ["{last}"].')


def test_a_limit_without_a_free_size_is_refused() -> None:
    assert "key 'free_limit': it limits a size that is free, and none is." in message(
        SHELF + "free_limit = 5\n"
    )


def test_delivery_sessions_and_batches_are_read() -> None:
    job = read(
        SHELF
        + "[buy]\ndelivery = 25.00\n[session]\nminutes = 90\nstore = [600, 1300]\n"
        + "[batch]\nlimit = 40\n"
    )
    assert job.terms == Terms(
        delivery=Decimal("25.00"),
        evening=Evening(minutes=Decimal(90), store=(mm(1300), mm(600))),
        most_open=40,
    )


def test_a_bare_session_table_means_the_defaults_and_says_so() -> None:
    job = read(SHELF + "[session]\n")
    assert job.terms.evening == Evening()
    assert {each.name for each in job.assumptions if each.is_default} >= {
        "longest session",
        "largest piece that can be put away flat",
    }


def test_one_side_is_no_size_of_a_store() -> None:
    assert "[session], key 'store': two lengths are needed." in message(
        SHELF + "[session]\nstore = [600]\n"
    )


def test_a_batch_needs_its_limit() -> None:
    assert "[batch]: 'limit' is missing." in message(SHELF + "[batch]\n")


def test_spares_may_take_the_minutes_that_the_job_allows() -> None:
    job = read(SHELF + "[batch]\nspare_minutes = 12\n")
    assert job.terms == Terms(spare_minutes=Decimal(12))
    assert "minutes for spares" in {each.name for each in job.assumptions}
    assert "[batch], key 'spare_minutes'" in message(SHELF + "[batch]\nspare_minutes = -1\n")


def test_the_cabinet_that_comes_first_is_the_first_of_its_name() -> None:
    tall = BOX.replace('"Box"', '"Tall box"\ncount = 2')
    job = read(BOX + tall + '[batch]\nfirst_whole = "Tall box"\n')
    assert (job.terms.first_whole, job.terms.most_open) == ("B", None)


def test_a_cabinet_that_is_not_there_cannot_come_first() -> None:
    said = message(BOX + '[batch]\nfirst_whole = "Bux"\n')
    assert "[batch], key 'first_whole': no cabinet has this name." in said
    assert "Write 'Box'." in said
    said = message(SHELF + '[batch]\nfirst_whole = "Box"\n')
    assert "Take the key out: the job has no cabinet." in said
