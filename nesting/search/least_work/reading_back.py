"""From a layout back to the problem and the plan that it stands for."""

from collections import Counter
from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, Node, PartLeaf
from nesting.search.problem import SIDE_BY_SIDE, STACKED, Codes, PartKind, Plan, Problem, SheetPlan

_DONE = (SIDE_BY_SIDE, STACKED)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBack:
    """What a layout says about one material and thickness.

    Attributes:
        problem: The problem of the parts that it places.
        plan: Where they are.
    """

    problem: Problem
    plan: Plan


def read_back(job: Job, problem: Problem, layout: Layout) -> ReadBack | None:
    """Return what a layout says about one problem.

    Args:
        job: The job.
        problem: The problem of one material and thickness.
        layout: A layout of the whole job.

    Returns:
        None where the layout uses none of its sheets.
    """
    sheet_kinds = {sheet.sheet: number for number, sheet in enumerate(problem.sheets)}
    kind_of = {
        part: number for number, kind in enumerate(problem.kinds) for part, _ in kind.members
    }
    placed: Counter[int] = Counter()
    plan = []
    for sheet in layout.sheets:
        if sheet.sheet not in sheet_kinds:
            continue
        codes = _read_codes(job, problem, sheet.root, kind_of, placed)
        if codes:
            plan.append(SheetPlan(kind=sheet_kinds[sheet.sheet], codes=codes))
    if not plan:
        return None
    kept = [_keep_placed(kind, placed) for kind in problem.kinds]
    numbers = {old: new for new, old in enumerate(n for n, kind in enumerate(kept) if kind.copies)}
    return ReadBack(
        problem=replace(problem, kinds=tuple(kind for kind in kept if kind.copies)),
        plan=tuple(replace(sheet, codes=_rename(sheet.codes, numbers)) for sheet in plan),
    )


def _read_codes(
    job: Job, problem: Problem, root: Node, kind_of: dict[int, int], placed: Counter[int]
) -> Codes:
    """Return the tree of one sheet in postfix, and count its parts."""
    codes: list[int] = []
    joins: list[int] = []  # how many subtrees each waiting cut has got so far
    waiting: list[Node | int | None] = [root]
    while waiting:
        node = waiting.pop()
        if isinstance(node, PartLeaf):
            placed[node.part] += 1
            part = job.parts[node.part]
            along_x = part.blank_width if node.turned else part.blank_length
            kind = problem.kinds[kind_of[node.part]]
            is_long = along_x + job.saw.kerf == kind.long * problem.grid
            codes.append(2 * kind_of[node.part] + (0 if is_long else 1))
        elif isinstance(node, Cut):
            joins.append(len(codes))
            waiting += [
                SIDE_BY_SIDE if node.direction is Direction.CROSSCUT else STACKED,
                node.second,
                0,
                node.first,
            ]
        elif isinstance(node, int) and node in _DONE:
            middle, start = joins.pop(), joins.pop()
            if start < middle < len(codes):
                codes.append(node)
        elif isinstance(node, int):
            joins.append(len(codes))
    return tuple(codes)


def _keep_placed(kind: PartKind, placed: Counter[int]) -> PartKind:
    members = tuple((part, placed[part]) for part, _ in kind.members if placed[part])
    return replace(kind, copies=sum(count for _, count in members), members=members)


def _rename(codes: Codes, numbers: dict[int, int]) -> Codes:
    return tuple(2 * numbers[code // 2] + code % 2 if code >= 0 else code for code in codes)
