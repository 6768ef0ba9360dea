"""The tree of spaces within a carcase as columns and tiers of a file; the short form where it says the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import count

from planner.domain.drawer import Drawer
from planner.domain.marks import drawer_mark
from planner.domain.ring import Stuff
from planner.domain.space import Division, Doors, DoorStops, LooseShelves, ShelfPins, Space
from planner.domain.words import DividerKind, HeightRule, Side, Stands
from planner.intake.said import Said
from planner.intake.sharing import Table, if_any
from planner.intake.usual import PIN_HOLES, usual_length
from planner.intake.write_made import FRAME, made_table
from planner.lengths import Nm


@dataclass(frozen=True, slots=True)
class SpaceWriter:
    """Writes the spaces of a carcase.

    Attributes:
        stuff: what the carcase is made of.
        divider: what usually lies between its tiers.
    """

    stuff: Stuff
    divider: DividerKind
    said: Said

    def columns(self, root: Space, columns_before: int) -> Table:
        """All columns of a carcase that stands after so many others of the project, and how they are graduated."""
        if not isinstance(root.holds, Division):
            return {"column": []}
        numbered = enumerate(root.holds.spaces, start=columns_before + 1)
        columns = [self._column(column, _usual_marks(number, self.said)) for number, column in numbered]
        return {**self._steps(root.holds, "column_"), "column": columns}

    def _column(self, column: Space, marks: Iterator[str]) -> Table:
        tiers = column.holds
        if not isinstance(tiers, Division):
            return {}
        return {
            **self.said.but("width", column.size_nm, None),
            **_share(column),
            **(self._drawers(tiers, marks) if _only_drawers(tiers) else self._tiers(tiers, marks)),
            **({} if tiers.divider is self.divider else {"divided_by": str(tiers.divider)}),
            **self.doors(column.doors),
        }

    def _drawers(self, tiers: Division, marks: Iterator[str]) -> Table:
        given = [space.holds.ring.mark for space in tiers.spaces if isinstance(space.holds, Drawer)]
        usual = [next(marks) for _ in given]
        heights = [space.size_nm for space in tiers.spaces]
        listed = tiers.rule is HeightRule.LISTED
        return {
            "drawers": len(given),
            **({"heights": ["rest" if each is None else self.said.length(each) for each in heights]} if listed else {}),
            **self._graduated(tiers),
            **({} if given == usual else {"marks": given}),
        }

    def _tiers(self, tiers: Division, marks: Iterator[str]) -> Table:
        return {**self._graduated(tiers), "tier": [self._tier(space, marks) for space in tiers.spaces]}

    def _graduated(self, tiers: Division) -> Table:
        steps = self._steps(tiers)
        return {"heights": "graduated", **steps} if steps else {}

    def _steps(self, division: Division, of: str = "") -> Table:
        return {
            **({} if division.ratio is None else {f"{of}ratio": _decimal(division.ratio)}),
            **self.said.but(f"{of}step", division.step_nm, None),
        }

    def _tier(self, space: Space, marks: Iterator[str]) -> Table:
        return {
            **self.said.but("height", space.size_nm, None),
            **_share(space),
            **self._held(space, marks),
            **self.doors(space.doors),
        }

    def _held(self, space: Space, marks: Iterator[str]) -> Table:
        match space.holds:
            case Division() as columns:
                inner = [self._column(column, marks) for column in columns.spaces]
                return {**self._steps(columns, "column_"), "column": inner}
            case LooseShelves() as shelves:
                return {"holds": "shelves", **if_any("shelves", self._loose_shelves(shelves))}
            case Drawer() as drawer:
                usual = next(marks)
                return {} if drawer.ring.mark == usual else {"mark": drawer.ring.mark}
            case None:
                return {"holds": "nothing"}

    def _loose_shelves(self, shelves: LooseShelves) -> Table:
        return {
            **({} if shelves.count == 1 else {"count": shelves.count}),
            **self.said.stuff(shelves.stuff, self.stuff),
            **self.said.unusual("play", shelves.play_nm, "shelf_play"),
            **self.said.unusual("setback", shelves.setback_nm, "shelf_setback"),
            **({"pins": self._pins(shelves.pins)} if shelves.pins else {}),
        }

    def _pins(self, pins: ShelfPins) -> Table:
        return {
            **({} if pins.holes == PIN_HOLES else {"holes": pins.holes}),
            **self.said.unusual("hole", pins.hole_nm, "pin_hole"),
            **self.said.unusual("depth", pins.depth_nm, "pin_depth"),
            **self.said.unusual("apart", pins.apart_nm, "pins_apart"),
            **self.said.unusual("front", pins.front_nm, "pins_in"),
            **self.said.unusual("back", pins.back_nm, "pins_in"),
        }

    def doors(self, doors: Doors | None) -> Table:
        """What hangs before a space, under its key."""
        if doors is None:
            return {}
        overlay = doors.stands is Stands.OVERLAY
        return {
            "doors": {
                **({} if doors.leaves == 1 else {"leaves": doors.leaves}),
                **({} if doors.hinged is Side.LEFT else {"hinged": str(doors.hinged)}),
                **({"stands": str(doors.stands)} if overlay else {}),
                **self.said.unusual("gap", doors.gap_nm),
                **self.said.but(
                    "overlay", doors.overlay_nm, usual_length("overlay", self.said.unit) if overlay else Nm(0)
                ),
                **({"stops": self._stops(doors.stops)} if doors.stops else {}),
                **made_table(doors.made, self.stuff, FRAME, self.said),
            }
        }

    def _stops(self, stops: DoorStops) -> Table:
        usual = Stuff(material=self.stuff.material, thickness_nm=usual_length("door_stop", self.said.unit))
        return {**self.said.stuff(stops.stuff, usual), **self.said.unusual("width", stops.width_nm, "stop_width")}


def _only_drawers(tiers: Division) -> bool:
    """Whether the short form says all of a column: drawers, at most with heights of their own."""
    return all(isinstance(each.holds, Drawer) and each.share == 1 and each.doors is None for each in tiers.spaces)


def _share(space: Space) -> Table:
    return {} if space.share == 1 else {"share": _decimal(space.share)}


def _decimal(number: Fraction) -> int | Decimal:
    return number.numerator if number.denominator == 1 else Decimal(number.numerator) / number.denominator


def _usual_marks(column: int, said: Said) -> Iterator[str]:
    return (drawer_mark(column, number, only_column=said.only_column) for number in count(1))
