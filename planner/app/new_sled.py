"""A sled to be built, for a stored project or a list of boards: from the maker's slip to floor, fences and limits."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from planner import pipeline
from planner.app.projects import stored
from planner.app.sled_slip import Reading, SledSlip, typed
from planner.app.store_place import StorePlace
from planner.derive.sled_to_build import boards_of, sled_to_build
from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.domain.sled_to_build import SledToBuild, SledWish, UprightBoard
from planner.domain.words import JointKind
from planner.errors import InputError
from planner.lengths import Grid, Nm, Unit
from planner.present.plain import visible

FOR_BOARDS = "bench"
"""What a sled for a list of boards is called when the maker gives it no name."""

_WITHOUT_END = Nm(10**12)
"""A limit that no board comes near, for laying out pins on a sled whose limits are still to be found."""

_UNITS_HOW = "Say in or mm: the unit of bare numbers, and of the sizes shown."


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSled:
    """A sled to be built.

    Attributes:
        boards: the pin ends that it was worked out for.
        replaces: sleds of the project whose place it takes.
        project_file: its table for the project file.
    """

    wish: SledWish
    boards: tuple[UprightBoard, ...]
    built: SledToBuild
    replaces: tuple[str, ...]
    project_file: str


def new_sled(name: str | None, slip: SledSlip, store: StorePlace) -> NewSled:
    """The sled to build for the slip's boards; without any, for a stored project (unnamed, the only one there is).

    Raises:
        InputError: no such project, or measures that are missing or can't be read; every one is named.
        PlanError: no such sled can be built, or no pins can be laid out for it; every reason is named.
    """
    return for_boards(slip, name) if slip.boards else for_project(stored(name, store), slip)


def for_project(project: Project, slip: SledSlip) -> NewSled:
    """The sled to build for the through dovetails of a project, laid out anew for its slope and bit."""
    reading = Reading(slip, project.unit)
    _belongs_to_boards(reading)
    sleds = _sleds_meant(reading, project)
    names = tuple(sled.name for sled in sleds)
    _not_taken(reading, project, names)
    wish = _read(reading, name=names[0], run_micro=_common_slope(reading, sleds), grid=project.grid)
    plan = pipeline.plan(_cut_on(wish, project, names))
    joints = [joint for joint in plan.joints if joint.kind is JointKind.THROUGH_DOVETAIL and joint.sled in names]
    return _worked_out(wish, boards_of(joints, {board.mark: board for board in plan.boards}), project.unit, names)


def for_boards(slip: SledSlip, project: str | None = None) -> NewSled:
    """The sled to build for the boards of a slip, beside which no project may be named."""
    from planner.intake.usual import GRIDS

    reading = Reading(slip, Unit.MM)
    unit = reading.unit = reading.word("units", Unit.MM, _UNITS_HOW)
    if project is not None:
        reading.refuse(f"project {project!r}", "is named beside --board.", "Give either a project or boards.")
    if slip.like is not None:
        reading.refuse("--like", "names a sled of a project, but boards were given.", "Leave it out.")
    boards = reading.boards()
    wish = _read(reading, name=FOR_BOARDS, run_micro=None, grid=GRIDS[unit])
    return _worked_out(wish, boards, unit, ())


def _belongs_to_boards(reading: Reading) -> None:
    for name in ("units", "proud"):
        if reading.said(name) is not None:
            reading.refuse(typed(name), "goes with --board; a project has its own.", "Leave it out.")


def _read(reading: Reading, *, name: str, run_micro: int | None, grid: Grid) -> SledWish:
    """The sled wished for; name and slope as given here where the slip has none.

    Raises:
        InputError: all that was found wrong with the slip.
    """
    wish = reading.wish(name=reading.name(name), run_micro=reading.slope(run_micro), grid=grid)
    if reading.wrong:
        raise InputError(reading.wrong)
    return wish


# --- whose joints -------------------------------------------------------------------------------------------


def _sleds_meant(reading: Reading, project: Project) -> tuple[Sled, ...]:
    """Sleds of the project whose joints the new one shall cut: the one named, else all in use."""
    from planner.intake.nearest import advice
    from planner.intake.refusal import quote

    names = {ring.sled for ring in project.rings()}
    used = tuple(sled for sled in project.sleds if sled.name in names)
    like = reading.slip.like
    if like is None:
        return used
    if like not in names:
        reading.refuse(
            "--like",
            f"no joint of {project.name} is cut on a sled {quote(like)}.",
            advice(like, [sled.name for sled in used]),
        )
        return used
    return (project.sled(like),)


def _not_taken(reading: Reading, project: Project, replaced: Iterable[str]) -> None:
    """A sled of the project that stays must not lose its name to the new one."""
    from planner.intake.refusal import quote

    name = reading.slip.name
    if name is not None and name in {sled.name for sled in project.sleds} - set(replaced):
        reading.refuse("--name", f"{quote(name)} is another sled of {project.name}.", "Give the new one its own name.")


def _common_slope(reading: Reading, sleds: Iterable[Sled]) -> int | None:
    """The slope that all of these sleds share; where they don't, the maker must say one or name a sled."""
    from planner.intake.slope import write_slope

    slopes = {sled.run_micro: sled.name for sled in sleds}
    if len(slopes) == 1 or reading.slip.slope is not None or reading.slip.like is not None:
        return next(iter(slopes))
    said = ", ".join(f"{sled.name} {write_slope(sled.run_micro)}" for sled in sleds)
    reading.refuse(
        "--like",
        f"is missing, and the sleds of the joints differ in slope: {said}.",
        "Name the sled whose joints are meant, or give one --slope for all of them.",
    )
    return next(iter(slopes))


def _cut_on(wish: SledWish, project: Project, names: Iterable[str]) -> Project:
    """The project with the new sled in place of those named, its limits still open."""
    new = Sled(
        name=wish.name,
        run_micro=wish.run_micro,
        bit_nm=wish.bit.diameter_nm,
        greatest_bit_height_nm=_WITHOUT_END,
        greatest_width_nm=_WITHOUT_END,
        greatest_upright_nm=_WITHOUT_END,
    )
    sleds = (replace(new, name=sled.name) if sled.name in names else sled for sled in project.sleds)
    return replace(project, sleds=tuple(sleds))


# --- the answer ---------------------------------------------------------------------------------------------


def _worked_out(wish: SledWish, boards: Iterable[UprightBoard], unit: Unit, replaces: tuple[str, ...]) -> NewSled:
    upright = tuple(boards)
    built = sled_to_build(wish, upright)
    return NewSled(
        wish=wish,
        boards=upright,
        built=built,
        replaces=replaces,
        project_file="\n".join((*_remarks(built.sled.name, replaces), _table(built.sled, unit))),
    )


def _remarks(name: str, replaces: Iterable[str]) -> Iterator[str]:
    """What to do with the table, as remarks of the project file."""
    for old in replaces:
        shown = visible(old)
        yield (
            f"# In place of the table of sled {shown}." if old == name else f"# Name it where the sled is {shown} now."
        )
    yield "# Not worked out: slot, greatest_depth_soft, greatest_depth_hard. Add them once measured."


def _table(sled: Sled, unit: Unit) -> str:
    import tomli_w

    from planner.intake.kept_sleds import figures

    return tomli_w.dumps({"sled": {sled.name: figures(sled, unit)}})
