"""The judge of plan files is judged: sound plans pass, and each broken rule is named."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from tests.plans.plan_rules import faults_of, in_mm
from tests.plans.rehearsal.samples import SAMPLES, metric, no_kerf, trims

Json = dict[str, Any]

JOB: Json = {
    "job": {"units": "mm"},
    "sheet": [{"name": "lime 18", "count": 1}],
    "part": [
        {"name": "Wing", "length": 562, "width": 356, "grain": "length", "thickness": 18},
        {"name": "Flap", "length": "356 mm", "width": 300, "grain": "width"},
        {"name": "Rail", "length": 597, "width": 97, "oversize": 3, "material": "lime plywood"},
    ],
}


def changed(document: Json, *path: str | int, value: object) -> Json:
    """Return a document with one value of its first sheet replaced."""
    holder = document["sheets"][0]
    for key in path[:-1]:
        holder = holder[key]
    holder[path[-1]] = value
    return document


@pytest.mark.parametrize("sample", SAMPLES.values(), ids=SAMPLES)
def test_a_sound_plan_keeps_all_rules(sample: Callable[[], Json]) -> None:
    assert faults_of(sample()) == []


def test_a_sound_plan_keeps_to_its_job() -> None:
    assert faults_of(metric(), JOB) == []


@pytest.mark.parametrize(
    ("path", "value", "message"),
    [
        (("trim",), trims(20, 10, 10, 10), "sheet 1: part A1 leaves the usable area"),
        (("parts", 0, "grain"), "width", "sheet 1: part A1 lies across the grain"),
        (("parts", 1, "grain"), "length", "sheet 1: part B1 lies across the grain"),
        (("parts", 1, "x"), 573.4, "sheet 1: parts A1 and B1 are less than a kerf apart"),
        (("parts", 2, "width"), 101, "sheet 1: no piece is C1 when the last cut is done"),
        (("offcuts", 0, "y"), 471, "sheet 1: no piece is L1 when the last cut is done"),
        (
            ("cuts", 3, "band", "width"),
            300,
            "sheet 1: cut 4 runs from edge to edge across 0 pieces",
        ),
        (("cuts", 3, "band", "length"), 2, "sheet 1: cut 4: it removes 2.0, the kerf is 2.4"),
        (("cuts", 3, "kerf"), 3, "sheet 1: cut 4: its kerf is not the saw's"),
        (("cuts", 3, "number"), 5, "sheet 1: cut 4 carries the number 5"),
        (("price",), 31, "it costs 30.0, its sheets 31.0"),
        (("parts", 0, "code"), "C1", "2 things are called C1"),
    ],
)
def test_each_broken_rule_is_named(
    path: tuple[str | int, ...], value: object, message: str
) -> None:
    assert message in faults_of(changed(metric(), *path, value=value))


def test_a_part_that_is_still_to_be_cut_is_no_piece() -> None:
    document = no_kerf()
    document["sheets"][0]["cuts"].pop()
    assert faults_of(document) == [
        f"sheet 1: no piece is {code} when the last cut is done" for code in ("A2", "A3")
    ]


def test_the_plan_as_a_whole_is_judged() -> None:
    document = {**metric(), "version": 2, "bound": 40}
    assert faults_of(document) == [
        "it is not a plan of version 1",
        "it costs 30.0, less than its own bound 40",
    ]
    document = {**metric(), "unplaced": [{"name": "Flap", "count": 0, "reason": ""}]}
    assert len(faults_of(document)) == 1


@pytest.mark.parametrize(
    ("table", "key", "value", "message"),
    [
        ("sheet", "name", "lime 12", "there is no stock 'lime 18'"),
        ("sheet", "count", 0, "1 of 0 sheets 'lime 18' are used"),
        ("part", "length", 563, "the length of A1 is 562, not 563.0"),
        ("part", "oversize", 1, "the blank length of A1 is 562.0"),
        ("part", "grain", "any", "the grain of A1 is length"),
        ("part", "material", "oak", "A1 is of lime plywood"),
        ("part", "thickness", "3/4 in", "A1 is 18 thick, not 19.05"),
        ("part", "count", 2, "2 of 'Wing' are asked for, 1 are accounted for"),
        ("part", "name", "Fin", "0 of 'Wing' are asked for, 1 are accounted for"),
    ],
)
def test_each_breach_of_the_job_is_named(table: str, key: str, value: object, message: str) -> None:
    job = {**JOB, table: [{**JOB[table][0], key: value}, *JOB[table][1:]]}
    assert message in faults_of(metric(), job)


def test_what_is_unplaced_is_accounted_for() -> None:
    job = {**JOB, "part": [{**JOB["part"][0], "count": 3}, *JOB["part"][1:]]}
    document = {**metric(), "unplaced": [{"name": "Wing", "count": 2, "reason": "no room"}]}
    assert faults_of(document, job) == []


def test_lengths_of_a_job_are_read_in_both_units() -> None:
    # 1 in = 25.4 mm exactly: international yard and pound agreement, 1959.
    assert in_mm("14 1/8 in", inches=False) == Fraction("358.775")
    assert in_mm('3/4"', inches=False) == Fraction("19.05")
    assert in_mm("18 mm", inches=True) == 18
    assert in_mm(2.5, inches=True) == Fraction("63.5")
