"""Cautions: every hazard of an ordinary sheet job is named, none is called safe."""

import re
from dataclasses import replace
from decimal import Decimal

from nesting.cabinets.build import CabinetBuild
from nesting.lengths import mm
from plans.sections.cautions import Caution, make_cautions
from tests.nesting.hand_made import SAW, two_cabinets
from tests.plans.sections.helpers import worked_out


def cautions(lift_limit: int = 20, *, cabinets: bool = False) -> dict[str, Caution]:
    made, layout = two_cabinets()
    build = CabinetBuild(name="Box", letters=("A",), outside=(mm(500), mm(400), mm(300)), parts=())
    made = replace(
        made,
        saw=replace(SAW, lift_limit_kg=Decimal(lift_limit)),
        cabinets=(build,) if cabinets else (),
    )
    return {caution.topic: caution for caution in make_cautions(worked_out(made, layout))}


def test_every_hazard_of_a_sheet_job_has_its_note() -> None:
    assert set(cautions()) >= {
        "Support",
        "Holding",
        "Guards",
        "Blade depth",
        "Left hand",
        "Mass",
        "Dust, eyes, ears",
        "Tiredness",
        "Mains",
    }


def test_every_note_defers_to_somebody_and_has_a_short_line() -> None:
    for caution in cautions(cabinets=True).values():
        assert caution.full
        assert caution.short
        assert caution.defer_to
        assert caution.where <= {"sheet", "shopping", "work", "overview", "holes"}


def test_no_note_promises_safety_or_a_load() -> None:
    for caution in cautions(cabinets=True).values():
        text = f"{caution.full} {caution.short}"
        assert not re.search(r"\bis safe\b|\bsafely\b|\bguarantee|\bwill hold\b|\bup to \d", text)


def test_two_people_are_asked_for_where_a_piece_is_over_the_limit() -> None:
    assert cautions()["Mass"].short == "TWO PEOPLE for every piece over 20 kg."
    assert "TWO PEOPLE for" not in cautions(lift_limit=40)["Mass"].short


def test_depth_of_the_blade_is_left_to_the_manual() -> None:
    assert "manual" in cautions()["Blade depth"].full
    assert not re.search(r"\d", cautions()["Blade depth"].full)


def test_cabinets_must_not_be_hung() -> None:
    assert "Hanging" not in cautions()
    assert cautions(cabinets=True)["Hanging"].where == {"overview"}


def test_mains_wiring_is_no_part_of_the_plan() -> None:
    assert "no part of this plan" in cautions()["Mains"].full
