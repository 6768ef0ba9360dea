"""Projects derived for the assembly check, and the derivation's own claims held against the piece as put together."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.derive.assembly import assembly
from planner.derive.cuts import features
from planner.derive.fits import must_fit
from planner.derive.frame import in_piece
from planner.derive.joints import joints
from planner.derive.labels import labels
from planner.domain.plan import BoardSize, Feature, Joint, Labels, OpeningSize
from planner.domain.project import Project
from planner.domain.solid import Solid
from tests.oracle.assembly import put_together
from tests.oracle.assembly_bench import bench_of
from tests.oracle.assembly_glue import Finding
from tests.oracle.assembly_space import AXIS_NAMES, Block, moved, size
from tests.oracle.assembly_stand import Piece
from tests.oracle.assembly_word import TIGHT, piece_of


@dataclass(frozen=True, slots=True)
class Derived:
    """What of a plan the assembly check looks at; a whole plan has the same names."""

    project: Project
    boards: tuple[BoardSize, ...]
    labels: dict[str, Labels]
    joints: tuple[Joint, ...]
    features: tuple[Feature, ...]
    openings: tuple[OpeningSize, ...]


def derived(project: Project) -> Derived:
    """A project derived without the choices of machines and order, which no board's size hangs on.

    Raises:
        PlanError: it can't be built.
    """
    made = assembly(project)
    corners = {joint.mark: joint for joint in joints(project, made.boards)}
    cuts = features(project, made, corners)
    must_fit(project, made.boards, cuts)
    return Derived(
        project=project,
        boards=tuple(made.boards.values()),
        labels=labels(project, made.boards, cuts),
        joints=tuple(corners.values()),
        features=cuts,
        openings=made.openings,
    )


def faults_of(project: Project) -> list[Finding]:
    """What is wrong with a project as it would be built, the derivation's own claims included."""
    plan = derived(project)
    pieces, findings = put_together(bench_of(plan))
    return [*findings, *(false_claims(plan, pieces) if pieces else ())]


def false_claims(plan: Derived, pieces: Sequence[Piece]) -> Iterator[Finding]:
    """Boards, cuts and openings that are not where the derivation says that they are.

    A board with play may be anywhere within it.
    """
    by_mark = {piece.mark: piece for piece in pieces}
    belongs = piece_of(plan.project)
    for board in plan.boards:
        piece = by_mark.get(board.piece)
        if board.piece != belongs[board.box] or piece is None or board.mark not in piece.wood:
            yield Finding("claim", (board.mark,), f"{board.mark} is not in {board.piece}")
            continue
        yield from _elsewhere(piece, board.mark, _block(board.place), piece.block(board.mark))
        for cut in plan.features:
            if cut.board == board.mark and board.mark not in piece.glued.plays:
                plank = piece.glued.bench.planks[board.mark]
                found = moved(plank.in_piece((cut.x, cut.u, cut.y)), piece.begins[board.mark])
                yield from _elsewhere(piece, board.mark, _block(in_piece(board, cut.x, cut.u, cut.y)), found)
    for opening in plan.openings:
        found = next(each.block for each in by_mark[opening.carcase].openings if each.mark == opening.mark)
        yield from _elsewhere(by_mark[opening.carcase], opening.mark, _block(opening.place), found)


def _elsewhere(piece: Piece, mark: str, claimed: Block, found: Block) -> Iterator[Finding]:
    play = piece.glued.plays.get(mark, TIGHT)
    for axis in range(3):
        off = abs(claimed[axis][0] - found[axis][0])
        if size(claimed, axis) != size(found, axis) or off > (play[axis] + 1) // 2:
            text = f"{mark} should be {AXIS_NAMES[axis]} at {claimed[axis]}, and is at {found[axis]}"
            yield Finding("claim", (mark,), text, found)


def _block(place: Solid) -> Block:
    return (place.right, place.back, place.up)
