"""The command line as a person meets it: messages, streams, exit statuses, files."""

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from typer.testing import CliRunner

from plans.cli import app

ROOT = Path(__file__).parent.parent.parent
SETOUT = [sys.executable, "-c", "from plans.cli import main; main()"]

SMALL_JOB = """
[job]
name = "Prop shelf"

[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 1220
width = 610
price = 20.00

[[part]]
name = "Shelf"
length = 562
width = 300
count = 2
"""


@pytest.fixture
def small_job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(SMALL_JOB, "utf-8")
    return path


def setout(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [*SETOUT, *map(str, arguments)], capture_output=True, text=True, check=False, cwd=ROOT
    )


def test_a_plan_is_written_beside_its_job(small_job: Path) -> None:
    run = setout("plan", small_job)
    assert (run.returncode, "Traceback" in run.stderr) == (0, False)
    assert sorted(path.name for path in small_job.parent.iterdir()) == [
        "shelf.html",
        "shelf.pdf",
        "shelf.plan.json",
        "shelf.toml",
    ]
    assert (small_job.parent / "shelf.pdf").read_bytes().startswith(b"%PDF")


def test_the_same_job_seed_and_effort_give_the_same_bytes(small_job: Path, tmp_path: Path) -> None:
    for name in ("first", "second"):
        assert setout("plan", small_job, "--out", tmp_path / name, "--seed", "7").returncode == 0
    for suffix in ("pdf", "plan.json", "html"):
        first, second = (
            (tmp_path / name / f"shelf.{suffix}").read_bytes() for name in ("first", "second")
        )
        assert first == second


def test_json_goes_to_standard_output_and_no_file_is_written(small_job: Path) -> None:
    run = setout("plan", small_job, "--json")
    document = json.loads(run.stdout)
    assert (document["format"], document["version"]) == ("setout plan", 1)
    assert [path.name for path in small_job.parent.iterdir()] == ["shelf.toml"]


def test_json_with_out_writes_files_that_hold_the_same(small_job: Path, tmp_path: Path) -> None:
    run = setout("plan", small_job, "--json", "--out", tmp_path / "out")
    written = json.loads((tmp_path / "out" / "shelf.plan.json").read_text("utf-8"))
    assert json.loads(run.stdout) == written


def test_pages_can_be_written_as_svg(small_job: Path) -> None:
    assert setout("plan", small_job, "--svg", "--paper", "Letter").returncode == 0
    first = small_job.parent / "shelf.page-01.svg"
    assert first.read_text("utf-8").startswith("<?xml")


def test_a_plan_that_was_written_rehearses(small_job: Path) -> None:
    setout("plan", small_job)
    run = setout("rehearse", small_job.parent / "shelf.plan.json")
    assert run.returncode == 0
    assert "0 faults" in run.stdout


def test_a_changed_plan_fails_its_rehearsal(small_job: Path) -> None:
    setout("plan", small_job)
    plan_file = small_job.parent / "shelf.plan.json"
    document = json.loads(plan_file.read_text("utf-8"))
    document["sheets"][0]["parts"][0]["length"] += 2
    plan_file.write_text(json.dumps(document), "utf-8")
    run = setout("rehearse", plan_file)
    assert run.returncode == 1
    assert "Do not cut from this plan." in run.stdout


def test_parts_need_no_sheets(tmp_path: Path) -> None:
    job = tmp_path / "box.toml"
    job.write_text(
        '[job]\nname = "Box"\n[[part]]\nname = "Lid"\nlength = 400\nwidth = 300\n'
        'material = "MDF"\nthickness = 12\n',
        "utf-8",
    )
    run = setout("parts", job)
    row = ["Lid", "1", "400", "300", "MDF", "12", "final"]
    assert (run.returncode, run.stdout.splitlines()[-1].split()) == (0, row)


def test_a_part_larger_than_every_sheet_is_named_and_the_rest_is_planned(small_job: Path) -> None:
    small_job.write_text(
        SMALL_JOB + '[[part]]\nname = "Top"\nlength = 1300\nwidth = 200\n', "utf-8"
    )
    run = setout("plan", small_job)
    assert run.returncode == 4
    assert "Top" in run.stdout
    assert (small_job.parent / "shelf.pdf").exists()


@pytest.mark.parametrize(
    ("content", "said"),
    [
        pytest.param("", "shelf.toml", id="an empty file"),
        pytest.param("[job\n", "line 1", id="broken TOML"),
        pytest.param(SMALL_JOB.replace("width = 300", "width = 0"), "width", id="a zero width"),
        pytest.param(SMALL_JOB.replace("width = 300", "width = -3"), "negative", id="negative"),
        pytest.param(SMALL_JOB.replace("count = 2", "count = 1000000000"), "count", id="10^9"),
        pytest.param(SMALL_JOB.replace("count", "cuont"), "count", id="a misspelt key"),
        pytest.param(SMALL_JOB + "[saw]\nkerf = 400\n", "kerf", id="kerf larger than a part"),
        pytest.param(SMALL_JOB + SMALL_JOB[SMALL_JOB.index("[[part]]") :], "Shelf", id="twice"),
    ],
)
def test_bad_input_gives_one_message_and_status_3(small_job: Path, content: str, said: str) -> None:
    small_job.write_text(content, "utf-8")
    run = setout("plan", small_job)
    assert run.returncode == 3
    assert said in run.stderr
    assert "Traceback" not in run.stderr
    assert run.stdout == ""


def test_bytes_that_are_not_utf_8_are_an_input_error(small_job: Path) -> None:
    small_job.write_bytes(SMALL_JOB.replace("Prop", "Pr\xf6p").encode("latin-1"))
    run = setout("plan", small_job)
    assert (run.returncode, "UTF-8" in run.stderr) == (3, True)


@pytest.mark.parametrize("place", ["missing.toml", "."])
def test_a_missing_file_and_a_folder_are_input_errors(tmp_path: Path, place: str) -> None:
    run = setout("plan", tmp_path / place)
    assert (run.returncode, "Traceback" in run.stderr) == (3, False)


def test_an_output_folder_that_is_a_file_is_refused_before_any_work(small_job: Path) -> None:
    run = setout("plan", small_job, "--out", small_job)
    assert run.returncode == 3
    assert "Name another folder with --out." in run.stderr


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is read-only to root")
def test_a_read_only_folder_is_named_before_any_work(small_job: Path, tmp_path: Path) -> None:
    folder = tmp_path / "locked"
    folder.mkdir(mode=0o500)
    run = setout("plan", small_job, "--out", folder)
    assert (run.returncode, run.stdout) == (3, "")
    assert run.stderr.startswith(f"{folder}: it is not a folder that can be written to.")


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is unreadable to root")
def test_a_job_file_that_may_not_be_read_is_an_input_error(small_job: Path) -> None:
    small_job.chmod(0)
    run = setout("plan", small_job)
    assert (run.returncode, "you may not read it" in run.stderr) == (3, True)


def test_a_full_disk_leaves_the_earlier_plan_whole(small_job: Path) -> None:
    """A limit on the size of files stands for the full disk: the write fails in the same way."""
    setout("plan", small_job)
    before = {path: path.read_bytes() for path in small_job.parent.iterdir()}
    code = (
        "import resource, signal; signal.signal(signal.SIGXFSZ, signal.SIG_IGN); "
        "resource.setrlimit(resource.RLIMIT_FSIZE, (2000, 2000)); "
        "from plans.cli import main; main()"
    )
    run = subprocess.run(
        [sys.executable, "-c", code, "plan", str(small_job), "--seed", "2"],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert (run.returncode, "Traceback" in run.stderr) == (1, False)
    assert {path: path.read_bytes() for path in small_job.parent.iterdir()} == before


def test_wrong_usage_is_status_2() -> None:
    assert CliRunner().invoke(app, ["plan"]).exit_code == 2
    assert CliRunner().invoke(app, ["plan", "job.toml", "--paper", "A9"]).exit_code == 2


def test_interrupted_search_writes_what_it_found(small_job: Path, tmp_path: Path) -> None:
    setout("plan", small_job, "--effort", "1")  # the kernels are compiled once and for all
    parts = "\n".join(
        f'[[part]]\nname = "P{n}"\nlength = {300 + 37 * n % 410}\nwidth = {200 + 53 * n % 310}\n'
        "count = 5"
        for n in range(40)
    )
    job = tmp_path / "long.toml"
    job.write_text(SMALL_JOB + parts, "utf-8")
    with subprocess.Popen(
        [*SETOUT, "plan", str(job), "--effort", "100000000"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=ROOT,
    ) as run:
        try:
            time.sleep(8)
            run.send_signal(signal.SIGINT)
            _, messages = run.communicate(timeout=300)  # a hundred pages are written yet
        finally:
            run.kill()
    assert (run.returncode, "Traceback" in messages) == (130, False)
    assert "best plan found so far" in messages
    assert (tmp_path / "long.pdf").exists()


def test_start_writes_a_job_that_plans_and_never_overwrites(tmp_path: Path) -> None:
    job = tmp_path / "new.toml"
    assert setout("start", job, "--name", "Hall bass", "--height", "600").returncode == 0
    assert setout("plan", job).returncode == 0
    text = job.read_text("utf-8")
    again = setout("start", job)
    assert (again.returncode, "exists already" in again.stderr) == (3, True)
    assert job.read_text("utf-8") == text


def test_an_unexpected_error_is_one_sentence_without_a_traceback(
    monkeypatch: pytest.MonkeyPatch, small_job: Path
) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("a bug")

    monkeypatch.setattr("plans.commands.parts.parts", broken)
    result = CliRunner().invoke(app, ["parts", str(small_job)])
    assert result.exit_code == 1
    assert "--debug" in result.stderr
    assert "Traceback" not in result.stderr


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("unbuffered", ["", "1"])
def test_a_result_that_cannot_be_printed_is_a_failure_in_one_sentence(
    small_job: Path, unbuffered: str
) -> None:
    with Path("/dev/full").open("w") as full:
        run = subprocess.run(
            [*SETOUT, "parts", str(small_job)],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
            cwd=ROOT,
            env={**os.environ, "PYTHONUNBUFFERED": unbuffered},
        )
    assert (run.returncode, "Traceback" in run.stderr) == (1, False)
    assert "no space left on device" in run.stderr


def test_letters_that_the_terminal_does_not_know_stop_nothing(small_job: Path) -> None:
    small_job.write_text(SMALL_JOB.replace("Shelf", "Ράφι 😀"), "utf-8")
    latin = {**os.environ, "PYTHONIOENCODING": "cp1252"}
    for arguments in (["parts"], ["parts", "--json"]):
        run = subprocess.run(
            [*SETOUT, *arguments, str(small_job)],
            capture_output=True,
            check=False,
            cwd=ROOT,
            env=latin,
        )
        assert (run.returncode, run.stderr) == (0, b"")
    assert json.loads(run.stdout)["parts"][0]["name"] == "Ράφι 😀"


@pytest.mark.skipif(sys.platform != "linux", reason="names that are no text")
def test_a_file_whose_name_is_no_text_is_planned(small_job: Path) -> None:
    odd = small_job.with_name(os.fsdecode(b"caf\xe9.toml"))
    odd.write_text(SMALL_JOB.replace('name = "Prop shelf"', ""), "utf-8")
    run = setout("plan", odd, "--effort", "0")
    assert (run.returncode, "Traceback" in run.stderr) == (0, False)
    assert odd.with_suffix(".pdf").exists()


def test_a_list_full_of_faults_shows_the_first_ones_and_counts_the_rest(small_job: Path) -> None:
    rows = "\n".join(f"Slat {number},wide,300" for number in range(40))
    (small_job.parent / "parts.csv").write_text(f"name,length,width\n{rows}\n", "utf-8")
    small_job.write_text(f'{SMALL_JOB}\n[[part_list]]\nfile = "parts.csv"\n', "utf-8")
    result = CliRunner().invoke(app, ["parts", str(small_job)])
    assert (result.exit_code, result.stderr.count("'wide' is not a length")) == (3, 30)
    assert result.stderr.endswith("10 more such faults are not shown. Mend these first.\n")
