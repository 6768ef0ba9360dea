"""From the table of a file to what a carcase stands on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from planner.domain.carcase import Plinth, Stand
from planner.domain.marks import plinth_mark
from planner.domain.ring import Stuff
from planner.domain.words import RingKind
from planner.intake.shared import Shared, pin_pair_of, stuff_of
from planner.intake.usual import usual_depth
from planner.lengths import Nm

if TYPE_CHECKING:
    from planner.intake.file_base import BaseTable


def base_of(table: BaseTable, carcase: str, stuff: Stuff, outside: tuple[Nm, Nm], shared: Shared) -> Plinth | Stand:
    """The base of a carcase.

    Args:
        table: what is said of it.
        carcase: mark of the carcase.
        stuff: what the carcase is made of.
        outside: outside width and depth of the carcase.
        shared: what it falls back on.
    """
    own = stuff_of(table.material, table.thickness, stuff)
    return _stand(table, own, shared) if table.kind == "stand" else _plinth(table, carcase, own, outside, shared)


def _plinth(table: BaseTable, carcase: str, own: Stuff, outside: tuple[Nm, Nm], shared: Shared) -> Plinth:
    front, sides, back = (said or Nm(0) for said in (table.front, table.sides, table.back))
    width, depth = Nm(outside[0] - 2 * sides), Nm(outside[1] - front - back)
    feet = table.kind == "bracket feet"
    return Plinth(
        ring=shared.ring(
            table.mark or plinth_mark(carcase),
            RingKind.UPRIGHT,
            (own, own, own, own),
            pin_pair_of(table.pins_on, RingKind.UPRIGHT, width, depth),
            [table],
        ),
        height_nm=table.height,
        front_nm=front,
        sides_nm=sides,
        back_nm=back,
        foot_nm=shared.length(table.foot, "foot") if feet else None,
        rise_nm=shared.depth(table.rise, "rise", table.height) if feet else Nm(0),
    )


def _stand(table: BaseTable, apron: Stuff, shared: Shared) -> Stand:
    leg = shared.length(table.leg, "leg")
    return Stand(
        leg=Stuff(material=table.leg_material or apron.material, thickness_nm=leg),
        apron=apron,
        height_nm=table.height,
        apron_nm=shared.length(table.apron, "apron"),
        tenon_nm=usual_depth("tenon", leg, shared.unit) if table.tenon is None else table.tenon,
        front_nm=table.front or Nm(0),
        sides_nm=table.sides or Nm(0),
        back_nm=table.back or Nm(0),
        setback_nm=shared.length(table.setback, "apron_setback"),
    )
