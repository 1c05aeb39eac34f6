import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import Unit, inch, mm
from nesting.reading.starter import QUESTIONS, starter_job
from tests.nesting.reading.job_files import read


def answers(**given: str) -> dict[str, str]:
    """Return the answers given, and the defaults of the other questions."""
    found: dict[str, str] = {}
    for question in QUESTIONS:
        found[question.key] = given.get(question.key, question.default(found))
    return found


def started(folder: Path, **given: str) -> Job:
    return read(folder, starter_job(answers(**given)))


def refused(**given: str) -> str:
    with pytest.raises(InputError) as error:
        starter_job(answers(**given))
    return str(error.value)


def test_the_questions_are_few() -> None:
    assert [question.key for question in QUESTIONS] == [
        "name",
        "units",
        "height",
        "width",
        "depth",
        "count",
        "sheet_length",
        "sheet_width",
        "thickness",
        "price",
        "kerf",
    ]


@pytest.mark.parametrize("unit", Unit)
def test_the_defaults_make_a_job_with_nothing_left_to_ask(tmp_path: Path, unit: Unit) -> None:
    job = started(tmp_path, units=unit.value)
    assert job.unit is unit
    (build,) = job.cabinets
    assert build.questions == ()
    assert len(build.letters) == 2
    assert sum(part.count for part in job.parts) == 2 * 6  # two sides, top, bottom, baffle, back


def test_every_answer_arrives_in_the_job(tmp_path: Path) -> None:
    job = started(
        tmp_path,
        name='The "loud" pair \\ № 2  # not a remark',
        height="30 in",
        width="500.5",
        depth="400",
        count="3",
        sheet_length="2500",
        sheet_width="1250",
        thickness="15",
        price="48.5",
        kerf="3.0",
    )
    (sheet,), (build,) = job.sheets, job.cabinets
    assert job.name == 'The "loud" pair \\ № 2  # not a remark'
    assert build.outside == (mm(762), mm("500.5"), mm(400))
    assert build.letters == ("A", "B", "C")
    assert (sheet.length, sheet.width, sheet.thickness) == (mm(2500), mm(1250), mm(15))
    assert str(sheet.price) == "48.5"
    assert job.saw.kerf == mm(3)


def test_fractions_of_an_inch_arrive_in_the_job(tmp_path: Path) -> None:
    job = started(tmp_path, units="in", thickness="23/32", kerf="1/8", height="30 1/4")
    assert job.sheets[0].thickness == inch("23/32")
    assert job.saw.kerf == inch("1/8")
    assert job.cabinets[0].outside[0] == inch("30.25")


def test_remarks_stand_in_one_column() -> None:
    lines = starter_job(answers()).split("\n")
    columns = {line.index("# ", 1) for line in lines if "  # " in line and "measured" not in line}
    assert columns == {36}


def test_the_lines_that_are_remarks_can_be_taken_into_use(tmp_path: Path) -> None:
    text = starter_job(answers())
    for key in ("guide_length", "base_left", "base_right", "marked_face", "measured", "[[part]]"):
        assert f"\n# {key}" in text
        text = text.replace(f"\n# {key}", f"\n{key}")
    for key in ("name", "length", "width", "grain"):
        text = text.replace(f"\n# {key} =", f"\n{key} =")
    job = read(tmp_path, text)
    assert job.parts[0].name == "Shelf"
    assert job.sheets[0].measured == (mm("17.7"), mm("17.8"))


def test_what_the_saw_is_said_to_be_is_what_is_taken_where_nothing_is_said(
    tmp_path: Path,
) -> None:
    for unit in Unit:
        text = starter_job(answers(units=unit.value))
        plain = read(tmp_path, text).saw
        for key in ("guide_length", "base_left", "base_right", "marked_face"):
            text = text.replace(f"\n# {key}", f"\n{key}")
        assert read(tmp_path, text).saw == plain


def test_all_bad_answers_are_told_in_the_words_of_their_questions() -> None:
    assert refused(name=" ", height="abc", count="0", price="62,50", kerf="-1") == (
        "Title of the job: the text is empty.\n"
        "Write something, or leave it out.\n"
        "Outside height of a cabinet: 'abc' is not a length.\n"
        "Write a number, such as 464.6, 18 mm or 23/32 in.\n"
        "How many cabinets: 0 is less than 1.\n"
        "Write a whole number of 1 or more.\n"
        "Price of a sheet: '62,50' is not a number.\n"
        "Write a price such as 62.50.\n"
        "Kerf of the saw: '-1' is negative.\n"
        "Write a length of 0 or more."
    )


def test_a_unit_that_is_none_is_told_once() -> None:
    assert refused(units="cm") == (
        "Unit of bare numbers, mm or in: 'cm' is not one of the choices.\n"
        "Did you mean 'mm'? Write 'mm' or 'in'."
    )


def test_a_cabinet_that_cannot_be_built_is_refused_before_a_file_is_written() -> None:
    assert refused(depth="60").startswith(
        "the job file, line 32, [[cabinet]] 1 'Cabinet', key 'depth': 60 mm leaves no inside: "
    )


@pytest.mark.property
@given(st.text(st.characters(codec="utf-8"), min_size=1, max_size=80))
def test_any_name_that_can_be_printed_arrives_whole(name: str) -> None:
    if name.strip() and name.strip().isprintable():
        assert tomllib.loads(starter_job(answers(name=name)))["job"]["name"] == name.strip()
    else:
        assert refused(name=name).startswith("Title of the job: the text ")
