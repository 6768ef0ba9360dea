"""What to heed at each machine; shown wherever its cuts are listed.

Common practice, no source; each machine's manual and local rules come first.
"""

from __future__ import annotations

from planner.domain.operation import Machine

ALWAYS = "Follow the machine's manual. Wear eye and hearing protection; unplug before changing a bit or blade."

AT_THE_SLED = (
    "Clamp the board to the fence: the bit pushes it sideways.",
    "Keep hands out of the slot's line and stand clear of where the bit comes out at the far side.",
    "Move the sled one way only through the cut, as it was built for; never trap the board between bit and fence.",
    "A pass that cuts on one side only can pull the sled along: hold it firmly and take it slowly.",
    "Lock the bit height, and check it on an offcut of the same thickness before the first board.",
    "Take a tall or wide slot in several depths if the bit labours.",
)

CAUTIONS: dict[Machine, tuple[str, ...]] = {
    Machine.PLANER: ("Not for pieces shorter than the manual allows; plane them long and cut them up after.",),
    Machine.TABLE_SAW_RIP: ("Use guard, riving knife and push stick; stand out of line with the blade.",),
    Machine.TABLE_SAW_CROSSCUT: (
        "Use a stop at the crosscut sled or mitre gauge, never the rip fence with it: the offcut would be trapped.",
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
    Machine.CLAMPS: ("Have clamps and cauls set before opening the glue; check the diagonals before it sets.",),
}


def cautions(machine: Machine) -> tuple[str, ...]:
    """What to heed at a machine; nothing for bench and gauge."""
    own = CAUTIONS.get(machine, ())
    return (*own, ALWAYS) if own and machine is not Machine.CLAMPS else own
