"""A stand: four square legs below the carcase, with aprons tenoned into them.

The legs are alike, turned a quarter from one corner to the next: the outside face and the reference edge look out,
the mortises are on the inside face and the far edge, end A is at the top. The aprons end flush with the tops of
the legs.

A tenon is a third of its apron's thickness, in the middle. Above it a shoulder of a quarter of the apron's width
keeps the mortise from breaking out at the top of the leg; below, one of an eighth hides its other end. Two tenons
share each leg. They must not meet, and are refused where they would: a shorter tenon is simpler to make than a
mitred one.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.derive.frame import LIES
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.domain.carcase import Stand
from planner.domain.marks import board_mark
from planner.domain.solid import BACK, DOWN, RIGHT, UP, Lie, Solid, opposite
from planner.domain.words import FeatureKind, RingKind, Role
from planner.errors import Problem
from planner.lengths import Grid, Nm, show_length

_LIES = LIES[RingKind.UPRIGHT]


def stand(maker: Maker, how: Stand, block: Solid, grid: Grid) -> Iterator[Item]:
    """Legs from the front left corner round by the right; then aprons, and their tenons in the legs."""
    legs = [board_mark(maker.box, Role.LEG, number) for number in range(1, len(_LIES) + 1)]
    square = how.leg.thickness_nm
    for leg, lie in zip(legs, _LIES.values(), strict=True):
        place = block.shrunk(block.size(lie.out) - square, opposite(lie.out))
        place = place.shrunk(block.size(lie.along) - square, lie.along)
        yield maker.board(leg, Role.LEG, how.leg, Lie(across=lie.along, out=lie.out), place)
    for at, role in enumerate(_LIES):
        yield from _apron(maker, how, block, grid, (role, legs[at], legs[(at + 1) % len(legs)]))


def _apron(maker: Maker, how: Stand, block: Solid, grid: Grid, between: tuple[Role, str, str]) -> Iterator[Item]:
    """One apron: its role, and the legs at its ends A and B."""
    role, leg_at_a, leg_at_b = between
    lie = _LIES[role]
    legs = {opposite(lie.along): leg_at_a, lie.along: leg_at_b}
    place = block.shrunk(how.leg.thickness_nm - how.tenon_nm, *legs).shrunk(how.setback_nm, lie.out)
    place = place.shrunk(place.size(lie.out) - how.apron.thickness_nm, opposite(lie.out))
    place = place.shrunk(how.height_nm - how.apron_nm, DOWN)
    mark = f"{board_mark(maker.box, Role.APRON)}-{role}"
    yield maker.board(mark, Role.APRON, how.apron, lie, place)
    outer, thick = _tenon(how, grid)
    tongue = place.shrunk(outer, lie.out).shrunk(how.apron.thickness_nm - outer - thick, opposite(lie.out))
    tongue = tongue.shrunk(_part(how.apron_nm, 4, grid), UP).shrunk(_part(how.apron_nm, 8, grid), DOWN)
    for end, leg in legs.items():
        tenon = tongue.shrunk(place.size(end) - how.tenon_nm, opposite(end))
        yield Shape(board=mark, block=tenon, kind=FeatureKind.TENON)
        yield LetIn(guest=mark, host=leg, room=tenon, kind=FeatureKind.MORTISE)


def _tenon(how: Stand, grid: Grid) -> tuple[Nm, Nm]:
    """How far a tenon lies behind its apron's outside face, and how thick it is."""
    thick = _part(how.apron.thickness_nm, 3, grid)
    return Nm((how.apron.thickness_nm - thick) // 2), thick


def _part(length: Nm, share: int, grid: Grid) -> Nm:
    """A part of a length, rounded down to what the maker can set out."""
    return Nm(length // share // grid.step_nm * grid.step_nm or length // share)


def stand_problems(where: str, how: Stand, block: Solid, grid: Grid) -> Iterator[Problem]:
    """Why legs, aprons and tenons of these sizes can't be put together."""

    def show(length: int) -> str:
        return show_length(length, grid, with_unit=True)

    leg, across = how.leg.thickness_nm, min(block.size(RIGHT), block.size(BACK))
    if across <= 2 * leg:
        yield Problem(
            where=where,
            what=f"two legs {show(leg)} thick leave nothing between them in {show(across)}.",
            remedy="Take thinner legs, or let them stand out further.",
        )
    if how.apron_nm >= how.height_nm:
        yield Problem(
            where=where,
            what=f"aprons {show(how.apron_nm)} wide reach the floor: the stand is {show(how.height_nm)} high.",
            remedy=f"Make the aprons narrower than {show(how.height_nm)}.",
        )
    apron = how.setback_nm + how.apron.thickness_nm
    outer, thick = _tenon(how, grid)
    longest = leg - how.setback_nm - outer - thick
    if apron > leg:
        yield Problem(
            where=where,
            what=f"legs {show(leg)} thick are too thin for aprons {show(how.apron.thickness_nm)} thick that stand "
            f"back {show(how.setback_nm)}.",
            remedy=f"Make the legs at least {show(-(-apron // grid.step_nm) * grid.step_nm)} thick.",
        )
    elif how.tenon_nm > longest:
        yield Problem(
            where=where,
            what=f"tenons {show(how.tenon_nm)} long would meet in legs {show(leg)} thick.",
            remedy=f"Make them at most {show(longest // grid.step_nm * grid.step_nm)} long.",
        )
