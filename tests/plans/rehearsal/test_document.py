"""Whatever stands in a plan file, the rehearsal says what is wrong and never stumbles."""

import copy
from collections.abc import Iterator
from typing import Any

import pytest

from plans.rehearsal import rehearse
from tests.plans.rehearsal.samples import SAMPLES, metric

Json = dict[str, Any]
Path = tuple[str | int, ...]
REMEDY = "Use a plan file as 'setout plan' wrote it, unchanged."
JUNK: tuple[object, ...] = (
    *(None, True, False, "", " ", "x", "٣", "1/0", "WASTE", "S1", "1 × 1", "trim trim 3"),
    *([], [None], {}, -1, 0, 1e-9, 999_999, 1e300, 10**5000, -(10**5000)),
    *(float("nan"), float("inf"), float("-inf")),
)


def faults(document: object) -> list[str]:
    return [str(fault) for fault in rehearse(document).faults]


@pytest.mark.parametrize(
    "document", [None, 1, "plan", [], {}, {"format": "setout plan, but another"}]
)
def test_what_is_no_plan_is_said_to_be_none(document: object) -> None:
    assert faults(document) == ["plan: it is not a plan file of setout.\nName a plan."]


@pytest.mark.parametrize("version", [0, 2, "1", True, None])
def test_another_version_is_refused(version: object) -> None:
    assert faults({**metric(), "version": version}) == [
        (
            "plan: it is not of version 1, which this program reads.\n"
            "Make the plan again with 'setout plan'."
        )
    ]


@pytest.mark.parametrize(
    ("path", "value", "message"),
    [
        (("unit",), "cm", "plan: 'unit' is 'cm', not 'mm' or 'in'"),
        (("cost",), None, "plan: 'cost' is empty"),
        (("minutes",), "long", "plan: 'minutes' is 'long', not a number"),
        (("saw",), [], "plan: 'saw' is a list, not an object"),
        (("saw", "kerf"), -1, "saw: 'kerf' is -1, less than 0"),
        (
            ("sheets", 0, "length"),
            float("nan"),
            "sheet 1: 'length' is not a number that a plan can hold",
        ),
        (("sheets", 0, "number"), 1.5, "sheet 1: 'number' is 1.5, not a whole number"),
        (("sheets", 0, "printed", "sums", 1), 7, "sheet 1, printed, sum 2: it is 7, not an object"),
        (
            ("sheets", 0, "parts", 0, "turned"),
            0,
            "sheet 1, part 1: 'turned' is 0, not true or false",
        ),
        (
            ("sheets", 0, "parts", 0, "finished"),
            [1],
            "sheet 1, part 1: 'finished' is a list, not two numbers",
        ),
        (
            ("sheets", 0, "cuts", 2, "band", "x"),
            True,
            "sheet 1, cut 3, band: 'x' is true, not a number",
        ),
        (
            ("sheets", 0, "printed", "rows", 0, "keep"),
            "ten",
            (
                "sheet 1, printed, row 1: the printed"
                " 'keep' cannot be read: 'ten' is not a figure in mm"
            ),
        ),
        (
            ("sheets", 0, "printed", "rows", 1, "number"),
            "3",
            "sheet 1, printed, row 2: cut 2 does not carry the number 2",
        ),
        (
            ("sheets", 0, "printed", "rows", 0, "direction"),
            "crosscut",
            (
                "sheet 1, printed, row 1:"
                " it is printed as another direction than the rip that is drawn"
            ),
        ),
        (("sheets", 0, "cuts"), [], "sheet 1: 0 cuts are drawn, 7 are printed"),
    ],
)
def test_each_slip_of_form_is_told_with_its_place(path: Path, value: object, message: str) -> None:
    assert faults(replaced(metric(), path, value)) == [f"{message}.\n{REMEDY}"]


def test_a_missing_key_is_named() -> None:
    document = metric()
    del document["sheets"][0]["offcuts"][0]["y"]
    assert faults(document) == [f"sheet 1, offcut 1: 'y' is missing.\n{REMEDY}"]


def test_all_slips_of_form_are_told_together() -> None:
    document = metric()
    document["job"] = ""
    document["unplaced"] = [{"name": "Shelf", "count": 0, "reason": ""}]
    document["sheets"][0]["printed"]["parts"].pop()
    assert faults(document) == [
        f"plan: no 'job'.\n{REMEDY}",
        f"sheet 1, part 3: 'C1' is not printed, or stands there twice.\n{REMEDY}",
        f"unplaced part 1: no 'reason'.\n{REMEDY}",
        f"unplaced part 1: 'count' is 0, less than 1.\n{REMEDY}",
    ]


@pytest.mark.slow
@pytest.mark.parametrize("sample", SAMPLES)
def test_no_junk_anywhere_makes_it_stumble(sample: str) -> None:
    document = SAMPLES[sample]()
    for path in paths_of(document):
        for value in JUNK:
            for fault in faults(replaced(document, path, value) if path else value):
                where, _, rest = fault.partition(": ")
                assert where, fault
                assert 10 < len(rest) < 400, fault


def test_no_missing_key_makes_it_stumble() -> None:
    document = metric()
    for path in paths_of(document):
        if path and isinstance(path[-1], str) and path[-1] not in ("measured", "WASTE"):
            changed = copy.deepcopy(document)
            del follow(changed, path[:-1])[path[-1]]
            assert faults(changed), path


def paths_of(value: object, path: Path = ()) -> Iterator[Path]:
    """Yield where every value of a document stands, itself first."""
    yield path
    if isinstance(value, dict | list):
        for key in value if isinstance(value, dict) else range(len(value)):
            yield from paths_of(value[key], (*path, key))


def follow(document: Any, path: Path) -> Any:  # noqa: ANN401 - JSON holds anything
    for key in path:
        document = document[key]
    return document


def replaced(document: Json, path: Path, value: object) -> Json:
    changed = copy.deepcopy(document)
    follow(changed, path[:-1])[path[-1]] = value
    return changed
