"""The wood on the rack and at the yard, within the caller's session; it belongs to no one project."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from planner.domain.rack import Flaw, Lot, Per, Price
from planner.errors import InputError
from planner.store.columns import row_from, value_from
from planner.store.names import in_order, unknown
from planner.store.stock_tables import FlawRow, LotRow

if TYPE_CHECKING:
    from sqlmodel import Session


def lots(session: Session) -> tuple[Lot, ...]:
    """All wood that the store knows of, by mark."""
    from sqlmodel import col, select

    flaws: dict[int, list[Flaw]] = {}
    for flaw in session.exec(select(FlawRow).order_by(col(FlawRow.lot_id), col(FlawRow.position))):
        along, across = (flaw.along_from_nm, flaw.along_to_nm), (flaw.across_from_nm, flaw.across_to_nm)
        flaws.setdefault(flaw.lot_id, []).append(Flaw(along=along, across=across))
    found = {row.mark: _lot(row, flaws.get(row.id, ())) for row in session.exec(select(LotRow))}
    return tuple(found[mark] for mark in in_order(found))


def _lot(row: LotRow, flaws: Sequence[Flaw]) -> Lot:
    price = None
    if row.cents is not None and row.per is not None:
        price = Price(cents=row.cents, per=Per(row.per), currency=row.currency or "")
    return value_from(Lot, row, price=price, flaws=tuple(flaws))


def put_in(session: Session, new: Iterable[Lot]) -> None:
    """Add lots; one whose mark is known takes the place of the old one."""
    for lot in new:
        _delete(session, lot.mark)
        price = lot.price
        row = row_from(
            LotRow,
            lot,
            cents=price and price.cents,
            per=price and price.per.value,
            currency=price and price.currency,
        )
        session.add(row)
        session.flush()
        session.add_all(
            FlawRow(
                lot_id=row.id,
                position=position,
                along_from_nm=flaw.along[0],
                along_to_nm=flaw.along[1],
                across_from_nm=flaw.across[0],
                across_to_nm=flaw.across[1],
            )
            for position, flaw in enumerate(lot.flaws, start=1)
        )
        session.flush()


def take_out(session: Session, marks: Iterable[str]) -> None:
    """Take lots out.

    Raises:
        InputError: no such lots; every one is named.
    """
    must_be_known(session, marks)
    for mark in marks:
        _delete(session, mark)


def must_be_known(session: Session, marks: Iterable[str]) -> None:
    """Refuse marks of no lot.

    Raises:
        InputError: every one is named.
    """
    known = {lot.mark for lot in lots(session)}
    wrong = [
        problem
        for mark in marks
        if mark not in known
        for problem in unknown(
            "lot",
            mark,
            known,
            what="is neither on the rack nor on offer.",
            if_none="There is no wood yet: planner rack-in FILE",
        ).problems
    ]
    if wrong:
        raise InputError(wrong)


def _delete(session: Session, mark: str) -> None:
    from sqlmodel import col, delete

    session.connection().execute(delete(LotRow).where(col(LotRow.mark) == mark))
