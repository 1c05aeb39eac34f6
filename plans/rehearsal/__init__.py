"""The rehearsal: saws the printed numbers of a plan virtually, before wood is touched.

It stands apart. It knows the plan file and nothing of what made it, so a mistake made there is
not made again here.
"""

from plans.rehearsal.plan_reading import read_plan
from plans.rehearsal.rehearse import Rehearsal, rehearse

__all__ = ["Rehearsal", "read_plan", "rehearse"]
