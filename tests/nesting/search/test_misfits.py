from decimal import Decimal

from nesting.job import Job
from nesting.lengths import Unit, inch, mm
from nesting.parts import Grain, Part
from nesting.search.misfits import find_misfits
from nesting.sheets import Sheet, Trim
from tests.nesting.search.jobs import make_job, make_part, make_sheet


def explain(job: Job) -> str:
    (misfit,) = find_misfits(job)
    return misfit.reason


def test_a_part_too_long_names_the_sheet_that_comes_nearest() -> None:
    trim = Trim(left=mm(10), right=mm(10), top=mm(10), bottom=mm(10))
    sheet = make_sheet("birch 18", trim=trim)
    job = make_job([make_part("door", 2000, 1290, grain=Grain.LENGTH)], [sheet])
    assert explain(job) == (
        "2000 mm × 1290 mm is 90 mm too wide for the usable 1200 mm of 'birch 18'; with the same "
        "trims it needs a sheet of at least 2440 mm × 1310 mm"
    )


def test_inches_are_spoken_of_in_inches() -> None:
    sheet = Sheet(
        name="ply", material="ply", thickness=inch("3/4"), length=inch(96), width=inch(48)
    )
    part = Part(
        name="door",
        length=inch("97 1/2"),
        width=inch(20),
        material="ply",
        thickness=inch("3/4"),
    )
    job = make_job([part], [sheet], unit=Unit.INCH)
    assert explain(job) == (
        "97 1/2 in × 20 in is 1 1/2 in too long for the usable 96 in of 'ply'; with the same trims "
        "it needs a sheet of at least 97 1/2 in × 48 in"
    )


def test_grain_is_named_where_it_is_the_reason() -> None:
    sheet = make_sheet("narrow", 2440, 500)
    job = make_job([make_part("shelf", 600, 400, grain=Grain.WIDTH)], [sheet])
    assert explain(job) == (
        "600 mm × 400 mm would fit 'narrow' only with its width across the grain, which runs along "
        "the 2440 mm; it fits if its grain may be 'any'"
    )


def test_a_material_that_is_not_listed_names_those_that_are() -> None:
    job = make_job([make_part("shelf", 600, 400, material="oak")], [make_sheet()])
    assert explain(job) == "no sheet of 'oak' is listed; there is birch plywood 18 mm"


def test_a_thickness_that_is_not_listed_names_those_that_are() -> None:
    sheets = [make_sheet(), make_sheet("birch 12", thickness=mm(12))]
    job = make_job([make_part("shelf", 600, 400, thickness=mm(15))], sheets)
    assert explain(job) == ("no birch plywood 15 mm thick is listed; there is 12 mm and 18 mm")


def test_a_sheet_that_is_used_up_is_named() -> None:
    sheets = [make_sheet("small", 500, 300), make_sheet("large", count=0, price=Decimal(62))]
    job = make_job([make_part("shelf", 600, 400)], sheets)
    assert explain(job) == "it would fit 'large', of which there is none left"


def test_parts_that_fit_are_not_reported() -> None:
    assert find_misfits(make_job([make_part("shelf", 600, 400)], [make_sheet()])) == ()
