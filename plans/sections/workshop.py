"""What is printed for the workshop beside the sheets: sessions, kits, test pieces, fallbacks."""

from dataclasses import dataclass

from plans.sections.coupons import Coupon, make_coupons
from plans.sections.fallbacks import FallbackRow, make_fallback_rows
from plans.sections.sessions import KitRow, SessionRow, make_kit_rows, make_session_rows
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Workshop:
    """All of it.

    Attributes:
        sessions: Where the work can be left; empty where the job does not ask.
        kits: The parts of each of several cabinets, in the order in which they are complete.
        coupons: A test piece from every sheet that leaves one.
        fallbacks: What large parts can still become if they are spoilt.
    """

    sessions: tuple[SessionRow, ...] = ()
    kits: tuple[KitRow, ...] = ()
    coupons: tuple[Coupon, ...] = ()
    fallbacks: tuple[FallbackRow, ...] = ()


def make_workshop(worked: Worked) -> Workshop:
    """Return what is printed for the workshop."""
    return Workshop(
        sessions=make_session_rows(worked),
        kits=make_kit_rows(worked),
        coupons=make_coupons(worked),
        fallbacks=make_fallback_rows(worked),
    )
