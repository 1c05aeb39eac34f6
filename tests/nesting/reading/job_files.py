"""Job files for tests: one that is right, and ways to make it wrong."""

from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import Unit
from nesting.reading.faults import Faults
from nesting.reading.job_toml import read_job
from nesting.reading.tables import Source, Table
from nesting.reading.toml_lines import find_lines
from nesting.reading.toml_syntax import parse_toml

SHEET = """[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
price = 62.00
"""
PART = """[[part]]
name = "Shelf"
length = 562
width = 300
"""


def write(folder: Path, text: str, name: str = "job.toml") -> Path:
    """Write a file and return its path."""
    path = folder / name
    path.write_text(text, "utf-8")
    return path


def read(folder: Path, text: str) -> Job:
    """Return what a job file of this text is read as."""
    return read_job(write(folder, text))


def message(folder: Path, text: str) -> str:
    """Return what is said about a job file of this text that is wrong."""
    with pytest.raises(InputError) as refused:
        read(folder, text)
    return str(refused.value)


def table(text: str, unit: Unit = Unit.MM) -> Table:
    """Return the whole of a TOML text as a table."""
    return Table(
        source=Source(name="job.toml", lines=tuple(text.split("\n")), spots=find_lines(text)),
        values=parse_toml(text, "job.toml"),
        unit=unit,
        faults=Faults(),
    )


def said(read: Table) -> str:
    """Return all that was said about a table and those inside it."""
    return "\n".join(str(fault) for fault in read.faults.in_order())
