"""Answer for a finding with a reason, so that it no longer counts as open; or take that back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from planner import pipeline
from planner.app.projects import keep, stored
from planner.app.store_place import StorePlace
from planner.domain.acknowledged import Acknowledged
from planner.domain.plan import Finding
from planner.domain.project import Project
from planner.errors import InputError, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Which findings of which stored project: those of a rule that are about all of these marks."""

    project: str
    code: str
    marks: Sequence[str]


def acknowledge(wanted: Wanted, why: str, store: StorePlace) -> tuple[Finding, ...]:
    """Answer for findings, and give them back.

    Raises:
        InputError: no such project or finding, or no reason that can be kept.
        PlanError: no plan can be built of it.
        StoreError: the store can't be written.
    """
    project = stored(wanted.project, store)
    found = _findings(project, wanted)
    gravest = {(each.code, each.marks): each.level for each in reversed(found)}  # of two alike the graver
    answers = [
        Acknowledged(code=code, marks=marks, level=level, why=_reason(why)) for (code, marks), level in gravest.items()
    ]
    _keep(project, (*_others(project, found), *answers), store, why=f"acknowledged {_named(wanted)}: {why}")
    return found


def open_again(wanted: Wanted, store: StorePlace) -> tuple[Finding, ...]:
    """Take back what was said of findings, and give them back; refusals as for ``acknowledge``."""
    project = stored(wanted.project, store)
    found = _findings(project, wanted)
    answered = tuple(each for each in found if each.acknowledged)
    if not answered:
        raise InputError([
            Problem(
                where=_named(wanted),
                what="is open already.",
                remedy=f"See them all: planner checks {wanted.project!r}",
            )
        ])  # fmt: skip
    _keep(project, _others(project, answered), store, why=f"opened again {_named(wanted)}")
    return answered


def _keep(project: Project, answers: tuple[Acknowledged, ...], store: StorePlace, *, why: str) -> None:
    keep(replace(project, acknowledged=answers), store, why=why)


def _others(project: Project, found: Sequence[Finding]) -> tuple[Acknowledged, ...]:
    """What was said of other findings."""
    meant = {(each.code, each.marks) for each in found}
    return tuple(each for each in project.acknowledged if (each.code, each.marks) not in meant)


def _findings(project: Project, wanted: Wanted) -> tuple[Finding, ...]:
    all_found = pipeline.plan(project).findings
    found = tuple(each for each in all_found if each.code == wanted.code and set(wanted.marks) <= set(each.marks))
    if not found:
        codes = ", ".join(dict.fromkeys(each.code for each in all_found)) or "none"
        raise InputError([
            Problem(
                where=_named(wanted),
                what="is not found by any check.",
                remedy=f"What is found: {codes}. With their marks: planner checks {project.name!r}",
            )
        ])  # fmt: skip
    return found


def _named(wanted: Wanted) -> str:
    return " ".join((wanted.code, *wanted.marks))


def _reason(why: str) -> str:
    """The reason as a project file would take it.

    Raises:
        InputError: it wouldn't.
    """
    from planner.intake.refusal import RefusalError
    from planner.intake.values import reason

    try:
        return reason(why)
    except RefusalError as error:
        raise InputError([Problem(where="the reason", what=error.what, remedy=error.remedy)]) from error
