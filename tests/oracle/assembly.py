"""Put a planned piece together from its list of boards, and say all that doesn't fit.

An oracle for the derivation: of a plan it uses only what a maker has at the bench (``assembly_bench``), and puts the
piece together as one would a puzzle. Read in this order: ``assembly_space`` (blocks), ``assembly_bench`` (boards),
``assembly_corners``, ``assembly_seats`` and ``assembly_fit`` (what goes where), ``assembly_word`` (what was asked for),
``assembly_glue`` and ``assembly_stand`` (the piece as it stands), ``assembly_rooms`` (its openings) and
``assembly_checks`` (what may be wrong with it).
"""

from __future__ import annotations

from collections.abc import Iterator

from planner.domain.drawer import Drawer
from planner.domain.words import BottomGoes, Role
from tests.oracle.assembly_bench import Bench
from tests.oracle.assembly_checks import Hollows, corners_of, gaps_in_back, held, overlaps
from tests.oracle.assembly_drawers import drawer_faults
from tests.oracle.assembly_glue import Finding, glue, proud_ends, ring_faults
from tests.oracle.assembly_small import put_small_parts, small_faults
from tests.oracle.assembly_space import UP, WAYS
from tests.oracle.assembly_stand import Piece, stand_up

_SIDES = (WAYS["right"], WAYS["left"])


def put_together(bench: Bench) -> tuple[list[Piece], list[Finding]]:
    """All pieces of a project as they stand, and what is wrong with them; when boards disagree, only that."""
    glued = glue(bench)
    findings = [*ring_faults(bench), *glued.findings, *proud_ends(bench)]
    if any(finding.code == "disagree" for finding in findings):
        return [], findings
    pieces = stand_up(glued)
    for carcase in bench.project.carcases:
        piece = next(each for each in pieces if each.mark == carcase.ring.mark)
        put_small_parts(piece, carcase, piece.block(carcase.ring.board(Role.TOP).mark)[UP][0])
    for piece in pieces:
        findings += piece.findings
        findings += faults(piece)
    findings += _left_over(bench, pieces)
    return pieces, findings


def faults(piece: Piece) -> Iterator[Finding]:
    """All that is wrong with one piece."""
    yield from overlaps(piece)
    yield from Hollows(piece, corners_of(piece)).all()
    yield from gaps_in_back(piece)
    yield from _panels(piece)
    yield from small_faults(piece)
    for opening in piece.openings:
        if isinstance(opening.space.holds, Drawer):
            yield from drawer_faults(piece, opening, opening.space.holds)


def _left_over(bench: Bench, pieces: list[Piece]) -> Iterator[Finding]:
    used = {mark for piece in pieces for mark in piece.wood}
    for mark in sorted(bench.planks.keys() - used):
        yield Finding("left over", (mark,), f"{mark} has no place in any piece")


def _panels(piece: Piece) -> Iterator[Finding]:
    bench = piece.glued.bench
    slid_in = {ring.mark for ring, bottom in bench.project.bottoms() if bottom.goes is BottomGoes.SLID_IN}
    for plank in bench.planks.values():
        if plank.mark not in piece.wood:
            continue
        if plank.role in {Role.BOTTOM_PANEL, Role.DUST_PANEL, Role.TOP_PANEL}:
            behind = () if plank.role is Role.BOTTOM_PANEL and plank.box in slid_in else (WAYS["back"],)
            yield from held(piece, plank.mark, (*_SIDES, WAYS["front"], *behind))
        elif plank.role is Role.BACK_PANEL:
            yield from held(piece, plank.mark, (*_SIDES, WAYS["up"], WAYS["down"]))
        elif plank.role is Role.PANEL:
            block = piece.block(plank.mark)
            flat = min(range(3), key=lambda axis: block[axis][1] - block[axis][0])
            yield from held(piece, plank.mark, [way for way in WAYS.values() if way[0] != flat])
