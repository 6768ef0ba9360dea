"""What doesn't fit together in the drawers of a carcase: in their table, and in what is different about one of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from planner.intake import values
from planner.intake.nearest import advice
from planner.intake.only import Only, misplaced
from planner.intake.raw import Placed, Raw, table_at
from planner.intake.refusal import Fault, Path, RefusalError, quote
from planner.intake.sharing import laid_over
from planner.intake.usual import usual_length, usual_said
from planner.lengths import Unit, write_length

_WHOLE_PARTS = MappingProxyType({"bottom": "bottom", "applied_front": "applied front"})
"""Tables that need a material and a thickness, which may come from the table for all drawers; and how to call them."""


def faults_of_drawers(carcase: Placed, marks: list[str] | None, unit: Unit) -> Iterator[Fault]:
    """All faults of the drawers of a carcase, whose drawers have these marks; None where they can't be told."""
    path, table = carcase
    shared = table_at(table, "drawer")
    yield from _faults(_Drawer(path=(*path, "drawer"), said=shared, whole=shared), unit)
    for mark, changes in table_at(table, "except").items():
        place = (*path, "except", mark)
        if marks is not None and mark not in marks:
            yield Fault(
                path=place, what=f"no drawer of this carcase is marked {quote(mark)}.", remedy=advice(mark, marks)
            )
        if isinstance(changes, dict):
            yield from _half_given(place, changes, shared)
            yield from _faults(_Drawer(path=place, said=changes, whole=laid_over(shared, changes)), unit)


def _half_given(place: Path, changes: Raw, shared: Raw) -> Iterator[Fault]:
    """Parts of one drawer that the others don't have, and that lack what can't be taken from them."""
    for part, name in _WHOLE_PARTS.items():
        own = changes.get(part)
        if isinstance(own, dict) and part not in shared:
            for key in sorted({"material", "thickness"} - own.keys()):
                yield Fault(
                    path=(*place, part, key),
                    what=f"is missing: the other drawers have no {name} to take it from.",
                    remedy=f"Give the material and the thickness of this {name}.",
                )


_RULES = MappingProxyType(
    {
        (): (
            Only(
                keys=("lap",),
                beside="front_joint",
                words=("half-blind",),
                usual="through",
                elsewhere=("through",),
            ),
        ),
        ("applied_front",): (
            Only(keys=("gap",), beside="stands", words=("inset",), usual="inset", elsewhere=("overlay",)),
            Only(keys=("overlay",), beside="stands", words=("overlay",), usual="inset", elsewhere=("inset",)),
        ),
        ("bottom",): (
            Only(keys=("screw_slot",), beside="goes", words=("slid in",), usual="all round", elsewhere=("all round",)),
        ),
        ("handles",): (Only(keys=("apart",), beside="holes", words=(2,), usual=1, elsewhere=(1,)),),
    }
)
"""Table within a drawer's → which of its keys count beside which words only."""


def _faults(drawer: _Drawer, unit: Unit) -> Iterator[Fault]:
    for within, rules in _RULES.items():
        said, whole = drawer.said, drawer.whole
        for key in within:
            said, whole = table_at(said, key), table_at(whole, key)
        for key, rule in misplaced(rules, said, whole):
            yield Fault(path=(*drawer.path, *within, key), what=rule.what, remedy=rule.remedy)
    yield from _front_faults(drawer, unit)


# --- fronts -------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class _Drawer:
    """A table of drawers: what it says itself, and the whole with what it is laid over."""

    path: Path
    said: Mapping[str, Any]
    whole: Mapping[str, Any]

    def place(self, *keys: str) -> Path | None:
        """Place of the first of the keys that this table says; None when all come from elsewhere."""
        return next(((*self.path, key) for key in keys if key in self.said), None)


def _front_faults(drawer: _Drawer, unit: Unit) -> Iterator[Fault]:
    if drawer.whole.get("front_joint", "through") == "half-blind":
        yield from _pins_on_sides(drawer)
        yield from _two_ways_to_hide(drawer)
        yield from _lap_too_thick(drawer, unit)


def _pins_on_sides(drawer: _Drawer) -> Iterator[Fault]:
    place = drawer.place("pins_on", "front_joint")
    if place and drawer.whole.get("pins_on") == "sides":
        yield Fault(
            path=place,
            what="'half-blind' doesn't go with pins_on = 'sides'.",
            remedy='The front laps over the tails of the sides: write pins_on = "front and back".',
        )


def _two_ways_to_hide(drawer: _Drawer) -> Iterator[Fault]:
    place = drawer.place("applied_front", "front_joint")
    if place and "applied_front" in drawer.whole:
        yield Fault(
            path=place,
            what="an applied front and half-blind joints are both asked for.",
            remedy="Leave one of them out: an applied front hides through dovetails as it is.",
        )


def _lap_too_thick(drawer: _Drawer, unit: Unit) -> Iterator[Fault]:
    place = drawer.place("lap", "front_joint", "front_thickness")
    lap = drawer.whole.get("lap", write_length(usual_length("lap", unit), unit))
    front = drawer.whole.get("front_thickness")
    try:
        too_thick = values.length(lap, unit) >= values.length(front, unit)
    except RefusalError:  # told where it stands
        return
    if place and too_thick:
        yield Fault(
            path=place,
            what=f"a lap of {quote(lap)} leaves no room for tails in a front of {quote(front)}.",
            remedy=f"Take a lap thinner than the front. Usually {usual_said('lap')}.",
        )
