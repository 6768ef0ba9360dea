"""Operations: one task on one thing, what must come before it, and how it needs the machine set."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from planner.lengths import Nm


class Machine(StrEnum):
    """Where an operation is done."""

    PLANER = "planer"
    TABLE_SAW_RIP = "table saw, rip fence"
    TABLE_SAW_CROSSCUT = "table saw, crosscut stop"
    BENCH = "bench"
    GAUGE = "marking gauge"
    ROUTER_TABLE_SLED = "router table, sled"
    BANDSAW = "bandsaw"
    ROUTER_TABLE_FENCE = "router table, fence"
    ROUTER_GUIDE = "router, straight guide"
    MORTISER = "mortiser"
    CLAMPS = "clamps"
    DRILL = "drill"


class Chapter(StrEnum):
    """Parts of a build that follow each other: what is made to fit waits for what it fits."""

    PLANNED = "made to the plan's sizes"
    MEASURED = "made to measured openings"
    LAST = "fitted and finished"


@dataclass(frozen=True, slots=True, order=True)
class Setting:
    """What must be adjusted on a machine before a cut.

    Attributes:
        words: what is set up, such as the sled and its fence; at a glue-up, the way in which a part goes in.
        lengths: what is set to a length, named, in the order to set it; exact, so that two settings that only look
            alike once rounded stay apart.
    """

    words: str = ""
    lengths: tuple[tuple[str, Nm], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Operation:
    """One task.

    Attributes:
        mark: stable, readable aloud: ``pins D3-front-A right``.
        task: what is done, in a few words; operations of one setting share it.
        machine: where.
        setting: what must be adjusted before; operations with equal machine and setting need no change between them.
        subject: mark of the board, board end, joint, box or opening that it is done to.
        after: marks of the operations that must be finished before.
        box: mark of the box, carcase or drawer that the subject belongs to.
        boards: marks of the boards that it cuts, puts together or puts in; what it is put into is not among them.
        cuts: places, in the plan's list of cuts, of those that it makes.
        count: like cuts, joints, pins or pieces in it, by which its time is reckoned.
        clamps: how many it needs at once.
        hands: people that it takes.
        estimate_s: seconds, without setting the machine.
    """

    mark: str
    task: str
    machine: Machine
    setting: Setting
    subject: str
    after: tuple[str, ...]
    chapter: Chapter = Chapter.PLANNED
    box: str = ""
    boards: tuple[str, ...] = ()
    cuts: tuple[int, ...] = ()
    count: int = 1
    clamps: int = 0
    hands: int = 1
    estimate_s: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """A run of operations done with one machine and one setting, in order.

    Attributes:
        number: place in the order of operations, from 1.
        operations: marks, in the order to do them.
        cautions: what to heed here, to be shown where this is listed.
        clamps: the most that any of them needs.
        hands: people that the hardest of them takes.
        estimate_s: seconds for all of them, the setting of the machine included; no time to dry.
    """

    number: int
    task: str
    machine: Machine
    setting: Setting
    chapter: Chapter
    operations: tuple[str, ...]
    cautions: tuple[str, ...]
    clamps: int
    hands: int
    estimate_s: int
