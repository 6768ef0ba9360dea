"""The wood that there is: read in from a list, listed, taken out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planner.app.source import read_source
from planner.app.store_place import StorePlace
from planner.domain.rack import Lot
from planner.lengths import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenIn:
    """What came of a list: marks of lots that are new, of those that are different now, of those that are the same."""

    new: tuple[str, ...]
    changed: tuple[str, ...]
    same: tuple[str, ...]


def on_the_rack(store: StorePlace) -> tuple[Lot, ...]:
    """All wood that the store knows of, on the rack and on offer; nothing when there is no store yet."""
    from planner.store import engine, rack

    with engine.reading(store.path, tell=store.tell) as session:
        return rack.lots(session)


def rack_in(path: str, unit: Unit | None, store: StorePlace) -> TakenIn:
    """Read a list of wood into the store, all of it or nothing; a mark that is known gets what the list says.

    Args:
        path: the list, or ``-``.
        unit: of bare numbers; None where each length must say its own.
        store: where to.

    Raises:
        InputError: with everything that is wrong with the list.
        StoreError: the store can't be written.
    """
    from planner.intake.rack_csv import read_rack
    from planner.store import engine, rack

    source = read_source(path)
    lots = read_rack(source.text, source.name, unit)
    with engine.writing(store.path, tell=store.tell) as session:
        before = {lot.mark: lot for lot in rack.lots(session)}
        differing = [lot for lot in lots if before.get(lot.mark) != lot]
        rack.put_in(session, differing)
    return TakenIn(
        new=tuple(lot.mark for lot in differing if lot.mark not in before),
        changed=tuple(lot.mark for lot in differing if lot.mark in before),
        same=tuple(lot.mark for lot in lots if lot not in differing),
    )


def rack_out(marks: Sequence[str], store: StorePlace) -> None:
    """Take lots out.

    Raises:
        InputError: no such lots; every one is named, and nothing is taken out.
        StoreError: the store can't be written.
    """
    from planner.store import engine, rack

    with engine.reading(store.path, tell=store.tell) as session:  # writing would make a store where there is none
        rack.must_be_known(session, marks)
    with engine.writing(store.path, tell=store.tell) as session:
        rack.take_out(session, marks)
