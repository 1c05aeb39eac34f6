from pathlib import Path

import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit, Fitted, Margins
from nesting.cabinets.design import (
    Along,
    Battens,
    BoxDesign,
    Braces,
    Corners,
    GrainRound,
    Grains,
    Through,
)
from nesting.cabinets.families import Design
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.shelving import Dividers, Grille, Shelves
from nesting.cabinets.wedge_design import WedgeDesign
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
    design = read_any(text, stock, covering, unit)
    assert isinstance(design, BoxDesign)
    return design


def read_any(
    text: str,
    stock: Stock = ONE_SHEET,
    covering: Covering | None = None,
    unit: Unit = Unit.MM,
) -> Design:
    read_table = table(text, unit)
    design = read_cabinet(read_table, stock, covering)
    assert design is not None, said(read_table)
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
                "'grain_round', 'joint_first', 'measure_first', 'allowance', 'bevel_allowance', "
                "'flush', "
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
                "'depth', 'play', 'wrapped', 'fitted', 'held_by', 'extra', 'gap' and 'upper'."
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
                "Did you mean 'inset'? Write 'inset', 'rebate', 'groove', 'planted' or "
                "'none'."
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
                "job.toml, line 5, key 'baffle': only an inset baffle, or one in a "
                "rebate or groove, can be set back.\n"
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


def test_joints_shelves_dividers_and_grille_are_read() -> None:
    text = (
        BOX
        + """family = "case"
joint = { kind = "groove", depth = 6, tongue = 8, fit = 0.2 }
dividers = 2
baffle = { fit = "inset", set_back = 20, extra = { bottom = 1.2 } }
back = { fit = "planted", gap = 150, upper = 100 }
shelves = { clear = [100, 200], set_back = 10, groove = 5 }
grille = { section = [20, 12], cloth = 0.5, piping = 3 }
grain_round = true
flush = 1
bevel_allowance = 4
answers = { feet = "castors", spare = "one side" }
"""
    )
    design = read(text)
    assert design.joint == Joint(kind=JointKind.GROOVE, depth=mm(6), tongue=mm(8), fit=mm("0.2"))
    assert design.dividers == Dividers(count=2)
    assert design.baffle == Closing(fit=Fit.INSET, set_back=mm(20), extra=Margins(bottom=mm("1.2")))
    assert design.back == Closing(fit=Fit.PLANTED, gap=mm(150), upper=mm(100))
    assert design.shelves == Shelves(
        count=2, clear=(mm(100), mm(200)), set_back=mm(10), groove=mm(5)
    )
    assert design.grille == Grille(section=(mm(12), mm(20)), cloth=mm("0.5"), piping=mm(3))
    assert (design.grain_round, design.flush, design.bevel_allowance) == (
        GrainRound.ALL,
        mm(1),
        mm(4),
    )
    assert design.answers == (("feet", "castors"), ("spare", "one side"))


def test_a_bare_word_names_a_joint() -> None:
    assert read(BOX + 'joint = "mitre"\n').joint == Joint(kind=JointKind.MITRE)


def test_a_box_with_four_sloping_sides_is_refused_with_its_angles() -> None:
    text = refused(BOX + 'family = "splayed"\nsplay = 5\n')
    assert "a box whose four sides slope is not worked out: its corners are compound" in text
    assert "tilt the blade 44.8° and set the mitre gauge to 85.0°" in text


def test_battens_that_stand_nowhere_are_refused() -> None:
    closings = 'baffle = "none"\nback = "rebate"\n'
    text = refused(BOX + closings + "battens = { section = [20, 30] }\n")
    assert "a frame stands behind an inset baffle or back, and there is none" in text


def test_a_back_in_a_rebate_or_groove_is_read_with_its_usual_seat() -> None:
    deep = read(BOX + 'back = { fit = "rebate", depth = 8, set_back = 2, play = 0.5 }\n').back
    assert deep == Closing(fit=Fit.REBATE, depth=mm(8), set_back=mm(2), play=mm("0.5"))
    assert read(BOX + 'back = "rebate"\n').back == Closing(fit=Fit.REBATE)
    groove = Closing(fit=Fit.GROOVE, set_back=mm(10), play=mm("0.5"))
    assert read(BOX + 'back = "groove"\n').back == groove
    assert read(BOX + 'back = { fit = "groove" }\n').back == groove


def test_a_case_is_open_in_front_unless_said_otherwise() -> None:
    assert read(BOX + 'family = "case"\n').baffle == Closing(fit=Fit.NONE)
    assert read(BOX + 'family = "case"\nbaffle = "inset"\n').baffle == Closing(fit=Fit.INSET)


def test_a_wedge_needs_no_more_than_a_box_and_takes_a_top_and_a_front() -> None:
    few = read_any(BOX + 'family = "wedge"\n')
    assert isinstance(few, WedgeDesign)
    assert (few.top, few.front) == (mm(115), mm(100))
    more = read_any(BOX + 'family = "wedge"\ntop = 0\nfront = 80\nback = "inset"\n')
    assert isinstance(more, WedgeDesign)
    assert (more.top, more.front, more.back) == (0, mm(80), Closing(fit=Fit.INSET))


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (
            'joint = "dovetail"\n',
            (
                "job.toml, line 5, key 'joint': 'dovetail' is not one of the choices.\n"
                '    joint = "dovetail"\n'
                "            ^^^^^^^^^^\n"
                "Write 'butt', 'mitre', 'rebate', 'groove' or 'finger'."
            ),
        ),
        (
            "joint = { kind = 'finger', fingers = 4 }\n",
            (
                "job.toml, line 5, [joint]: 4 fingers do not begin and end with the same panel.\n"
                "Give an odd number of 3 or more."
            ),
        ),
        (
            "shelves = { count = 3, clear = [100] }\n",
            (
                "job.toml, line 5, [shelves]: 1 clear heights do not place 3 of them.\n"
                "Give the clear height below each shelf, from the bottom up, or leave the heights "
                "out to spread the shelves evenly."
            ),
        ),
        (
            "answers = { wheels = 'none' }\n",
            (
                "job.toml, line 5, [answers]: 'wheels' is not known here.\n"
                "    answers = { wheels = 'none' }\n"
                "                ^^^^^^\n"
                "Known here: 'feet', 'grille', 'handles', 'port_rings' and 'spare'."
            ),
        ),
        (
            "family = 'wedge'\ntop = 400\n",
            (
                "job.toml, line 6, key 'top': it is not less than the outside depth.\n"
                "    top = 400\n"
                "          ^^^\n"
                "Give less than the depth, 0 for none: the baffle has the rest."
            ),
        ),
    ],
)
def test_what_a_family_cannot_have_is_quoted_with_a_remedy(lines: str, expected: str) -> None:
    assert refused(BOX + lines) == expected


def test_a_key_of_another_family_is_not_known() -> None:
    assert "'through' is not known here" in refused(BOX + "family = 'wedge'\nthrough = 'sides'\n")
