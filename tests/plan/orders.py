"""Orders in which operations may be done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from random import Random

from planner.domain.operation import Operation
from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.words import DrawersCut
from planner.pipeline import plan
from planner.plan.operations import Facts, operations, shop_order


def planned(project: Project) -> Plan:
    """The plan of a project whose drawers and doors are cut to measure, once the carcase stands."""
    return plan(replace(project, drawers_cut=DrawersCut.TO_MEASURE))


def found_for(piece: Plan, *, all_at_once: bool) -> tuple[Operation, ...]:
    """All operations of a plan: drawers and doors cut once the carcase stands, or everything cut at once."""
    facts = Facts(
        project=replace(piece.project, drawers_cut=DrawersCut.AT_ONCE if all_at_once else DrawersCut.TO_MEASURE),
        boards={board.mark: board for board in piece.boards},
        joints=piece.joints,
        features=piece.features,
        openings=piece.openings,
        sled=piece.sled,
        tails=piece.tails,
        practice=piece.practice,
    )
    return operations(facts)


def in_shop_order(found: Sequence[Operation]) -> list[Operation]:
    """As the sheet tells."""
    return [operation for run in shop_order(found) for operation in run.operations]


def at_random(found: Sequence[Operation], random: Random) -> list[Operation]:
    """In an order that keeps what must come before what, and is senseless else."""
    waiting, done = list(found), dict[str, Operation]()
    while waiting:
        ready = [each for each in waiting if done.keys() >= set(each.after)]
        chosen = random.sample(ready, 1 + len(ready) // 2)
        done.update((each.mark, each) for each in chosen)
        waiting = [each for each in waiting if each.mark not in done]
    return list(done.values())
