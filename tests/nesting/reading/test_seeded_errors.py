"""A list of 30 slips that people make, to see how many are caught and how they are told."""

from pathlib import Path

from nesting.errors import InputError
from nesting.reading.job_toml import read_job
from tests.nesting.reading.job_files import SHEET, write

HEADING = "name,length,width,count,grain,material,thickness,oversize"
SLIPS = (
    # (what slipped, the row, what is said about it; empty where nothing can be known)
    ("no name", ",562,300,2,,,,", "the cell of column 'name' is empty"),
    ("no length", "a,,300,2,,,,", "the cell of column 'length' is empty"),
    ("zero width", "b,562,0,2,,,,", "'0' is zero"),
    ("negative length", "c,-562,300,2,,,,", "'-562' is negative"),
    ("the letter O for a nought", "d,562,3OO,2,,,,", "'3OO' is not a length"),
    ("centimetres", "e,56.2 cm,300,2,,,,", "'56.2 cm' is in 'cm'"),
    ("metres", "f,0.562 m,300,2,,,,", "'0.562 m' is in 'm'"),
    ("feet", "g,2 ft,300,2,,,,", "'2 ft' is in 'ft'"),
    ("ninths of an inch", "h,562,11 5/9 in,2,,,,", "'11 5/9 in' is not on a tape measure"),
    ("half a millimetre", "i,562 1/2,300,2,,,,", "'562 1/2' is a fraction of a millimetre"),
    ("far too fine", "j,562.0005,300,2,,,,", "'562.0005' is finer than can be marked"),
    ("a decimal comma", "k,562,5,300,2,,,,", "the row has 9 cells, but there are 8 headings"),
    ("a comma between thousands", 'l,"1,200",300,2,,,,', "'1,200' is not a length"),
    ("a digit too many", "m,56200,300,2,,,,", "'56200' is more than 20000 mm"),
    ("metres without a unit", "n,0.562,300,2,,,,", "the part is 0.562 mm across"),
    ("centimetres without a unit", "o,56.2,30,2,,,,", ""),
    ("length and width swapped", "p,300,562,2,,,,", ""),
    ("none of it", "q,562,300,0,,,,", "0 is less than 1"),
    ("half a piece", "r,562,300,2.5,,,,", "'2.5' is not a whole number"),
    ("a count in words", "s,562,300,two,,,,", "'two' is not a whole number"),
    ("far too many", "t,562,300,25000,,,,", "it is more than 20000"),
    ("grain across", "u,562,300,2,across,,,", "'across' is not one of the choices"),
    ("grain misspelt", "v,562,300,2,lenght,,,", "'lenght' is not one of the choices"),
    ("material misspelt", "w,562,300,2,,birch playwood,,", "no sheet is of 'birch playwood'"),
    ("measured thickness", "x,562,300,2,,,17.7,", "is sold as 17.7 mm thick"),
    ("zero thickness", "y,562,300,2,,,0,", "'0' is zero"),
    ("thickness in metres", "z,562,300,2,,,0.018,", "is sold as 0.018 mm thick"),
    ("negative oversize", "aa,562,300,2,,,,-3", "'-3' is negative"),
    ("a quotation mark not closed", '"ab,562,300,2,,,,', "a quotation mark is opened"),
    ("a name twice", "p,562,300,2,,,,", "the name 'p' is taken already (parts.csv, row 18)"),
)


def test_of_30_slips_at_least_28_are_caught_with_a_line_naming_row_and_reason(
    tmp_path: Path,
) -> None:
    assert len(SLIPS) == 30
    write(tmp_path, "\n".join([HEADING, *(row for _, row, _ in SLIPS)]), "parts.csv")
    path = write(tmp_path, SHEET + '[[part_list]]\nfile = "parts.csv"\n')
    try:
        read_job(path)
    except InputError as error:
        lines = str(error).split("\n")
    caught = {
        slip
        for number, (slip, _, reason) in enumerate(SLIPS, start=2)
        for line in lines
        if line.startswith((f"parts.csv, row {number}:", f"parts.csv, row {number},"))
        and reason
        and reason in line
    }
    assert len(caught) >= 28
    assert {slip for slip, _, _ in SLIPS} - caught == {
        "centimetres without a unit",
        "length and width swapped",
    }


def test_the_same_list_without_slips_is_read(tmp_path: Path) -> None:
    rows = [f"part {number},562,300,2,length,birch plywood,18,3" for number in range(30)]
    write(tmp_path, "\n".join([HEADING, *rows]), "parts.csv")
    path = write(tmp_path, SHEET + '[[part_list]]\nfile = "parts.csv"\n')
    assert sum(part.count for part in read_job(path).parts) == 60
