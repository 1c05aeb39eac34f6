"""What the documents say of keys, defaults, commands and options is what the program knows."""

import re
import shlex
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pytest
from typer.testing import CliRunner

from nesting.errors import InputError
from nesting.job import Job
from nesting.reading.job_toml import read_job_text
from nesting.reading.plain_parts import PART_KEYS
from nesting.reading.tables import Table
from plans.cli import app

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"
JOB_FILE = ROOT / "samples" / "job_file.md"

SHEET = """
[[sheet]]
name = "frame"
material = "birch plywood"
thickness = "18 mm"
length = "2440 mm"
width = "1220 mm"
"""
PART = '\n[[part]]\nname = "Strip"\nlength = "500 mm"\nwidth = "100 mm"\n'
CABINET = """
[[cabinet]]
name = "Box"
height = "700 mm"
width = "500 mm"
depth = "400 mm"
"""
INSET = 'baffle = { set_back = "30 mm" }\nback = "inset"\n'
HOLE = '[[cabinet.hole]]\ncut_out = "200 mm"\nbolt_circle = "230 mm"\n'
MERGE = '[[merge]]\npart = "Lath"\nlike = "Strip"\n'
WAY_OUT = '[[cabinet.way_out]]\nname = "door"\nwidth = "800 mm"\nheight = "2 mm"\n'

# For each table a job that ends in it and has what is needed, in either unit.
ENDING_IN = {
    "job": SHEET + PART + "[job]\n",
    "saw": SHEET + PART + "[saw]\n",
    "saw.kerf_test": SHEET + PART + '[[saw.kerf_test]]\ncuts = 5\nmissing = "12 mm"\n',
    "sheet": PART + SHEET,
    "sheet.trim": PART + SHEET + "[sheet.trim]\n",
    "sheet.defect": PART
    + SHEET
    + 'count = 1\n[[sheet.defect]]\nalong = "100 mm"\nacross = "90 mm"\n'
    + 'length = "80 mm"\nwidth = "70 mm"\n',
    "part": SHEET + PART + 'free = ["width"]\n',
    "merge": SHEET + PART + PART.replace("Strip", "Lath") + MERGE,
    "cabinet": SHEET + CABINET + 'free = ["depth"]\n',
    "cabinet.joint": SHEET + CABINET + "[cabinet.joint]\n",
    "cabinet.baffle": SHEET + CABINET + "[cabinet.baffle]\n",
    "cabinet.back": SHEET + CABINET + "[cabinet.back]\n",
    "cabinet.baffle.extra": SHEET + CABINET + "[cabinet.baffle.extra]\n",
    "cabinet.back.extra": SHEET + CABINET + "[cabinet.back.extra]\n",
    "cabinet.battens": SHEET + CABINET + INSET + '[cabinet.battens]\nsection = "20 mm"\n',
    "cabinet.braces": SHEET + CABINET + '[cabinet.braces]\ndepth = "100 mm"\n',
    "cabinet.shelves": SHEET + CABINET + "[cabinet.shelves]\n",
    "cabinet.dividers": SHEET + CABINET + "[cabinet.dividers]\n",
    "cabinet.grille": SHEET + CABINET + INSET + '[cabinet.grille]\nsection = "12 mm"\n',
    "covering": SHEET + CABINET + INSET + "[covering]\n",
    "cabinet.covering": SHEET + CABINET + INSET + "[cabinet.covering]\n",
    "cabinet.grain": SHEET + CABINET + INSET + "[cabinet.grain]\n",
    "cabinet.answers": SHEET + CABINET + "[cabinet.answers]\n",
    "cabinet.hole": SHEET + CABINET + INSET + HOLE,
    "cabinet.clearances": SHEET + CABINET + INSET + HOLE + "[cabinet.clearances]\n",
    "cabinet.way_out": SHEET + CABINET + WAY_OUT,
    "cabinet.assembly": SHEET + CABINET + INSET + "[cabinet.assembly]\n",
    "cabinet.assembly.item": SHEET
    + CABINET
    + '[[cabinet.assembly.item]]\nname = "mat"\nsize = [2, 1]\n',
    "cabinet.roll": SHEET + CABINET + INSET + '[cabinet.roll]\nwidth = "1400 mm"\n',
    "cabinet.cloth": SHEET + CABINET + INSET + '[cabinet.cloth]\nwidth = "1400 mm"\n',
    "cabinet.screws": SHEET + CABINET + INSET + "[cabinet.screws]\n",
    "cabinet.hardware": SHEET + CABINET + "[cabinet.hardware]\n",
    "cabinet.discs": SHEET + CABINET + "[cabinet.discs]\n",
    "timber": SHEET
    + PART
    + '[[timber]]\nname = "pine"\nsection = ["20 mm", "30 mm"]\nlength = "2400 mm"\n',
    "yard": SHEET + PART + "[yard]\n",
    "car": SHEET
    + PART
    + '[car]\nopening = ["1000 mm", "700 mm"]\nfloor_length = "1600 mm"\narch_width = "900 mm"\n',
    "keep": SHEET + PART + "[keep]\n",
    "time": SHEET + PART + "[time]\n",
    "buy": SHEET + PART + "[buy]\n",
    "session": SHEET + PART + "[session]\n",
    "batch": SHEET + PART + "[batch]\nlimit = 3\n",
    "part_list": SHEET + '[[part_list]]\nfile = "shelves.csv"\n',
}
WEDGE = SHEET + CABINET + 'family = "wedge"\n'
CSV = "name,length,width\nShelf,400,300\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """What job_file.md says of one key."""

    table: str
    key: str
    otherwise: str


def documented() -> Iterator[Row]:
    """Yield the rows of the tables of job_file.md; a heading may name two tables."""
    tables: list[str] = []
    for line in JOB_FILE.read_text("utf-8").splitlines():
        if line.startswith("#"):
            tables = re.findall(r"`\[+([a-z_.]+)\]+`", line) or [line.lstrip("# ")]
        elif line.startswith("| `"):
            key, _, otherwise = (cell.strip() for cell in line.strip("|").split(" | "))
            yield from (
                Row(table=table, key=key.strip("` |"), otherwise=otherwise.strip(" |"))
                for table in tables
            )


ROWS = tuple(documented())


def blocks(path: Path, kind: str) -> list[str]:
    return re.findall(rf"```{kind}\n(.*?)```", path.read_text("utf-8"), re.DOTALL)


def keys_by_table() -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for row in ROWS:
        found.setdefault(row.table, set()).add(row.key)
    return found


@pytest.fixture(scope="module")
def known(tmp_path_factory: pytest.TempPathFactory) -> dict[str, set[str]]:
    """The keys that the readers ask for in each table, and the tables that they never met."""
    found: dict[str, set[str]] = {}
    named: set[str] = set()
    finish, one, many = Table.finish, Table.table, Table.tables

    def name_of(table: Table, *more: str) -> str:
        return ".".join([*(name for name in table.path if isinstance(name, str)), *more])

    def watched_finish(table: Table) -> None:
        if not table.is_absent:
            found.setdefault(name_of(table), set()).update(table.asked)
        finish(table)

    def watched_one(table: Table, key: str) -> Table:
        named.add(name_of(table, key))
        return one(table, key)

    def watched_many(table: Table, key: str) -> tuple[Table, ...]:
        named.add(name_of(table, key))
        return many(table, key)

    folder = tmp_path_factory.mktemp("known")
    (folder / "shelves.csv").write_text(CSV, "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Table, "finish", watched_finish)
        patch.setattr(Table, "table", watched_one)
        patch.setattr(Table, "tables", watched_many)
        for text in (*ENDING_IN.values(), WEDGE):
            read_job_text(text, folder / "job.toml")
    assert named == set(found) - {""}, "a table of the readers is missing in ENDING_IN"
    return found


def test_job_file_md_names_every_table(known: dict[str, set[str]]) -> None:
    assert set(keys_by_table()) == set(known) - {""} | {"Columns"}
    assert known[""] == {name for name in known if name and "." not in name}


@pytest.mark.parametrize("table", ENDING_IN)
def test_job_file_md_has_the_keys_of_each_table_and_no_others(
    table: str, known: dict[str, set[str]]
) -> None:
    assert keys_by_table()[table] == known[table]


def test_job_file_md_has_the_columns_of_a_part_list_and_no_others() -> None:
    assert keys_by_table()["Columns"] == set(PART_KEYS)


DEFAULTS = [
    (row, unit, found["inches" if unit == "in" and found["inches"] else "usual"])
    for row in ROWS
    for unit in ("mm", "in")
    if row.table != "Columns"
    and not (row.key == "units" and unit == "in")
    and (
        found := re.fullmatch(r"`(?P<usual>[^`]+)`(?:; inches `(?P<inches>[^`]+)`)?", row.otherwise)
    )
]


def read_plainly(text: str) -> Job:
    """Return a job without its assumptions, which tell defaults from what is written."""
    return replace(read_job_text(text, Path("job.toml")), assumptions=())


@cache
def usual_job(table: str, unit: str) -> Job:
    return read_plainly(in_unit(table, unit))


def in_unit(table: str, unit: str) -> str:
    """Return the job that ends in a table, in a unit."""
    ending = ENDING_IN[table]
    if table == "job":
        return ending if unit == "mm" else f'{ending}units = "in"\n'
    return f'[job]\nunits = "{unit}"\n{ending}'


def test_many_defaults_are_stated() -> None:
    assert len(DEFAULTS) > 150


@pytest.mark.parametrize(
    ("row", "unit", "default"),
    DEFAULTS,
    ids=[f"{row.table}.{row.key}-{unit}" for row, unit, _ in DEFAULTS],
)
def test_a_default_written_out_changes_nothing(row: Row, unit: str, default: str) -> None:
    text = in_unit(row.table, unit)
    assert read_plainly(f"{text}{row.key} = {default}\n") == usual_job(row.table, unit)


@pytest.mark.parametrize(
    "row",
    [row for row in ROWS if row.otherwise == "needed" and row.table != "Columns"],
    ids=lambda row: f"{row.table}.{row.key}",
)
def test_a_needed_key_cannot_be_left_out(row: Row, tmp_path: Path) -> None:
    (tmp_path / "shelves.csv").write_text(CSV, "utf-8")
    whole = ENDING_IN[row.table]
    start = max(found.start() for found in re.finditer(r"(?m)^\[", whole))
    lacking = whole[:start] + re.sub(rf"(?m)^{row.key} = .*\n", "", whole[start:])
    assert lacking != whole
    read_job_text(whole, tmp_path / "job.toml")
    with pytest.raises(InputError, match=row.key):
        read_job_text(lacking, tmp_path / "job.toml")


TOML_BLOCKS = [
    pytest.param(block, id=f"{path.name}-{number}")
    for path in (README, JOB_FILE)
    for number, block in enumerate(blocks(path, "toml"), start=1)
]


@pytest.mark.parametrize("block", TOML_BLOCKS)
def test_a_block_of_toml_reads(block: str, tmp_path: Path) -> None:
    written = tomllib.loads(block)
    text = block
    if "sheet" not in written:
        text += SHEET
    if not written.keys() & {"part", "part_list", "cabinet"}:
        text += PART
    for table in written.get("part_list", []):
        (tmp_path / table["file"]).write_text(blocks(JOB_FILE, "csv")[0], "utf-8")
    job = read_job_text(text, tmp_path / "job.toml")
    assert job.parts
    assert not any(build.questions for build in job.cabinets if "answers" in block)


def test_there_are_blocks_of_toml() -> None:
    assert len(blocks(README, "toml")) == 1
    assert len(blocks(JOB_FILE, "toml")) >= 6


def commands_in(path: Path) -> Iterator[list[str]]:
    """Yield the words after each `setout` that a document tells to type."""
    text = path.read_text("utf-8")
    lines = [line for block in blocks(path, "sh") for line in block.splitlines()]
    lines += re.findall(r"`(setout [^`]+)`", text) + re.findall(r"'(setout [^']+)'", text)
    for line in lines:
        for command in " ".join(shlex.split(line, comments=True)).split(" && "):
            words = command.split()
            if words and Path(words[0]).name == "setout":
                yield words[1:]


def help_of(*command: str) -> str:
    result = CliRunner().invoke(app, [*command, "--help"])
    assert result.exit_code == 0, f"there is no command {' '.join(command)}"
    return result.output


@pytest.mark.parametrize(
    "path", [README, JOB_FILE, ROOT / "samples" / "README.md"], ids=lambda path: path.stem
)
def test_every_command_and_option_that_is_named_exists(path: Path) -> None:
    named = list(commands_in(path))
    assert named
    for words in named:
        command = words[: 2 if words[0] == "offcuts" else 1]
        known_options = re.findall(r"--[a-z-]+", help_of(*command))
        for word in words:
            assert not word.startswith("--") or word in known_options, " ".join(words)


def test_every_option_that_readme_names_alone_exists() -> None:
    alone = re.findall(r"`(--[a-z-]+)[^`]*`", README.read_text("utf-8"))
    assert alone
    assert set(alone) <= set(re.findall(r"--[a-z-]+", help_of("plan")))


def test_readme_names_every_command_of_the_work_at_the_saw() -> None:
    named = {words[0] for words in commands_in(README)}
    assert named == set(re.findall(r"(?m)^  ([a-z]+) {2,}", help_of().split("Commands:")[1]))
