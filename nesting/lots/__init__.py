"""Sheets that are not as thick as each other though they are called so, and joints between them."""

from nesting.lots.exchange import prefer_one_lot
from nesting.lots.mixed_joints import SAME_LOT, MixedJoint, find_mixed_joints

__all__ = ["SAME_LOT", "MixedJoint", "find_mixed_joints", "prefer_one_lot"]
