"""What all parts of a file fall back on while the project is built."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.derive.rings import usual_pin_pair
from planner.domain.ring import Ring, Stuff, make_ring
from planner.domain.words import PinPair, RingKind
from planner.intake.spacing import spacing_of, with_own_spacings
from planner.intake.usual import usual_depth, usual_length
from planner.lengths import Nm, Unit

if TYPE_CHECKING:
    from planner.intake.file_base import BaseTable
    from planner.intake.file_box import BoxTable
    from planner.intake.file_carcase import CarcaseTable
    from planner.intake.file_drawer import DrawerPart
    from planner.intake.file_pins import PinsTable


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """What every ring of a file falls back on.

    Attributes:
        unit: unit of the usual lengths.
        pins: what is said of all pins.
        sled: the sled of rings that name none.
        first_sled: the sled that a ring without dovetails is put down with.
        only_column: whether the project has one column and no more, which makes for short marks.
    """

    unit: Unit
    pins: PinsTable | None
    sled: str
    first_sled: str
    only_column: bool

    def length(self, said: Nm | None, key: str) -> Nm:
        """A length that was said, else the usual one for its key."""
        return usual_length(key, self.unit) if said is None else said

    def depth(self, said: Nm | None, key: str, thickness: Nm) -> Nm:
        """The same for the depth of a cut in a board of this thickness."""
        return usual_depth(key, thickness, self.unit) if said is None else said

    def ring(
        self,
        mark: str,
        kind: RingKind,
        stuff: tuple[Stuff, Stuff, Stuff, Stuff],
        pin_pair: PinPair,
        tables: Sequence[BaseTable | BoxTable | CarcaseTable | DrawerPart],
    ) -> Ring:
        """The ring of which these tables tell, the topmost first; below them lies what the project says for all."""
        pins = [table.pins for table in (*tables, self) if table.pins is not None]
        joints = [table.joint for table in tables if table.joint is not None]
        sled = next((table.sled for table in tables if table.sled is not None), self.sled)
        ring = make_ring(mark, kind, stuff, pin_pair, spacing_of(pins, self.unit), sled)
        return with_own_spacings(ring, joints, pins, self.unit)

    def ring_without_pins(
        self, mark: str, kind: RingKind, stuff: tuple[Stuff, Stuff, Stuff, Stuff], pin_pair: PinPair
    ) -> Ring:
        """A ring that is not dovetailed; what its joints can't have is put down as usual, whatever the file says."""
        return make_ring(mark, kind, stuff, pin_pair, spacing_of([], self.unit), self.first_sled)


def stuff_of(material: str | None, thickness: Nm | None, usual: Stuff) -> Stuff:
    """What a part is made of: what is said, else what is usual."""
    return Stuff(
        material=usual.material if material is None else material,
        thickness_nm=usual.thickness_nm if thickness is None else thickness,
    )


def pin_pair_of(said: str | None, kind: RingKind, first: Nm, second: Nm) -> PinPair:
    """What is said, else the usual pair; inside sizes will do, as both lack the same two thicknesses."""
    if said is None:
        return usual_pin_pair(kind, drawer=False, first_nm=first, second_nm=second)
    return PinPair.SECOND_AND_FOURTH if said == "sides" else PinPair.FIRST_AND_THIRD
