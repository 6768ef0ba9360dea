"""The store's own sleds, which projects share, within the caller's session; each project's row holds a copy."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.domain.sled import Sled
from planner.errors import InputError, Problem
from planner.lengths import Unit
from planner.store.columns import columns_of, row_from, value_from
from planner.store.names import in_order, unknown
from planner.store.tables import KeptSledRow, ProjectRow, SledRow

if TYPE_CHECKING:
    from sqlmodel import Session


@dataclass(frozen=True, slots=True, kw_only=True)
class SledUser:
    """A project that a kept sled belongs to.

    Attributes:
        unit: in which it shows sizes.
    """

    project: str
    unit: Unit


def kept_sleds(session: Session) -> dict[str, Sled]:
    """The store's sleds, by name and in its order."""
    from sqlmodel import select

    found = {row.name: value_from(Sled, row, kept=True) for row in session.exec(select(KeptSledRow))}
    return {name: found[name] for name in in_order(found)}


def kept_sled(session: Session, name: str) -> Sled:
    """The store's sled of this name.

    Raises:
        InputError: no such sled; the nearest name is suggested.
    """
    return value_from(Sled, _row(session, name), kept=True)


def users(session: Session, name: str) -> tuple[SledUser, ...]:
    """The projects that share a sled of the store, by name."""
    from sqlmodel import col, select

    shared = (
        select(ProjectRow.name, ProjectRow.unit)
        .join(SledRow, col(SledRow.project_id) == col(ProjectRow.id))
        .join(KeptSledRow, col(SledRow.kept_sled_id) == col(KeptSledRow.id))
        .where(col(KeptSledRow.name) == name)
    )
    units = dict(iter(session.exec(shared)))
    return tuple(SledUser(project=project, unit=Unit(units[project])) for project in in_order(units))


def take_in(session: Session, sleds: Iterable[Sled]) -> None:
    """Add sleds that the store does not have yet."""
    session.add_all(row_from(KeptSledRow, sled) for sled in sleds)
    session.flush()


def measure(session: Session, sled: Sled) -> None:
    """Give the store's sled of this name new figures, and so all its copies; their projects count as saved once.

    Raises:
        InputError: no such sled.
    """
    from sqlmodel import col, select, update

    kept, figures = _row(session, sled.name), columns_of(sled)
    del figures["name"]
    of_this = select(SledRow.project_id).where(col(SledRow.kept_sled_id) == kept.id)
    connection = session.connection()
    connection.execute(
        update(ProjectRow).where(col(ProjectRow.id).in_(of_this)).values(version=col(ProjectRow.version) + 1)
    )
    connection.execute(update(KeptSledRow).where(col(KeptSledRow.id) == kept.id).values(figures))
    connection.execute(update(SledRow).where(col(SledRow.kept_sled_id) == kept.id).values(figures))
    session.expire_all()


def drop(session: Session, name: str) -> None:
    """Take a sled out of the store.

    Raises:
        InputError: no such sled, or a project has it.
    """
    row, in_use = _row(session, name), users(session, name)
    if in_use:
        by = ", ".join(repr(user.project) for user in in_use)
        remedy = "Take kept = true out of their project files and read them again, or forget them."
        raise InputError([Problem(where=f"sled {name!r}", what=f"is in use by {by}.", remedy=remedy)])
    session.delete(row)
    session.flush()


def ids(session: Session) -> dict[str, int]:
    """Ids of the store's sleds, by name."""
    from sqlmodel import select

    return {name: sled_id for sled_id, name in session.exec(select(KeptSledRow.id, KeptSledRow.name))}


def _row(session: Session, name: str) -> KeptSledRow:
    """Row of a sled of the store; names are compared here, so that any text at all may be asked for."""
    known = ids(session)
    row = session.get(KeptSledRow, known[name]) if name in known else None
    if row is None:
        if_none = "The store keeps none yet. Take one in: planner keep-sled PROJECT SLED"
        raise unknown("sled", name, known, what="is not among those that the store keeps.", if_none=if_none)
    return row
