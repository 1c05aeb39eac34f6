"""How likely it is that every part reaches its size when the guide is never set quite right.

Every sheet is sawn many times with small random errors. One setting of the guide has one error,
shared by all cuts that it serves. A cut runs a little out of square, and the kerf is a little
off what was measured. A part reaches its size when neither side comes out shorter than it should
be by more than a joint forgives.

Whole nanometres throughout; only the draws are rounded. The same seed gives the same answer.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from nesting.garage.planned import Piece, PlannedCut, PlannedSheet
from nesting.layout import Direction
from nesting.lengths import NM_PER_MM, Length, mm

IntArray = npt.NDArray[np.int64]
BoolArray = npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class Errors:
    """How large the errors are.

    Attributes:
        setting: Standard deviation of the keep size of a setting.
        kerf: Standard deviation of the kerf of one cut.
        square_per_metre: Standard deviation of how far a cut leans, on each metre of its length.
        forgiven: What a part may be short by (a joint or a slip fit forgives 0.5 to 1.5 mm).
    """

    setting: Length = mm("0.5")
    kerf: Length = mm("0.1")
    square_per_metre: Length = mm("0.3")
    forgiven: Length = mm(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class StripChance:
    """The chance of one piece that is cut into a row.

    Attributes:
        sheet: Number of the sheet.
        piece: Code of the piece.
        parts: Codes of the parts that its row frees.
        chance: In how many of 1000 trials all of them reach their size.
    """

    sheet: int
    piece: str
    parts: tuple[str, ...]
    chance: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Tolerance:
    """What a plan forgives.

    Attributes:
        chance: In how many of 1000 trials every part reaches its size.
        strips: The same for every strip, in the order of the plan.
        with_slack: Chance by how much larger every blank would be cut, where the rows have room.
    """

    chance: int
    strips: tuple[StripChance, ...]
    with_slack: tuple[tuple[Length, int], ...]

    @property
    def worst(self) -> StripChance | None:
        """The strip with the least chance, None where nothing is cut."""
        return min(self.strips, key=lambda strip: strip.chance, default=None)


SLACKS = (mm(1), mm(2), mm(5))


def rehearse_errors(
    sheets: Sequence[PlannedSheet],
    errors: Errors,
    *,
    trials: int = 2000,
    seed: int = 1,
    slacks: Sequence[Length] = SLACKS,
) -> Tolerance:
    """Return how likely it is that every part of a plan reaches its size.

    The same draws serve every slack, and neither a larger blank nor a longer row ever makes a
    part smaller, so the chance never falls with either.

    Args:
        sheets: The sheets of the plan.
        errors: How large the errors are.
        trials: How often each sheet is sawn, at least 1.
        seed: Any whole number of 0 or more.
        slacks: By how much larger blanks are tried besides, each 0 or more.
    """
    whole = np.ones(trials, dtype=np.bool_)
    larger = [np.ones(trials, dtype=np.bool_) for _ in slacks]
    strips = []
    for sheet in sheets:
        draws = _draw(sheet, errors, trials, np.random.default_rng([seed, sheet.number]))
        reached = _saw(sheet, draws, errors.forgiven)
        for ok in reached.values():
            whole &= ok
        for every, slack in zip(larger, slacks, strict=True):
            for ok in _saw(sheet, draws, errors.forgiven + slack).values():
                np.logical_and(every, ok, out=every)
        strips += _strips(sheet, reached)
    return Tolerance(
        chance=_per_mille(whole),
        strips=tuple(strips),
        with_slack=tuple(
            (slack, _per_mille(every)) for slack, every in zip(slacks, larger, strict=True)
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Draws:
    """The errors of one sheet, in nanometres. Shapes: settings or cuts, by trials."""

    setting: IntArray
    kerf: IntArray
    lean_per_metre: IntArray


def _draw(
    sheet: PlannedSheet, errors: Errors, trials: int, generator: np.random.Generator
) -> _Draws:
    settings = max((cut.setting for cut in sheet.cuts), default=0)

    def draw(rows: int, deviation: Length) -> IntArray:
        return np.rint(generator.standard_normal((rows, trials)) * deviation).astype(np.int64)

    return _Draws(
        setting=draw(settings, errors.setting),
        kerf=draw(len(sheet.cuts), errors.kerf),
        lean_per_metre=draw(len(sheet.cuts), errors.square_per_metre),
    )


def _saw(sheet: PlannedSheet, draws: _Draws, forgiven: Length) -> Mapping[str, BoolArray]:
    """Return for every part of a sheet in which trials it reaches its size.

    The tree is walked from the whole sheet down; of every piece the smallest extent along x and
    along y is known, for each trial.
    """
    trials = draws.setting.shape[1]
    sizes: dict[int, tuple[IntArray, IntArray]] = {
        0: (
            np.full(trials, sheet.length, dtype=np.int64),
            np.full(trials, sheet.width, dtype=np.int64),
        )
    }
    reached: dict[str, BoolArray] = {}
    for index, piece in enumerate(sheet.pieces):
        along_x, along_y = sizes.pop(index)
        if piece.part is not None:
            reached[piece.code] = (along_x >= piece.rect.length - forgiven) & (
                along_y >= piece.rect.width - forgiven
            )
        if piece.cut_by:
            cut = sheet.cuts[piece.cut_by - 1]
            low, high = _halves(piece, cut, draws, along_x, along_y)
            if piece.low is not None:
                sizes[piece.low] = low
            if piece.high is not None:
                sizes[piece.high] = high
    return reached


def _halves(
    piece: Piece, cut: PlannedCut, draws: _Draws, along_x: IntArray, along_y: IntArray
) -> tuple[tuple[IntArray, IntArray], tuple[IntArray, IntArray]]:
    """Return the sizes of the two pieces that a cut makes, by trial.

    A trim is set from the raw edge, so its error moves the piece that is kept, and does not
    make a part wrong but takes from the slack.
    """
    is_rip = cut.direction is Direction.RIP
    extent, run = (along_y, piece.rect.length) if is_rip else (along_x, piece.rect.width)
    setting = draws.setting[cut.setting - 1]
    # Divided before it is multiplied, for nanometres times nanometres do not fit 64 bits.
    lean = np.abs(draws.lean_per_metre[cut.number - 1]) * (run // NM_PER_MM) // 1000
    first = np.clip(cut.at + setting, 0, extent)
    kerf = np.maximum(0, cut.removed + draws.kerf[cut.number - 1])
    second = np.maximum(0, extent - first - kerf - lean // 2)
    first = np.maximum(0, first - lean // 2)
    if is_rip:
        return (along_x, first), (along_x, second)
    return (first, along_y), (second, along_y)


def _strips(sheet: PlannedSheet, reached: Mapping[str, BoolArray]) -> list[StripChance]:
    """Return the chance of every piece that is cut into a row of parts."""
    begins: dict[int, int] = {}  # for every piece the piece that its row began with
    members: dict[int, list[str]] = {}
    for index, piece in enumerate(sheet.pieces):
        if not piece.cut_by:
            continue
        row = begins.setdefault(index, index)
        cut = sheet.cuts[piece.cut_by - 1]
        for child in (piece.low, piece.high):
            if child is None:
                continue
            made = sheet.pieces[child]
            if made.part is not None:
                members.setdefault(row, []).append(made.code)
            following = sheet.cuts[made.cut_by - 1] if made.cut_by else None
            if following is not None and following.direction is cut.direction:
                begins[child] = row
    return [
        StripChance(
            sheet=sheet.number,
            piece=sheet.pieces[row].code,
            parts=tuple(codes),
            chance=_per_mille(np.logical_and.reduce([reached[code] for code in codes])),
        )
        for row, codes in sorted(members.items())
    ]


def _per_mille(ok: Any) -> int:  # noqa: ANN401 - whatever numpy's reduce returns
    return int(np.count_nonzero(ok) * 1000 // len(ok))
