"""What the grouping of sled cuts saves: the planned order beside cutting joint by joint."""

from __future__ import annotations

from planner.domain.plan import SledPlan, SledTally
from planner.domain.rates import Rates

AS_PLANNED, JOINT_BY_JOINT = "As planned", "Joint by joint"


def comparison(plan: SledPlan) -> tuple[tuple[str, str], ...]:
    """One line for each count, with both ways of cutting in it."""
    planned, single = plan.tally, plan.joint_by_joint
    lines = (
        ("Settings", str(planned.settings), str(single.settings)),
        ("Changes", _changes(planned), _changes(single)),
        ("Handlings", str(planned.handlings), str(single.handlings)),
        ("Turnings end for end", str(planned.turnings), str(single.turnings)),
        ("Time, about", hours(planned.estimate_s), hours(single.estimate_s)),
    )
    return tuple((what, f"{ours}; {JOINT_BY_JOINT.lower()} {theirs}") for what, ours, theirs in lines)


def in_words(tally: SledTally) -> str:
    """All counts of one way of cutting, and its time."""
    return (
        f"{_count(tally.settings, 'setting')}, {_count(tally.changes, 'change')}, "
        f"{_count(tally.handlings, 'handling')}, {_count(tally.turnings, 'turning')}, "
        f"{hours(tally.estimate_s)}"
    )


def rates_in_words(rates: Rates) -> str:
    """What the times are reckoned from."""
    return (
        f"Times are in h:min, from these seconds: change of sled {rates.sled_change_s}, of bit height "
        f"{rates.height_change_s}, of fence {rates.fence_swap_s}; handling {rates.handling_s}; turning end for end "
        f"{rates.turning_s}; pass {rates.pass_s}. The first setting-up is not in them."
    )


def hours(seconds: int) -> str:
    """Time to the nearest minute.

    >>> hours(3929), hours(29)
    ('1:05 h', '0:00 h')
    """
    hour, minute = divmod((seconds + 30) // 60, 60)
    return f"{hour}:{minute:02d} h"


def _changes(tally: SledTally) -> str:
    kinds = (("sled", tally.sled_changes), ("bit height", tally.height_changes), ("fence", tally.fence_swaps))
    return f"{tally.changes} ({', '.join(f'{what} {times}×' for what, times in kinds)})"


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"
