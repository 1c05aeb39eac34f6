import pytest

from plans.rehearsal import rehearse
from plans.rehearsal.document import read_document
from plans.rehearsal.sawing import saw_sheet
from tests.plans.yard_plans import Json, document_of, half_sheets, narrow_pieces


@pytest.fixture(params=["half", "narrow"])
def document(request: pytest.FixtureRequest) -> Json:
    return document_of(half_sheets() if request.param == "half" else narrow_pieces())


def whats(document: Json) -> list[str]:
    return [f"{fault.where}: {fault.what}" for fault in rehearse(document).faults]


def test_a_plan_with_two_kerfs_is_sawn_without_fault(document: Json) -> None:
    cuts = document["sheets"][0]["cuts"]
    assert {(cut["by"], cut["kerf"]) for cut in cuts} == {("yard", 3.2), ("home", 2.4)}
    assert whats(document) == []


def test_with_every_yard_cut_off_by_its_roughness_parts_come_out_to_size(document: Json) -> None:
    plan, _ = read_document(document)
    assert plan is not None
    sheet = plan.sheets[0]
    planned = {piece.code: piece.size for piece in saw_sheet(sheet, plan).pieces}
    for off in (-3_000_000, 3_000_000):
        sawn = saw_sheet(sheet, plan, yard_off=off)
        sizes = {piece.code: piece.size for piece in sawn.pieces}
        assert all(sizes[part.code] == planned[part.code] for part in sheet.parts)
        assert sizes != planned  # what is left over did change, so the yard was off


def test_a_yard_that_is_rougher_than_its_edges_allow_is_caught(document: Json) -> None:
    document["yard"]["rough"] = 40
    found = whats(document)
    assert any("of the yard's edge, which may be off by 40 mm" in what for what in found)
    assert any("with the yard's pieces 40 mm" in what for what in found)


def test_a_part_that_keeps_an_edge_of_the_yard_is_caught() -> None:
    document = document_of(half_sheets())
    # The cut that takes the second piece's raw edge off becomes one that measures from it.
    rows = document["sheets"][0]["printed"]["rows"]
    second = rows[0]["free_code"]
    trims = [row for row in rows if row["keep"] == "trim 3" and row["measure_from"] == "left edge"]
    assert len(trims) == 1
    number = int(trims[0]["number"])
    assert number > 1, second
    document["sheets"][0]["cuts"][number - 1]["by"] = "yard"
    assert any("comes after a cut at home" in what for what in whats(document))


def test_the_yard_needs_a_place_in_the_plan(document: Json) -> None:
    del document["yard"]
    assert "sheet 1, cut 1: it is left to the yard, but the plan has none" in whats(document)


def test_a_yard_cut_with_another_kerf_is_caught(document: Json) -> None:
    document["yard"]["kerf"] = 4
    assert "sheet 1, cut 1: its kerf is 3.2 mm, but the yard's is 4 mm" in whats(document)


def test_a_home_cut_that_measures_from_a_yard_edge_is_caught() -> None:
    document = document_of(half_sheets())
    rows = document["sheets"][0]["printed"]["rows"]
    trim = next(row for row in rows if row["keep"] == "trim 3")
    trim["keep"] = "3"
    assert any(
        what.endswith("it is measured from the left edge, which is still raw")
        for what in whats(document)
    )
