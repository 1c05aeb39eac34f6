from pathlib import Path

import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.design import (
    Along,
    Battens,
    BoxDesign,
    Braces,
    Closing,
    Corners,
    Covering,
    Fit,
    Fitted,
    Grains,
    Through,
)
from nesting.lengths import Unit, inch, mm
from nesting.reading.cabinet_table import read_cabinet
from nesting.reading.stock import Stock
from nesting.sheets import Sheet
from tests.nesting.reading.job_files import SHEET, message, said, table

BOX = """name = "Stage box"
height = 600
width = 500
depth = 350
"""
BIRCH = Board(material="birch plywood", thickness=mm(18))


def sheet(material: str, thickness: int) -> Sheet:
    return Sheet(
        name=f"{material} {thickness}",
        material=material,
        thickness=mm(thickness),
        length=mm(2440),
        width=mm(1220),
    )


ONE_SHEET = Stock(sheets=(sheet("birch plywood", 18),), is_complete=True)
THREE_SHEETS = Stock(
    sheets=(sheet("birch plywood", 18), sheet("birch plywood", 12), sheet("MDF", 12)),
    is_complete=True,
)


def read(
    text: str,
    stock: Stock = ONE_SHEET,
    covering: Covering | None = None,
    unit: Unit = Unit.MM,
) -> BoxDesign:
    read_table = table(text, unit)
    design = read_cabinet(read_table, stock, covering)
    assert isinstance(design, BoxDesign), said(read_table)
    assert not said(read_table)
    return design


def refused(text: str, stock: Stock = ONE_SHEET) -> str:
    read_table = table(text)
    assert read_cabinet(read_table, stock, None) is None
    return said(read_table)


def test_four_lines_make_a_carcass() -> None:
    assert read(BOX) == BoxDesign(
        name="Stage box", height=mm(600), width=mm(500), depth=mm(350), board=BIRCH
    )


def test_every_key_is_read() -> None:
    text = (
        BOX
        + """family = "box"
count = 2
material = "birch plywood"
thickness = 18
through = "top and bottom"
measure_first = false
allowance = 5
covering = { thickness = 1.2, ease = 0.5 }
grain = { sides = "depth", top_and_bottom = "any", baffle = "width", back = "any" }

[baffle]
fit = "inset"
material = "MDF"
thickness = 12
set_back = 20
wrapped = false
fitted = "before covering"
held_by = "glue"

[back]
fit = "inset"
thickness = 12
wrapped = true

[battens]
section = [30, 20]
front = false
rear = true
corners = "mitred"

[braces]
depth = 120
count = 2
material = "MDF"
"""
    )
    assert read(text, THREE_SHEETS) == BoxDesign(
        name="Stage box",
        count=2,
        height=mm(600),
        width=mm(500),
        depth=mm(350),
        board=BIRCH,
        through=Through.TOP_AND_BOTTOM,
        baffle=Closing(
            fit=Fit.INSET,
            board=Board(material="MDF", thickness=mm(12)),
            set_back=mm(20),
            wrapped=False,
            fitted=Fitted.BEFORE_COVERING,
            held_by="glue",
        ),
        back=Closing(
            fit=Fit.INSET,
            board=Board(material="birch plywood", thickness=mm(12)),
            wrapped=True,
        ),
        battens=Battens(section=(mm(20), mm(30)), front=False, rear=True, corners=Corners.MITRED),
        braces=Braces(depth=mm(120), count=2, board=Board(material="MDF", thickness=mm(12))),
        covering=Covering(thickness=mm("1.2"), ease=mm("0.5")),
        grains=Grains(
            sides=Along.DEPTH, top_and_bottom=Along.ANY, baffle=Along.WIDTH, back=Along.ANY
        ),
        measure_first=False,
        allowance=mm(5),
    )


def test_a_bare_word_says_how_a_baffle_fits() -> None:
    design = read(BOX + 'baffle = "inset"\nback = "none"\n')
    assert (design.baffle, design.back) == (Closing(fit=Fit.INSET), Closing(fit=Fit.NONE))


def test_battens_stand_behind_every_inset_panel_unless_said_otherwise() -> None:
    design = read(BOX + 'baffle = "inset"\nback = "planted"\nbattens = { section = 20 }\n')
    assert design.battens == Battens(section=(mm(20), mm(20)), front=True, rear=False)


def test_the_covering_of_the_job_holds_unless_the_cabinet_has_its_own() -> None:
    job = Covering(thickness=mm(2), ease=mm(1))
    assert read(BOX, covering=job).covering == job
    assert read(BOX + 'covering = "none"\n', covering=job).covering is None
    assert read(BOX + "covering = { thickness = 3 }\n", covering=job).covering == Covering(
        thickness=mm(3), ease=mm(1)
    )


def test_on_an_inch_job_the_allowance_is_an_eighth() -> None:
    assert read(BOX.replace("00", "0"), unit=Unit.INCH).allowance == inch("1/8")


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (
            "hieght = 5\n",
            (
                "job.toml, line 5: 'hieght' is not known here.\n"
                "    hieght = 5\n"
                "    ^^^^^^\n"
                "Did you mean 'height'? Known here: 'name', 'family', 'count', 'height', 'width', "
                "'depth', 'material', 'thickness', 'through', 'joint', 'baffle', 'back', "
                "'battens', 'braces', 'shelves', 'dividers', 'grille', 'covering', 'grain', "
                "'grain_round', 'measure_first', 'allowance', 'bevel_allowance', 'flush', "
                "'answers', 'discs', 'hole', 'clearances', 'way_out', 'assembly', 'roll', "
                "'cloth', 'screws' and 'hardware'."
            ),
        ),
        (
            "baffle = { fit = 'inset', setback = 5 }\n",
            (
                "job.toml, line 5, [baffle]: 'setback' is not known here.\n"
                "    baffle = { fit = 'inset', setback = 5 }\n"
                "                              ^^^^^^^\n"
                "Did you mean 'set_back'? Known here: 'fit', 'material', 'thickness', 'set_back', "
                "'wrapped', 'fitted', 'held_by', 'extra', 'gap' and 'upper'."
            ),
        ),
        (
            'through = "top"\n',
            (
                "job.toml, line 5, key 'through': 'top' is not one of the choices.\n"
                '    through = "top"\n'
                "              ^^^^^\n"
                "Write 'sides' or 'top and bottom'."
            ),
        ),
        (
            'back = "insett"\n',
            (
                "job.toml, line 5, key 'back': 'insett' is not one of the choices.\n"
                '    back = "insett"\n'
                "           ^^^^^^^^\n"
                "Did you mean 'inset'? Write 'inset', 'planted' or 'none'."
            ),
        ),
        (
            "battens = { section = [20, 30, 40] }\n",
            (
                "job.toml, line 5, [battens], key 'section': the section of the battens is not two "
                "sizes.\n"
                "    battens = { section = [20, 30, 40] }\n"
                "                          ^^^\n"
                "Write thickness and width, such as section = [20, 30]."
            ),
        ),
        (
            'covering = "tweed"\n',
            (
                "job.toml, line 5, key 'covering': a covering is a table of its own, or 'none'.\n"
                '    covering = "tweed"\n'
                "               ^^^^^^^\n"
                'Write covering = "none", or give its thickness under [cabinet.covering].'
            ),
        ),
        (
            "baffle = { fit = 'planted', set_back = 5 }\n",
            (
                "job.toml, line 5, key 'baffle': only an inset baffle can be set back.\n"
                "    baffle = { fit = 'planted', set_back = 5 }\n"
                "             ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
                "Make the baffle inset, or leave the set-back out."
            ),
        ),
        (
            "grain = { sides = 'width' }\n",
            (
                "job.toml, line 5, key 'grain': the width runs through the thickness of the "
                "sides.\n"
                "    grain = { sides = 'width' }\n"
                "            ^^^^^^^^^^^^^^^^^^^\n"
                "Choose one of: height, depth, any."
            ),
        ),
        (
            "back = { thickness = 9 }\n",
            (
                "job.toml, line 5, [back], key 'thickness': no sheet of 'birch plywood' is sold as "
                "9 mm thick.\n"
                "    back = { thickness = 9 }\n"
                "                         ^\n"
                "Write the nominal thickness, which is how the sheet is sold; the nearest is 18 mm."
            ),
        ),
    ],
)
def test_what_will_not_do_is_quoted_with_a_remedy(lines: str, expected: str) -> None:
    assert refused(BOX + lines) == expected


def test_what_is_left_out_is_named() -> None:
    assert refused('name = "Stage box"\nheight = 600\nwidth = 500\n') == (
        "job.toml: 'depth' is missing.\nAdd a line such as depth = 600."
    )


def test_a_box_of_no_listed_material_is_told_with_the_other_faults_of_its_file(
    tmp_path: Path,
) -> None:
    text = SHEET + "[[cabinet]]\n" + BOX + 'material = "birch"\n[saw]\nkerv = 2\n'
    said_there = message(tmp_path, text)
    assert "line 13, [[cabinet]] 1 'Stage box', key 'material': no sheet is of 'birch'" in (
        said_there
    )
    assert "'kerv' is not known here" in said_there
