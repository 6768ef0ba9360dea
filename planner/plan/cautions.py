"""What to heed at each machine and at each task; shown wherever its work is listed.

Common practice, no source; each machine's manual and local rules come first.
"""

from __future__ import annotations

from planner.domain.operation import Machine
from planner.plan import tasks
from planner.plan.cutting_safety import LOUD, Run, for_these_boards, noise

ALWAYS = (
    "The machine's manual and your local rules come first. Wear eye and hearing protection; unplug before changing a "
    "bit or blade."
)

AT_THE_SLED = (
    "Line up and clamp with the router off. Clamp the board to the fence: the bit pushes it sideways.",
    "Keep hands out of the slot's line and stand clear of where the bit comes out at the far side.",
    "Move the sled one way only through the cut, as it was built for; never trap the board between bit and fence.",
    "A pass that cuts on one side only can pull the sled along: hold it firmly and take it slowly.",
    "Lock the bit height, and check it on an offcut of the same thickness before the first board.",
    "If the bit labours, take the slot in several depths, the last at the height listed.",
)

AT_MACHINES: dict[Machine, tuple[str, ...]] = {
    Machine.PLANER: ("Stand beside the feed, never look into it, and let go once the rollers have the board.",),
    Machine.TABLE_SAW_RIP: ("Use guard, riving knife and push stick; stand out of line with the blade.",),
    Machine.TABLE_SAW_CROSSCUT: (
        "Use a stop at the crosscut sled or mitre gauge, never the rip fence with it: the offcut would be trapped.",
        "The blade breaks out fibres below and behind: outside face up, a backing strip at the edge that leaves last.",
    ),
    Machine.ROUTER_TABLE_SLED: AT_THE_SLED,
    Machine.BANDSAW: (
        "Set the guide close above the work, keep fingers out of the blade's line, and support a long board.",
        "Leave the line: a joint that needs force splits hardwood. Try it with light mallet taps.",
    ),
    Machine.ROUTER_TABLE_FENCE: (
        "Feed against the turn of the bit. For a stopped cut clamp stop blocks; switch off before lifting off.",
    ),
    Machine.ROUTER_GUIDE: ("Clamp board and guide; feed so that the bit pulls the router against the guide.",),
    Machine.MORTISER: ("Clamp the board and set the hold-down; clear the chips, and drill deep mortises in steps.",),
    Machine.DRILL: ("Clamp the work on a backing board; no gloves or loose sleeves; take out the chuck key.",),
}

AT_TASKS = {
    tasks.TENON: ("Push the end past the bit with a square backing block, never freehand on a narrow end.",),
    tasks.SAND_FRAME: (
        "Wear a dust mask. Keep finish off all that is to be glued.",
        "A panel that is finished only after the glue-up shows a bare edge when it shrinks.",
    ),
    tasks.SAND: ("Wear a dust mask. Keep off the joints: a sanded pin is a loose pin.",),
    tasks.OPEN: (
        "Set the blade just higher than the wall is thick. Saw the two longest sides last.",
        "Before these, tape shims as thick as the kerf into what is sawn: a lid that drops pinches the blade.",
        "Keep the box flat on the table and tight to the fence; never reach over the blade.",
    ),
    tasks.FIT: ("Pare away from yourself, both hands behind the edge.",),
    tasks.CHOP: ("Clamp the board; chop halfway from each side that can be reached.",),
    tasks.DIVIDE: (
        "Put glue where the part comes to rest, not where it only passes: it would be wiped off and smear.",
    ),
    tasks.RUNNER: ("Glued along its whole length a runner would split the side when that shrinks.",),
    tasks.BACK: ("Boards and panels of solid wood must be free to move: no glue, screws in slots.",),
    tasks.HANGING_RAIL: (
        "It bears the cabinet and all that is in it: glue it along its whole length, and fix it to what carries.",
    ),
    tasks.TOP: ("Tight screws in front, slots behind and at the sides: a top that can't move splits.",),
    tasks.FINISH: (
        "Rags with oil on them catch fire by themselves: spread them out to dry outdoors, or keep them under water.",
        "Air the room well, and keep flames away.",
    ),
}
"""What to heed at a task beside its machine's."""

_GLUE_UPS = (tasks.ENDS, tasks.GLUE_STAND, tasks.GLUE_FRAME, tasks.GLUE)
_HEED_GLUE = (
    "Have clamps and cauls set before opening the glue; check the diagonals before it sets.",
    "How long the glue stays open is on the bottle: check it, and try the whole glue-up dry against the clock first.",
)


def cautions(run: Run, *, first_noise: bool) -> tuple[str, ...]:
    """What to heed in a run of work; nothing for most work at the bench.

    Args:
        run: its operations, all of one task, machine and setting.
        first_noise: whether no loud machine was used before.
    """
    first = run.operations[0]
    task = tasks.BY_NAME[first.task]
    glue = _HEED_GLUE if task in _GLUE_UPS else ()
    at_machine = AT_MACHINES.get(first.machine, ())
    always = (ALWAYS,) if at_machine else ()
    loud = (noise(),) if first_noise and first.machine in LOUD else ()
    return (*AT_TASKS.get(task, ()), *glue, *for_these_boards(run), *at_machine, *always, *loud)
