"""Random jobs with a yard and a car: every plan rehearses at both extremes and keeps the rules."""

import json
import random
from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.car import Car
from nesting.checks import check_layout
from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.lengths import Unit, mm
from nesting.parts import Grain, Part
from nesting.saw import Face, Saw
from nesting.sheets import Sheet, SheetGrain, Trim
from nesting.yard import Yard
from plans.plan import make_plan
from plans.plan_file import dump, plan_document
from plans.rehearsal import rehearse
from tests.nesting.hand_made import BIRCH
from tests.plans.plan_rules import faults_of


@pytest.mark.property
@pytest.mark.parametrize("seed", range(60))
def test_the_plan_of_a_random_job_with_a_yard_holds(seed: int) -> None:
    job = random_job(seed)
    result = solve_with_yard(job, effort=0, seed=seed)
    assert check_layout(job, result.layout) == ()
    document = json.loads(dump(plan_document(job, result, make_plan(job, result))))
    assert [str(fault) for fault in rehearse(document).faults] == []
    assert faults_of(document) == []


@pytest.mark.property
def test_many_random_jobs_have_cuts_at_the_yard() -> None:
    planned = 0
    for seed in range(20):
        job = random_job(seed)
        result = solve_with_yard(job, effort=0, seed=seed)
        document = plan_document(job, result, make_plan(job, result))
        assert rehearse(document).faults == ()
        planned += "yard" in document
    assert planned >= 7


def random_job(seed: int) -> Job:
    chance = random.Random(seed)  # noqa: S311 - repeatable on purpose
    trim = chance.choice([0, mm(3), mm(10)])
    return Job(
        name="Random yard",
        unit=chance.choice(list(Unit)),
        step=mm("0.5"),
        saw=Saw(
            kerf=chance.choice([0, mm("1.6"), mm("2.4"), mm(3)]),
            marked_face=chance.choice(list(Face)),
        ),
        sheets=(random_sheet(chance, trim),),
        parts=tuple(random_part(chance, number) for number in range(chance.randint(1, 5))),
        yard=Yard(
            kerf=chance.choice([0, mm("3.2"), mm(5)]),
            max_cuts=chance.randint(1, 4),
            min_piece=chance.choice([0, mm(305)]),
            price_per_cut=Decimal(chance.choice([0, 2])),
            rough=chance.choice([mm(1), mm(3), mm(6)]),
            unit=chance.choice(list(Unit)),
        ),
        car=chance.choice([None, *[random_car(chance)] * 4]),
    )


def random_sheet(chance: random.Random, trim: int) -> Sheet:
    return replace(
        BIRCH,
        length=mm(chance.choice([1220, 2440, 2500, 3050])),
        width=mm(chance.choice([1220, 1250, 1525, 2440])),
        grain=chance.choice(list(SheetGrain)),
        trim=Trim(
            left=trim,
            bottom=trim,
            right=chance.choice([0, trim]),
            top=chance.choice([0, trim]),
        ),
    )


def random_part(chance: random.Random, number: int) -> Part:
    return Part(
        name=f"Piece {number + 1}",
        length=mm(chance.randint(100, 1100)),
        width=mm(chance.randint(60, 600)),
        count=chance.randint(1, 5),
        grain=chance.choice(list(Grain)),
        material=BIRCH.material,
        thickness=BIRCH.thickness,
    )


def random_car(chance: random.Random) -> Car:
    return Car(
        opening_width=mm(chance.randint(800, 1300)),
        opening_height=mm(chance.randint(400, 900)),
        floor_length=mm(chance.randint(1200, 2600)),
        arch_width=mm(chance.randint(800, 1200)),
        clearance=mm(chance.choice([0, 10, 20])),
    )
