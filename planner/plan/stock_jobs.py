"""What is asked of the saw: for each timber and thickness, the rough parts and the wood that there is for them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import groupby

from planner.domain.plan import Plan
from planner.domain.project import Project
from planner.domain.rack import Lot, Per, Surfaced
from planner.domain.stock import Allowances
from planner.domain.words import MaterialKind
from planner.lengths import Grid, Nm, Unit
from planner.plan.rough import RoughPart, allowances_of, rough_parts, stock_of
from planner.plan.staves import in_staves
from planner.stock.pieces import Board, Job, Part, Saw, Wish, Zone
from planner.wood.lumber import SoldSize, usual_size
from planner.wood.measure import cents_of

MOST_PLANED_NM = Nm(Grid.IN_64.step_nm * 32)
"""1/2 in: thicker wood isn't planed away, it is resawn. Common practice, no source."""

SHEET_MAY_DIFFER_NM = Grid.IN_32.step_nm
"""A sheet called 3/4 in is 23/32 in (trade practice, no source)."""

_DM2 = 10**16
"""Square nanometres; wood on the rack without a price counts one cent for each."""

_STEP_NM = {Unit.INCH: Nm(Grid.IN_64.step_nm * 64), Unit.MM: Nm(Grid.MM_TENTH.step_nm * 100)}
"""Sizes picked from a yard's range are whole inches or centimetres."""


class Aim(StrEnum):
    """What is kept lowest."""

    CHEAPEST = "cheapest"
    FEWEST = "fewest boards"
    ON_HAND = "only what is on hand"
    """From the rack alone, the least of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stuff:
    """Rough wood of which parts are sawn together.

    Attributes:
        sold: the size in which it is sold; None of sheets, and of what is thicker than anything sold.
        finished_nm: thickness of the thickest board made of it.
        least_nm: rough wood must be so thick at least, dressed wood as thick as ``finished_nm``.
    """

    material: str
    kind: MaterialKind
    sold: SoldSize | None
    finished_nm: Nm
    least_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """Boards of one lot that are taken to have one size.

    Attributes:
        mark: the lot's; of a range of sizes, with a letter for the size.
    """

    mark: str
    lot: Lot
    length_nm: Nm
    width_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """Wood of the right name that isn't used, and why."""

    lot: Lot
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StockJob:
    """One timber in one thickness.

    Attributes:
        parts: what is sawn, staves instead of panels too wide for the wood.
        choices: the wood, by the mark that it has in the job.
        job: what is asked of the saw.
        per: by what such wood is usually sold.
    """

    stuff: Stuff
    parts: tuple[RoughPart, ...]
    choices: Mapping[str, Choice]
    job: Job
    per: Per


def by_stuff(plan: Plan) -> dict[Stuff, tuple[RoughPart, ...]]:
    """The rough parts of a plan by what they are sawn from: solid timber first, the thickest of each first."""
    alike: dict[tuple[object, ...], list[RoughPart]] = {}
    for part in rough_parts(plan):
        thick = (part.sold.name,) if part.sold else part.finished[2]
        alike.setdefault((part.material, thick), []).append(part)
    groups = {_stuff(parts): tuple(parts) for parts in alike.values()}
    kinds = tuple(MaterialKind)
    order = sorted(groups, key=lambda stuff: (kinds.index(stuff.kind), stuff.material, -stuff.least_nm))
    return {stuff: groups[stuff] for stuff in order}


def _stuff(parts: Sequence[RoughPart]) -> Stuff:
    first = parts[0]
    return Stuff(
        material=first.material,
        kind=first.kind,
        sold=first.sold,
        finished_nm=max(part.finished[2] for part in parts),
        least_nm=max(part.least_nm for part in parts),
    )


# --- which wood is for what ---------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """One stuff with all its parts, and the wood that there is for it."""

    stuff: Stuff
    parts: tuple[RoughPart, ...]
    lots: tuple[Lot, ...]


def share_out(plan: Plan, lots: Sequence[Lot]) -> tuple[tuple[Share, ...], tuple[LeftOut, ...]]:
    """The wood for each stuff, and lots of its materials that are for none.

    Parts for which there is no wood but what serves thicker parts too are sawn together with these. A lot of so many
    boards goes to the parts for which least of it is planed away, so that no board is counted twice; an offer without
    limit goes wherever it serves.
    """
    project = plan.project
    merged = _together(by_stuff(plan), project, lots)
    found: dict[Stuff, list[Lot]] = {stuff: [] for stuff in merged}
    left: list[LeftOut] = []
    for lot in lots:
        of_material = [stuff for stuff in merged if is_of(lot, project, stuff.material)]
        fits = sorted((stuff for stuff in of_material if _serves(lot, stuff)), key=lambda stuff: _away(lot, stuff))
        endless = lot.count is None and lot.least_hundredths is None
        for stuff in fits if endless else fits[:1]:
            found[stuff].append(lot)
        if of_material and not fits:
            left.append(LeftOut(lot=lot, why=_why_not(lot, of_material)))
    shares = tuple(Share(stuff=stuff, parts=merged[stuff], lots=tuple(found[stuff])) for stuff in merged)
    return shares, tuple(left)


def _together(
    stuffs: Mapping[Stuff, tuple[RoughPart, ...]], project: Project, lots: Sequence[Lot]
) -> dict[Stuff, tuple[RoughPart, ...]]:
    """The stuffs, thinner parts with thicker ones where only wood that serves these serves them."""

    def wood(stuff: Stuff) -> set[str]:
        return {lot.mark for lot in lots if is_of(lot, project, stuff.material) and _serves(lot, stuff)}

    merged: dict[Stuff, tuple[RoughPart, ...]] = {}
    for stuff, parts in stuffs.items():
        thicker = [
            each
            for each in merged
            if each.kind is MaterialKind.SOLID and each.material == stuff.material and wood(stuff) <= wood(each)
        ]
        if wood(stuff) and thicker:
            merged[thicker[-1]] += parts
        else:
            merged[stuff] = parts
    return merged


def is_of(lot: Lot, project: Project, material: str) -> bool:
    """Whether a lot is of this material: by the maker's name for it or by its species, whatever the words' order."""
    names = {material, project.material(material).species or material}
    return _words(lot.material) in map(_words, names)


def _words(name: str) -> list[str]:
    return sorted(re.findall(r"[^\W_]+", name.casefold()))


def _away(lot: Lot, stuff: Stuff) -> int:
    """What is planed away; of sheets, by how much one is off."""
    return abs(lot.thickness_nm - stuff.finished_nm)


def _serves(lot: Lot, stuff: Stuff) -> bool:
    if stuff.kind is MaterialKind.SHEET:
        return _away(lot, stuff) <= SHEET_MAY_DIFFER_NM
    return _is_thick_enough(lot, stuff) and _away(lot, stuff) <= max(MOST_PLANED_NM, stuff.least_nm - stuff.finished_nm)


def _is_thick_enough(lot: Lot, stuff: Stuff) -> bool:
    return lot.thickness_nm >= (stuff.finished_nm if lot.surfaced is Surfaced.DRESSED else stuff.least_nm)


def _why_not(lot: Lot, stuffs: Sequence[Stuff]) -> str:
    if stuffs[0].kind is MaterialKind.SHEET:
        return "No part is of this thickness."
    if any(_is_thick_enough(lot, stuff) for stuff in stuffs):
        return "Too thick to plane down: resaw it, and list what you get."
    return "Too thin, once planed on both faces."


# --- the job ------------------------------------------------------------------------------------------------


def stock_job(project: Project, share: Share, aim: Aim) -> StockJob:
    """What is asked of the saw for one stuff."""
    stuff, parts, lots = share.stuff, share.parts, share.lots
    allowed = allowances_of(project, stuff.material)
    chosen = {each.mark: each for lot in lots for each in _choices(lot, project.unit)}
    glued = tuple(each for part in parts for each in in_staves(part, project, _widest(part, chosen.values(), allowed)))
    return StockJob(
        stuff=stuff,
        parts=glued,
        choices=chosen,
        per=usual_size(project.unit, stuff.kind).per,
        job=Job(
            parts=tuple(_parts(glued)),
            boards=tuple(_board(each, allowed, aim) for each in chosen.values()),
            saw=_saw(project),
            wish=_wish(project),
        ),
    )


def _choices(lot: Lot, unit: Unit) -> Iterator[Choice]:
    """A lot as boards of one size; of a range, the small, the middling and the large ones."""
    if not lot.random:
        yield Choice(mark=lot.mark, lot=lot, length_nm=lot.longest_nm, width_nm=lot.widest_nm)
        return
    sizes = [
        (length, width)
        for length in _picked(lot.shortest_nm, lot.longest_nm, unit)
        for width in _picked(lot.narrowest_nm, lot.widest_nm, unit)
    ]
    for letter, (length, width) in zip("abcdefghi", sizes, strict=False):
        yield Choice(mark=f"{lot.mark}{letter}", lot=lot, length_nm=length, width_nm=width)


def _picked(low: Nm, high: Nm, unit: Unit) -> list[Nm]:
    step = _STEP_NM[unit]
    middle = Nm(max(low, (low + high) // 2 // step * step))
    return sorted({low, middle, high})


def _widest(part: RoughPart, choices: Iterable[Choice], allowed: Allowances) -> Nm | None:
    """The widest stave of this part's length that the wood gives; None where none is so long."""
    return max(
        (
            Nm(each.width_nm - 2 * allowed.edge_trim_nm)
            for each in choices
            if each.length_nm - 2 * allowed.end_trim_nm >= part.length_nm
        ),
        default=None,
    )


def _parts(parts: Iterable[RoughPart]) -> Iterator[Part]:
    """Equal parts together, the longest first."""

    def size(part: RoughPart) -> tuple[int, int, bool]:
        return -part.length_nm, -part.width_nm, part.may_turn

    for _, alike in groupby(sorted(parts, key=size), key=size):
        same = list(alike)
        yield Part(
            marks=tuple(part.mark for part in same),
            length_nm=same[0].length_nm,
            width_nm=same[0].width_nm,
            may_turn=same[0].may_turn,
        )


def _board(each: Choice, allowed: Allowances, aim: Aim) -> Board:
    lot = each.lot
    return Board(
        mark=each.mark,
        length_nm=each.length_nm,
        width_nm=each.width_nm,
        cost=1 if aim is Aim.FEWEST else worth(each),
        count=lot.count,
        defects=tuple(Zone(along=flaw.along, across=flaw.across) for flaw in lot.flaws),
        end_trim_nm=allowed.end_trim_nm,
        edge_trim_nm=allowed.edge_trim_nm,
    )


def worth(each: Choice) -> int:
    """What one board counts for, in cents: its price; without one, a cent for each square decimetre, rounded up."""
    if each.lot.price is None:
        return -(-each.length_nm * each.width_nm // _DM2)
    return cents_of(each.lot, each.length_nm, each.width_nm)


def _saw(project: Project) -> Saw:
    stock = stock_of(project)
    return Saw(rip_nm=stock.rip_kerf_nm, crosscut_nm=stock.crosscut_kerf_nm)


def _wish(project: Project) -> Wish:
    stock = stock_of(project)
    return Wish(stages=stock.stages, first=stock.first_cut, keep=stock.keep)


def without(found: StockJob, lots: Iterable[str]) -> StockJob:
    """The same job without some lots; panels stay as they are glued up."""
    gone = set(lots)
    choices = {mark: each for mark, each in found.choices.items() if each.lot.mark not in gone}
    boards = tuple(board for board in found.job.boards if board.mark in choices)
    return replace(found, choices=choices, job=replace(found.job, boards=boards))
