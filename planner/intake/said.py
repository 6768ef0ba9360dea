"""What a written file says for all rings, so that a ring need only say what is different about it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from planner.domain.project import Project
from planner.domain.ring import Ring, Stuff
from planner.domain.words import JointKind, PinPair, RingKind
from planner.intake.sharing import Table, commonest, differences, if_any, shared_part
from planner.intake.spacing import joints_table, pins_table, usual_pins
from planner.intake.usual import usual_depth, usual_length
from planner.lengths import Nm, Unit, write_length


@dataclass(frozen=True, slots=True)
class Said:
    """Said once for all, with the words for what differs from it or from what is usual."""

    unit: Unit
    sled: str
    pins: Mapping[str, Any]
    only_column: bool

    def length(self, length: Nm) -> str:
        """A length as it stands in a file."""
        return write_length(length, self.unit)

    def but(self, key: str, length: Nm | None, usual: Nm | None) -> Table:
        """The key and its length, unless that is this usual one."""
        return {} if length is None or length == usual else {key: self.length(length)}

    def unusual(self, key: str, length: Nm, usually: str | None = None) -> Table:
        """The key and its length, unless that is the usual one for the key, or for what it is usually called."""
        return self.but(key, length, usual_length(usually or key, self.unit))

    def unusual_depth(self, key: str, depth: Nm, thickness: Nm, usually: str | None = None) -> Table:
        """The same for the depth of a cut in a board of this thickness."""
        return self.but(key, depth, usual_depth(usually or key, thickness, self.unit))

    def stuff(self, stuff: Stuff, usual: Stuff | None = None) -> Table:
        """Material and thickness, as far as they differ from what is usual."""
        return {
            **({} if usual and stuff.material == usual.material else {"material": stuff.material}),
            **self.but("thickness", stuff.thickness_nm, usual.thickness_nm if usual else None),
        }

    def ring(self, ring: Ring) -> Table:
        """Sled, pin boards and pins of a ring."""
        sides = ring.pin_pair is PinPair.SECOND_AND_FOURTH
        leading = "top and bottom" if ring.kind is RingKind.CARCASE else "front and back"
        return {
            **({} if ring.sled == self.sled else {"sled": ring.sled}),
            "pins_on": "sides" if sides else leading,
            **if_any("pins", differences(pins_table(ring.spacing, self.unit), self.pins)),
            **if_any("joint", joints_table(ring, self.unit)),
        }


def said_of(project: Project) -> Said:
    """What most rings of a project have in common; those without dovetails have no word in it."""
    rings = [ring for ring in project.rings() if not is_rabbeted(ring)]
    tables = [pins_table(ring.spacing, project.unit) for ring in rings]
    sleds: Iterable[str] = [ring.sled for ring in rings] or [project.sleds[0].name]
    return Said(
        unit=project.unit,
        sled=commonest(sleds),
        pins=usual_pins(project.unit) | (shared_part(tables) if tables else {}),
        only_column=sum(columns_in(project)) == 1,
    )


def columns_in(project: Project) -> list[int]:
    """How many columns each carcase has."""
    return [len(division.spaces) for c in project.carcases for division in list(c.inside.divisions())[:1]]


def is_rabbeted(ring: Ring) -> bool:
    """Whether the corners of a ring are rabbeted."""
    return ring.corners[0].kind is JointKind.RABBET
