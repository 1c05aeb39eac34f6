"""The record: whole after a power cut at any byte, and never rewritten."""

from dataclasses import replace
from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.garage.events import CutMade, Mark, PartRead, PieceSpoilt, SheetMissing, SheetRead
from nesting.lengths import inch, mm
from nesting.sheets import Defect, Use
from plans.record import Undone, append, marks_of, read_record, record_path

PLAN = "KAC-01234"
KNOT = Defect(what="defect", x=mm(410), y=0, length=mm("12.5"), width=inch("3/8"))
STAIN = replace(KNOT, what="stain", use=Use.HIDDEN_PARTS)
EVENTS: list[Mark] = [
    CutMade(sheet=1, cut=1),
    CutMade(sheet=12, cut=345),
    PartRead(code="A3", size=(mm("440.5"), inch("33 7/64"))),
    PieceSpoilt(code="P5"),
    PieceSpoilt(code="AB12", left=((mm(400), mm(310)), (inch("3 1/2"), mm("0.001")))),
    SheetMissing(sheet=2),
    SheetRead(sheet=3, size=(mm("2438.5"), mm(1219)), diagonals=(mm("2727.1"), mm("2728.4"))),
    SheetRead(sheet=4, thickness=(mm("17.6"), inch("45/64"))),
    SheetRead(sheet=5, thickness=(mm(18),), defects=(KNOT, replace(KNOT, x=mm(900)), STAIN)),
]


@pytest.fixture
def record(tmp_path: Path) -> Path:
    return tmp_path / "hall.record"


def test_the_record_stands_beside_the_job() -> None:
    assert record_path(Path("jobs/hall.toml")) == Path("jobs/hall.record")


def test_what_is_written_is_read_back(record: Path) -> None:
    assert append(record, PLAN, EVENTS) == 1
    assert append(record, PLAN, [Undone(entry=1)]) == 2
    lines = read_record(record)
    assert [line.event for line in lines] == [*EVENTS, Undone(entry=1)]
    assert {line.fingerprint for line in lines} == {PLAN}
    assert [line.entry for line in lines] == [1] * len(EVENTS) + [2]


def test_no_record_is_an_empty_one(record: Path) -> None:
    assert read_record(record) == ()


def test_after_a_power_cut_at_any_byte_it_reads_to_the_last_whole_line(record: Path) -> None:
    append(record, PLAN, EVENTS)
    content = record.read_bytes()
    for size in range(len(content) + 1):
        record.write_bytes(content[:size])
        whole = content[:size].count(b"\n")
        assert [line.event for line in read_record(record)] == EVENTS[:whole]
        append(record, PLAN, [SheetMissing(sheet=9)])
        assert [line.event for line in read_record(record)] == [
            *EVENTS[:whole],
            SheetMissing(sheet=9),
        ]


def test_blocks_of_nothing_after_a_power_cut_are_dropped(record: Path) -> None:
    append(record, PLAN, EVENTS)
    with record.open("ab") as file:
        file.write(b"\0" * 512 + b"\n\xff\xfe\n" + b"\0" * 20)
    assert [line.event for line in read_record(record)] == EVENTS


def test_a_line_changed_by_hand_is_named(record: Path) -> None:
    append(record, PLAN, EVENTS)
    record.write_bytes(record.read_bytes().replace(b"12.345", b"12.346"))
    with pytest.raises(InputError) as caught:
        read_record(record)
    assert str(caught.value) == (
        "hall.record, line 2: the line was changed since it was written.\n"
        "Restore it, or take the line out to lose that mark only."
    )
    with pytest.raises(InputError):
        append(record, PLAN, [SheetMissing(sheet=9)])


def test_every_changed_byte_is_noticed(record: Path) -> None:
    append(record, PLAN, EVENTS[:3])
    content = record.read_bytes()
    for place in range(content.index(b"\n")):
        record.write_bytes(content[:place] + bytes([content[place] ^ 1]) + content[place + 1 :])
        with pytest.raises(InputError):
            read_record(record)


def test_an_entry_taken_back_no_longer_counts(record: Path) -> None:
    append(record, PLAN, EVENTS[:2])
    append(record, PLAN, EVENTS[2:3])
    append(record, PLAN, [Undone(entry=2)])
    append(record, "ACA-00000", EVENTS[5:6])
    assert marks_of(read_record(record), PLAN) == ((1, EVENTS[0]), (1, EVENTS[1]))
    assert marks_of(read_record(record), "ACA-00000") == ((4, EVENTS[5]),)


def test_earlier_bytes_are_never_touched(record: Path) -> None:
    append(record, PLAN, EVENTS)
    before = record.read_bytes()
    append(record, PLAN, [Undone(entry=1)])
    assert record.read_bytes().startswith(before)
