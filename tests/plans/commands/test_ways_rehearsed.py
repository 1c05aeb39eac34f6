"""Every way to buy is a whole plan: laid out, printed and rehearsed, with every part in it."""

from pathlib import Path

import pytest

from nesting.buying import find_ways
from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.reading.job_toml import read_job_text
from nesting.search.result import Result
from plans.plan import make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse

# All stock and prices are invented.
STOCK = """
[[sheet]]
name = "full"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
price = 70
[[sheet]]
name = "half"
material = "birch plywood"
thickness = 18
length = 1220
width = 1220
price = 40
[[sheet]]
name = "square"
material = "birch plywood"
thickness = 18
length = 1525
width = 1525
price = 48
[[sheet]]
name = "left over"
material = "birch plywood"
thickness = 18
length = 800
width = 600
owned = true
count = 1
[[cabinet]]
name = "Side fill"
family = "box"
count = 2
height = 600
width = 400
depth = 350
baffle = "inset"
back = { fit = "inset", held_by = "screws" }
"""
PLACES = {"": "", "yard": "[yard]\nmax_cuts = 4\nprice_per_cut = 1\n"}


@pytest.mark.parametrize("place", PLACES)
def test_each_way_to_buy_is_complete_and_passes_its_rehearsal(place: str) -> None:
    job = read_job_text(STOCK + PLACES[place], Path("ways.toml"))

    def solve(asked: Job) -> Result:
        return solve_with_yard(asked, effort=1)

    wanted = sum(part.count for part in job.parts)
    ways = find_ways(job, solve)
    assert len(ways) >= 3
    for way in ways:
        document = plan_document(way.job, way.result, make_plan(way.job, way.result))
        assert rehearse(document).faults == (), way.restriction.title
        assert sum(len(sheet["parts"]) for sheet in document["sheets"]) == wanted
