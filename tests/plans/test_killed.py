"""Commands killed at random moments: no file half-written, no recorded mark lost."""

import json
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from nesting.garage.events import CutMade
from plans.book.store import list_entries, open_book
from plans.plan_reading import read_planned
from plans.record import append, read_record
from plans.writers.whole_file import SUFFIX
from tests.plans.commands.test_offcuts import JOB

ROOT = Path(__file__).parent.parent.parent
SETOUT = [sys.executable, "-c", "from plans.cli import main; main()"]
KILLS = 200
PLANS = 40

MARKER = """
import os, sys
from pathlib import Path
from nesting.garage.events import CutMade
from plans.record import append
record, cut = Path(sys.argv[1]), int(sys.argv[2])
print("ready", flush=True)
while True:
    for _ in range(3):
        cut += 1
        append(record, "KAC-01234", [CutMade(sheet=1, cut=cut)])
        os.write(1, f"{cut}\\n".encode())
"""
KEEPER = """
import os, sys
from dataclasses import replace
from pathlib import Path
from plans.book.store import add, open_book, release, reserve_only, take
from tests.plans.book.test_entries import OFFCUT
print("ready", flush=True)
with open_book(Path(sys.argv[1])) as book:
    while True:
        numbers = add(book, [OFFCUT] * 3)
        reserve_only(book, numbers, "job")
        os.write(1, f"{numbers[0]}\\n".encode())
        take(book, numbers[:1], "2026-11-25")
"""


def run_and_kill(command: list[str], delay_s: float, folder: Path) -> list[str]:
    """Run a command, kill it after it is ready and a delay; return the whole lines it printed."""
    environment = {**os.environ, "SETOUT_DATA": str(folder / "data"), "PYTHONPATH": str(ROOT)}
    process = subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, cwd=ROOT, env=environment
    )
    assert process.stdout is not None
    if "ready" in command[2]:
        assert process.stdout.readline() == b"ready\n"
    time.sleep(delay_s)
    process.send_signal(signal.SIGKILL)
    said, _ = process.communicate(timeout=30)
    return said.decode().split("\n")[:-1]


@pytest.mark.slow
def test_no_mark_that_was_told_is_lost(tmp_path: Path) -> None:
    chance = random.Random(1)  # noqa: S311 - repeatable on purpose
    record = tmp_path / "hall.record"
    cut = 0
    for _ in range(KILLS - PLANS):
        before = read_record(record)
        said = run_and_kill(
            [sys.executable, "-c", MARKER, str(record), str(cut)],
            chance.uniform(0, 0.03),
            tmp_path,
        )
        after = read_record(record)
        assert after[: len(before)] == before
        cuts = [line.event.cut for line in after if isinstance(line.event, CutMade)]
        assert cuts == list(range(1, len(cuts) + 1))
        # What was told is there; at most one mark more may have reached the disk untold.
        told = max(map(int, said), default=cut)
        assert told <= len(cuts) <= told + 1
        cut = len(cuts)
    append(record, "KAC-01234", [CutMade(sheet=1, cut=cut + 1)])
    assert len(read_record(record)) == cut + 1


@pytest.mark.slow
def test_the_book_is_whole_after_every_kill(tmp_path: Path) -> None:
    chance = random.Random(2)  # noqa: S311 - repeatable on purpose
    path = tmp_path / "offcuts.sqlite3"
    told: set[int] = set()
    for _ in range(KILLS - PLANS):
        said = run_and_kill(
            [sys.executable, "-c", KEEPER, str(path)], chance.uniform(0, 0.05), tmp_path
        )
        told |= set(map(int, said))
        with open_book(path) as book:
            assert book.execute("PRAGMA integrity_check").fetchone() == ("ok",)
            everything = book.execute("SELECT number, gone FROM offcut").fetchall()
            entries = list_entries(book)
        assert len(everything) % 3 == 0  # three come in together or not at all
        assert told <= {number for number, _ in everything}
        held = [entry.number for entry in entries if entry.holder]
        assert len(held) <= 3  # reserve_only lets go of all others in the same step


@pytest.mark.slow
def test_a_plan_that_is_killed_leaves_the_earlier_one_or_a_whole_new_one(tmp_path: Path) -> None:
    chance = random.Random(3)  # noqa: S311 - repeatable on purpose
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    plan, pdf = tmp_path / "shelf.plan.json", tmp_path / "shelf.pdf"
    start = time.monotonic()
    subprocess.run([*SETOUT, "plan", str(job), "--effort", "0"], cwd=ROOT, check=True)
    whole_s = time.monotonic() - start
    for number in range(PLANS):
        job.write_text(JOB.replace("562", str(500 + number)), "utf-8")
        delay_s = chance.uniform(whole_s / 2, whole_s * 1.05)
        run_and_kill([*SETOUT, "plan", str(job), "--effort", "0"], delay_s, tmp_path)
        assert read_planned(plan).sheets
        assert pdf.read_bytes().rstrip().endswith(b"%%EOF")
        for left in tmp_path.glob(".shelf.*"):
            assert left.name.endswith(SUFFIX)  # never taken for a plan
            os.utime(left, (0, 0))  # as if it had lain there for long
    subprocess.run([*SETOUT, "plan", str(job), "--effort", "0"], cwd=ROOT, check=True)
    assert not list(tmp_path.glob(".shelf.*"))
    run = subprocess.run(
        [*SETOUT, "plan", str(job), "--effort", "0", "--json"],
        capture_output=True,
        cwd=ROOT,
        check=True,
    )
    assert json.loads(run.stdout)["sheets"]
