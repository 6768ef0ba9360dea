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
    CLAMPS = "clamps"


@dataclass(frozen=True, slots=True, order=True)
class Setting:
    """What must be adjusted on a machine before a cut.

    Attributes:
        words: what is set up, such as the sled and its fence.
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
        subject: mark of the board, board end, joint or box it is done to.
        after: marks of the operations that must be finished before.
    """

    mark: str
    task: str
    machine: Machine
    setting: Setting
    subject: str
    after: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """A run of operations done with one machine and one setting, in order.

    Attributes:
        number: place in the order of operations, from 1.
        operations: marks, in the order to do them.
        cautions: what to heed here, to be shown where this is listed.
    """

    number: int
    task: str
    machine: Machine
    setting: Setting
    operations: tuple[str, ...]
    cautions: tuple[str, ...]
