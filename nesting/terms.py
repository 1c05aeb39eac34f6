"""Terms: what the person adds to a job for buying, for evenings at the saw and for batches."""

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from nesting.lengths import Length, mm


class Dimension(Enum):
    """A size that may be given a little more or less."""

    HEIGHT = "height"
    WIDTH = "width"
    DEPTH = "depth"
    LENGTH = "length"


@dataclass(frozen=True, slots=True, kw_only=True)
class Free:
    """A size that need not be kept to the millimetre.

    Attributes:
        of: Name of the design or of the plain part; all its copies change together.
        is_cabinet: True for a design, False for a plain part.
        dimension: Which size.
        limit: By how much it may change, either way. Positive.
    """

    of: str
    is_cabinet: bool
    dimension: Dimension
    limit: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """How long one works at a time, and what can be put away. The defaults are judgement.

    Attributes:
        minutes: How long a session should be at most. Positive.
        store: Longer and shorter side of the largest piece that can be put away flat.
    """

    minutes: Decimal = Decimal(120)
    store: tuple[Length, Length] = (mm(1250), mm(650))


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """What is asked of buying, sessions and batches; nothing where the job file says nothing.

    Attributes:
        delivery: What it costs to have everything brought; None where nobody asked.
        free: Sizes that may change a little where that saves money.
        evening: How the work is divided into sessions; None for not at all.
        most_open: How many parts may lie about whose cabinet is not complete; None for any number.
        first_whole: Letter of the cabinet whose parts are cut before all others; "" for none.
        spare_minutes: Minutes at the saw that spares out of waste may take in all; None for no
            spares.
    """

    delivery: Decimal | None = None
    free: tuple[Free, ...] = ()
    evening: Evening | None = None
    most_open: int | None = None
    first_whole: str = ""
    spare_minutes: Decimal | None = None
