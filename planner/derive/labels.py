"""What to write on each of the six surfaces of a board.

A label says which board and which surface it is, which way that surface looks and which way is up, and at each end the
joint's mark and its mate. The same joint mark stands on both mating ends. No two labels of a project are alike, since
each begins with the board's mark and the surface.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from planner.derive.frame import DIRECTION_WORDS, DOWN, LIES, UP, Lie, seen_at
from planner.domain.marks import end_mark
from planner.domain.plan import BoardSize, Labels
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.domain.words import End, Surface

SURFACE_WORDS = {
    Surface.OUTSIDE: "OUTSIDE",
    Surface.INSIDE: "INSIDE",
    Surface.REFERENCE_EDGE: "REFERENCE EDGE",
    Surface.FAR_EDGE: "FAR EDGE",
    Surface.END_A: "END A",
    Surface.END_B: "END B",
}
_UP_WORDS = {
    Surface.OUTSIDE: "outside face",
    Surface.INSIDE: "inside face",
    Surface.REFERENCE_EDGE: "reference edge",
    Surface.FAR_EDGE: "far edge",
    Surface.END_A: "end A",
    Surface.END_B: "end B",
}
_END_SURFACES = {End.A: Surface.END_A, End.B: Surface.END_B}
_FACES = (Surface.OUTSIDE, Surface.INSIDE)
_EDGES = (Surface.REFERENCE_EDGE, Surface.FAR_EDGE)


def labels(project: Project, boards: Mapping[str, BoardSize]) -> dict[str, Labels]:
    """Labels of every board, by its mark."""
    rings = {ring.mark: ring for ring in project.rings()}
    return {board.mark: _labels(board, rings[board.box]) for board in boards.values()}


def _labels(board: BoardSize, ring: Ring) -> Labels:
    lie = LIES[ring.kind][board.role]
    joined = board.mark in {b.mark for b in ring.boards}
    joints = {end: _joined(board.mark, ring.corner_at(board.mark, end)) if joined else "no corner joint" for end in End}
    return Labels(**{
        surface.value: "; ".join((f"{board.mark} {SURFACE_WORDS[surface]}", *_about(lie, surface, joints)))
        for surface in Surface
    })  # fmt: skip


def _joined(board: str, corner: Corner) -> str:
    mate = corner.mate(board)
    mate_end = end_mark(mate, End.B if mate == corner.board_at_b else End.A)
    return f"{corner.mark} {corner.carries(board).value}, meets {mate_end}"


def _about(lie: Lie, surface: Surface, joints: Mapping[End, str]) -> Iterator[str]:
    yield _way(lie, surface)
    for end, end_surface in _END_SURFACES.items():
        if surface is end_surface:
            yield joints[end]
            yield f"reference edge is the {_edge_word(lie)} edge"
        elif surface in _FACES:
            yield f"end {end.value} {seen_at(lie, surface, lie.normal(end_surface))}: {joints[end]}"
        elif surface in _EDGES:
            yield f"end {end.value}: {joints[end]}"


def _way(lie: Lie, surface: Surface) -> str:
    normal = lie.normal(surface)
    looks = f"looks {DIRECTION_WORDS[normal]}"
    if normal in (UP, DOWN):
        return looks
    return f"{looks}, {_UP_WORDS[lie.surface_towards(UP)]} up"


def _edge_word(lie: Lie) -> str:
    word = DIRECTION_WORDS[lie.normal(Surface.REFERENCE_EDGE)]
    return {"up": "top", "down": "bottom"}.get(word, word)
