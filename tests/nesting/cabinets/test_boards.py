from dataclasses import replace

from nesting.cabinets.boards import Board, find_spreads, measure_boards, real_thickness
from nesting.lengths import Unit, format_length, inch, mm
from nesting.sheets import Sheet


def sheet(name: str, *measured: str, thickness: int = 18) -> Sheet:
    return Sheet(
        name=name,
        material="birch plywood",
        thickness=mm(thickness),
        measured=tuple(mm(reading) for reading in measured),
        length=mm(2440),
        width=mm(1220),
    )


BIRCH = Board(material="birch plywood", thickness=mm(18))


def test_the_mean_of_all_readings_is_given_to_a_tenth() -> None:
    """EN 324-1:1993: eight readings, their mean to 0.1 mm (as APA Europe summarises it)."""
    readings = ("17.65", "17.7", "17.7", "17.75", "17.8", "17.7", "17.6", "17.7")
    assert measure_boards([sheet("birch 18", *readings)]) == {BIRCH: mm("17.7")}


def test_readings_of_several_sheets_of_one_board_count_alike() -> None:
    sheets = [sheet("full", "17.6", "17.6"), sheet("offcut", "17.9"), sheet("new")]
    assert measure_boards(sheets) == {BIRCH: mm("17.7")}


def test_boards_without_readings_are_left_out_and_count_with_their_nominal_thickness() -> None:
    assert measure_boards([sheet("thin", thickness=12)]) == {}
    assert real_thickness(BIRCH, {}) == mm(18)
    assert real_thickness(BIRCH, {BIRCH: mm("17.7")}) == mm("17.7")


def test_a_fraction_of_an_inch_stays_what_was_read() -> None:
    readings = {"23/32": ["23/32"], "47/64": ["23/32", "3/4"], "0.728": ["23/32", "47/64"]}
    for mean, found in readings.items():
        measured = replace(sheet("ply"), measured=tuple(inch(reading) for reading in found))
        real = real_thickness(BIRCH, measure_boards([measured]))
        assert format_length(real, Unit.INCH) == mean


def test_the_spread_of_a_board_runs_over_all_its_sheets() -> None:
    sheets = [sheet("full", "17.6", "17.7"), sheet("offcut", "17.9"), sheet("new")]
    assert find_spreads(sheets) == {BIRCH: mm("0.3")}
