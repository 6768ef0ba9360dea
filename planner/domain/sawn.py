"""What the saw makes of a closed box: a lid and a box, each with its own part of every board."""

from __future__ import annotations

from dataclasses import dataclass

from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnPart:
    """A part of a board of the ring, once the lid is sawn off and the corners are planed flush.

    Attributes:
        mark: of the part: ``K-front`` stays with the box, ``K-lid-front`` goes with the lid.
        board: mark of the board that it was sawn from.
        of_lid: whether it goes with the lid.
        width_nm: height of its part of the box, planed to the line.
    """

    mark: str
    board: str
    of_lid: bool
    length_nm: Nm
    width_nm: Nm
    thickness_nm: Nm
