"""Whatever stands in a file, it is read or refused: nothing else ever happens."""

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.errors import InputError
from nesting.reading.job_toml import read_job
from tests.nesting.reading.job_files import PART, SHEET

pytestmark = pytest.mark.property

CABINET = """[[cabinet]]
name = "Hall bass"
count = 2
height = 900
width = 480
depth = 450
baffle = { fit = "inset", set_back = 30, wrapped = false }
back = { fit = "inset", wrapped = true }
battens = { section = [20, 30] }
braces = { depth = 120, count = 2 }
[cabinet.covering]
thickness = 0.8
"""
JOB = (
    '[job]\nname = "Hall"\nunits = "mm"\nstep = 0.5\n'
    "[saw]\nkerf = 2.4\nlift_limit_kg = 20\n[keep]\nlength = 300\n[time]\ncut = 1.5\n"
    + SHEET
    + 'measured = [17.7]\ncount = 3\nowned = false\ntrim = { left = 10 }\ngrain = "length"\n'
    + PART
    + 'count = 2\ngrain = "any"\noversize = 3\n[[part_list]]\nfile = "parts.csv"\n'
    + CABINET
)
LIST = "name,length,width,count,grain\nSide,600,300,2,length\nTop,464.5,300,1,\n"
VALUES = st.one_of(
    st.sampled_from(
        ["true", "nan", "-inf", "[]", "{}", '""', "'a'", "1979-05-27", "07:32:00", "[[1]]", "-0.0"]
    ),
    st.integers().map(str),
    st.floats(allow_nan=False, allow_infinity=False).map(repr),
    st.sampled_from(["1 in", "5/8 in", "3 cm", "any", "width", "mm", "in", "none", "inset"]).map(
        lambda text: f'"{text}"'
    ),
)


def is_told(job: bytes, parts: bytes) -> bool:
    """Return whether a job is read, or refused with a remedy for every fault."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "job.toml").write_bytes(job)
        (Path(folder) / "parts.csv").write_bytes(parts)
        try:
            return bool(read_job(Path(folder) / "job.toml").parts)
        except InputError as error:
            return all(fault.what and fault.remedy for fault in error.faults)


def test_the_job_that_is_spoilt_here_is_good() -> None:
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "job.toml").write_text(JOB)
        (Path(folder) / "parts.csv").write_text(LIST)
        assert len(read_job(Path(folder) / "job.toml").cabinets) == 1


@settings(max_examples=400, deadline=None)
@given(st.data())
def test_any_value_of_any_key_is_read_or_refused(data: st.DataObject) -> None:
    lines = JOB.split("\n")
    for _ in range(data.draw(st.integers(1, 3))):
        number = data.draw(st.integers(0, len(lines) - 1))
        if " = " in lines[number]:
            lines[number] = lines[number].partition(" = ")[0] + " = " + data.draw(VALUES)
    assert is_told("\n".join(lines).encode(), LIST.encode())


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_any_line_may_be_missing_or_doubled(data: st.DataObject) -> None:
    lines = JOB.split("\n")
    for _ in range(data.draw(st.integers(1, 4))):
        number = data.draw(st.integers(0, len(lines) - 1))
        lines[number : number + 1] = lines[number : number + 1] * data.draw(st.sampled_from([0, 2]))
    assert is_told("\n".join(lines).encode(), LIST.encode())


@settings(max_examples=300, deadline=None)
@given(st.integers(0, len(JOB) - 1), st.binary(max_size=3), st.integers(0, 5))
def test_any_bytes_in_a_job_file_are_read_or_refused(at: int, new: bytes, gone: int) -> None:
    content = JOB.encode()
    assert is_told(content[:at] + new + content[at + gone :], LIST.encode())


@settings(max_examples=300, deadline=None)
@given(st.integers(0, len(LIST) - 1), st.binary(max_size=3), st.integers(0, 5))
def test_any_bytes_in_a_part_list_are_read_or_refused(at: int, new: bytes, gone: int) -> None:
    content = LIST.encode()
    assert is_told(JOB.encode(), content[:at] + new + content[at + gone :])
