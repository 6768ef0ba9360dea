"""The sleds on the wall: those that the store keeps, each shared by the projects that are cut on it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, TypeVar

from planner import pipeline
from planner.app.measured import Measured, read_measured
from planner.app.projects import Change, keep, stored
from planner.app.recording import record
from planner.app.store_place import StorePlace
from planner.domain.plan import Plan, SledTally
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.errors import InputError, PlanError, Problem
from planner.lengths import Span, Unit

if TYPE_CHECKING:
    from planner.store.sleds import SledUser

Place = TypeVar("Place")


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSled:
    """A sled that the store keeps.

    Attributes:
        unit: in which its sizes are best shown: that of the first project that shares it.
        projects: names of the projects that share it.
    """

    sled: Sled
    unit: Unit
    projects: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """What another measure of a sled does to a project.

    Attributes:
        before: its sled work as it was; None when no plan could be built.
        after: the same as it is now.
        new_pins: joints whose pins come to lie elsewhere, as when another number of tails is chosen.
        new_marks: pin ends of which a mark or the number of passes is another.
    """

    project: str
    before: SledTally | None
    after: SledTally | None
    new_pins: int
    new_marks: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Remeasured:
    """A kept sled that was measured anew, and what that did to the projects that share it."""

    before: Sled
    after: KeptSled
    effects: tuple[Effect, ...]


def kept(store: StorePlace) -> tuple[KeptSled, ...]:
    """The sleds that the store keeps, by name; nothing when there is no store yet."""
    from planner.store import engine, sleds

    with engine.reading(store.path, tell=store.tell) as session:
        return tuple(_kept_sled(sled, sleds.users(session, sled.name)) for sled in sleds.kept_sleds(session).values())


def keep_sled(project_name: str, sled_name: str | None, store: StorePlace) -> tuple[Sled, Change]:
    """Keep a sled of a stored project for all projects; without a name, the only one that it has.

    Raises:
        InputError: no such project or sled, or the store keeps another of this name.
    """
    project = stored(project_name, store)
    sled = replace(_of_project(project, sled_name), kept=True)
    sleds = tuple(sled if each.name == sled.name else each for each in project.sleds)
    why = f"sled {sled.name} kept for all projects"
    return sled, keep(replace(project, sleds=sleds), store, why=why)


def measure(name: str, said: Measured, store: StorePlace) -> Remeasured:
    """Give a kept sled what was measured anew, and plan again every project that shares it.

    Raises:
        InputError: no such sled, or measures that can't be read; every one is named.
        PlanError: a project can't be built any more; each is named with its reasons.
        StoreError: the store can't be written.
        In each case the store is as it was.
    """
    from planner.store import engine, projects, sleds

    _must_be_kept(name, store)
    with engine.writing(store.path, tell=store.tell) as session:
        users = sleds.users(session, name)
        before = _kept_sled(sleds.kept_sled(session, name), users)
        after = replace(before, sled=read_measured(said, before.sled))
        if after == before:
            return Remeasured(before=before.sled, after=after, effects=())
        pairs = [
            (project, _with(project, after.sled))
            for project in (projects.load_project(session, user.project) for user in users)
        ]
        effects = _effects(pairs)
        sleds.measure(session, after.sled)
        for was, project in pairs:
            record(session, was, project, why=_why(before, after.sled))
    return Remeasured(before=before.sled, after=after, effects=effects)


def drop(name: str, store: StorePlace) -> KeptSled:
    """Keep a sled no longer.

    Raises:
        InputError: no such sled, or a project has it.
    """
    from planner.store import engine, sleds

    _must_be_kept(name, store)
    with engine.writing(store.path, tell=store.tell) as session:
        dropped = _kept_sled(sleds.kept_sled(session, name), ())
        sleds.drop(session, name)
    return dropped


# --- parts of these -----------------------------------------------------------------------------------------


def _kept_sled(sled: Sled, users: Sequence[SledUser]) -> KeptSled:
    projects = tuple(user.project for user in users)
    return KeptSled(sled=sled, unit=users[0].unit if users else Unit.MM, projects=projects)


def _must_be_kept(name: str, store: StorePlace) -> None:
    """Refuse an unknown name before the store is opened for writing, which would make one where there is none."""
    from planner.store import engine, sleds

    with engine.reading(store.path, tell=store.tell) as session:
        sleds.kept_sled(session, name)


def _of_project(project: Project, name: str | None) -> Sled:
    """The sled of this name; without one, the only one."""
    found = [sled for sled in project.sleds if name in {None, sled.name}]
    if len(found) == 1:
        return found[0]
    names = ", ".join(repr(sled.name) for sled in project.sleds)
    what = f"has no sled {name!r}." if name else f"has {len(found)} sleds, and none is named."
    raise InputError([Problem(where=f"project {project.name!r}", what=what, remedy=f"Name one of: {names}.")])


def _with(project: Project, sled: Sled) -> Project:
    return replace(project, sleds=tuple(sled if each.name == sled.name else each for each in project.sleds))


def _why(before: KeptSled, after: Sled) -> str:
    from planner.intake.kept_sleds import differences

    pairs = differences(before.sled, after, before.unit).items()
    return f"sled {after.name} measured anew: {'; '.join(f'{key} from {was} to {now}' for key, (was, now) in pairs)}"


def _effects(pairs: Iterable[tuple[Project, Project]]) -> tuple[Effect, ...]:
    """What becomes of each project; one that could not be built before may still not be.

    Raises:
        PlanError: one can't be built any more.
    """
    effects: list[Effect] = []
    wrong: list[Problem] = []
    for was, project in pairs:
        before, _ = _tried(was)
        after, why_not = _tried(project)
        if before is not None:
            wrong += why_not
        effects.append(_effect(project.name, before, after))
    if wrong:
        raise PlanError(wrong)
    return tuple(effects)


def _tried(project: Project) -> tuple[Plan | None, list[Problem]]:
    """The plan of a project, or why there is none, with the project named since marks alone don't say which it is."""
    try:
        return pipeline.plan(project), []
    except PlanError as error:
        return None, [replace(each, where=f"{project.name}, {each.where}") for each in error.problems]


def _effect(name: str, before: Plan | None, after: Plan | None) -> Effect:
    return Effect(
        project=name,
        before=before.sled.tally if before else None,
        after=after.sled.tally if after else None,
        new_pins=_differing(_pins(before), _pins(after)),
        new_marks=_differing(_marks(before), _marks(after)),
    )


def _differing(before: Mapping[Place, object], after: Mapping[Place, object]) -> int:
    return sum(before.get(place) != what for place, what in after.items())


def _pins(plan: Plan | None) -> dict[str, tuple[Span, ...]]:
    return {joint.mark: joint.pins for joint in (plan.joints if plan else ())}


def _marks(plan: Plan | None) -> dict[tuple[str, str], list[tuple[str, object]]]:
    """Passes of each pin end, at the one fence and the other."""
    found: dict[tuple[str, str], list[tuple[str, object]]] = {}
    for setting in plan.sled.settings if plan else ():
        for cut in setting.cuts:
            found.setdefault((cut.board, cut.end), []).append((setting.fence, cut.passes))
    return {end: sorted(passes, key=lambda each: each[0]) for end, passes in found.items()}
