from pathlib import Path

import pytest

from plans.commands.parts import parts

SAMPLES = Path(__file__).parents[3] / "samples"
BOX = """[job]
name = "Racks"
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 2440
width = 1220
[[cabinet]]
name = "Rack"
family = "case"
count = 2
height = 600
width = 500
depth = 350
joint = "rebate"
back = { fit = "inset", gap = 150 }
battens = { section = [20, 30] }
"""


@pytest.fixture
def text(tmp_path: Path) -> str:
    path = tmp_path / "racks.toml"
    path.write_text(BOX, "utf-8")
    return parts(path).text


def row(text: str, name: str) -> str:
    return next(line for line in text.splitlines() if f"  {name}  " in line)


def test_cabinets_that_are_alike_share_a_row_with_its_sum_below(text: str) -> None:
    lines = text.splitlines()
    top = row(text, "Top or bottom")
    assert top.split() == [
        *("A,", "B", "Top", "or", "bottom", "4", "482.5", "350", "birch", "plywood", "18", "final")
    ]
    assert lines[lines.index(top) + 1].strip() == (
        "length: 482.5 = 500 - 17.7 - 17.7 + 9 + 9 (482.6, to the nearest 0.5)"
    )


def test_columns_stand_below_their_headings(text: str) -> None:
    lines = text.splitlines()
    headings, rule = lines[2], lines[3]
    assert headings.split() == ["cabinet", "part", "count", "length", "width", "board", "status"]
    gaps = [at for at, sign in enumerate(rule) if sign == " "]
    assert all(row(text, "Side")[at] == " " for at in gaps)


def test_battens_come_with_letter_sum_and_status(text: str) -> None:
    batten = row(text, "rear frame, across")
    assert batten.split()[:2] == ["A,", "B"]
    assert "20 × 30  measure first, blank 467.5" in batten


def test_what_a_cabinet_leaves_open_and_what_moved_is_listed(text: str) -> None:
    assert "  Moved by the measured thickness: Top or bottom: length 482 → 482.5" in text
    assert "  Edges: top left: left side runs through, rebate joint" in text
    assert "  Question: Does it stand on feet" in text
    assert "  Bench: Joint first, rip after" in text


def test_the_data_holds_what_the_table_shows() -> None:
    data = parts(SAMPLES / "stage_wedges.toml").data
    names = [(part["cabinet"], part["name"]) for part in data["parts"]]
    assert ("B", "Side, left") in names
    baffle = next(part for part in data["parts"] if part["name"] == "Baffle")
    assert (baffle["length"], baffle["blank"]) == ("417.5", ["426.5", "533"])
    assert data["cabinets"][0]["edges"]["top and baffle"] == "baffle"


def test_screws_assembly_and_the_finished_cabinet_are_told_too(tmp_path: Path) -> None:
    text = BOX.replace('joint = "rebate"', 'screws = { carcass = "until dry", round_over = 6 }')
    path = tmp_path / "racks.toml"
    path.write_text(text, "utf-8")
    lines = [line.strip() for line in parts(path).text.splitlines()]
    assert any(line.startswith("Finished: Inside: ") for line in lines)
    assert any(line.startswith("Screws: left side \N{RIGHTWARDS ARROW} top;") for line in lines)
    steps = [line for line in lines if line.startswith("Assembly: ")]
    assert steps[0].startswith("Assembly: 1. Glue up the carcass")
    assert "take the screws of the carcass out again" in steps[1]
    assert any("come out before its edges are rounded over" in line for line in lines)
