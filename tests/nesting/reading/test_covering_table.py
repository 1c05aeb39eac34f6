from nesting.cabinets.closing_design import Covering
from nesting.lengths import Unit, inch, mm
from nesting.reading.covering_table import read_covering
from tests.nesting.reading.job_files import said, table


def test_a_job_without_the_table_has_bare_cabinets() -> None:
    assert read_covering(table("").table("covering")) is None


def test_what_is_left_out_has_a_default_in_the_unit_of_the_job() -> None:
    """The defaults are judgement, no source; the overview lists them."""
    assert read_covering(table("[covering]").table("covering")) == Covering(
        thickness=mm(1), ease=mm(1)
    )
    assert read_covering(table("[covering]", Unit.INCH).table("covering")) == Covering(
        thickness=inch("1/32"), ease=inch("1/32")
    )


def test_paint_may_have_no_thickness_and_a_clearance() -> None:
    covering = read_covering(table("[covering]\nthickness = 0\nease = 1.5").table("covering"))
    assert covering == Covering(thickness=0, ease=mm("1.5"))


def test_a_key_that_is_not_known_is_told() -> None:
    read = table("[covering]\nthicknes = 1")
    read_covering(read.table("covering"))
    assert said(read) == (
        "job.toml, line 2, [covering]: 'thicknes' is not known here.\n"
        "    thicknes = 1\n"
        "    ^^^^^^^^\n"
        "Did you mean 'thickness'? Known here: 'thickness', 'ease' and 'lining'."
    )
