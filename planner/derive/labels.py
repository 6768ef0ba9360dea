"""What to write on each of the six surfaces of a board.

A label says which board and which surface it is, which way that surface looks and which way is up, and at each end the
joint's mark and its mate. The same joint mark stands on both mating ends. No two labels of a project are alike, since
each begins with the board's mark and the surface.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from planner.derive.frame import DIRECTION_WORDS, in_piece, seen_at
from planner.domain.marks import end_mark
from planner.domain.plan import BoardSize, Feature, Labels
from planner.domain.project import Project
from planner.domain.ring import Corner
from planner.domain.solid import DOWN, UP, Lie, Solid, opposite
from planner.domain.words import End, FeatureKind, Surface

SURFACE_WORDS = {
    Surface.OUTSIDE: "OUTSIDE",
    Surface.INSIDE: "INSIDE",
    Surface.REFERENCE_EDGE: "REFERENCE EDGE",
    Surface.FAR_EDGE: "FAR EDGE",
    Surface.END_A: "END A",
    Surface.END_B: "END B",
}
_END_SURFACES = {End.A: Surface.END_A, End.B: Surface.END_B}
_FACES = (Surface.OUTSIDE, Surface.INSIDE)
_EDGES = (Surface.REFERENCE_EDGE, Surface.FAR_EDGE)


def labels(project: Project, boards: Mapping[str, BoardSize], features: Iterable[Feature]) -> dict[str, Labels]:
    """Labels of every board, by its mark."""
    corners = {
        end_mark(board.mark, end): ring.corner_at(board.mark, end)
        for ring in project.rings()
        for board in ring.boards
        for end in End
    }
    goes_into = held_in(boards, features)
    return {board.mark: _labels(board, corners, goes_into) for board in boards.values()}


def held_in(boards: Mapping[str, BoardSize], features: Iterable[Feature]) -> dict[str, str]:
    """What each board end goes into, where that is no corner joint: a cut made from a face that looks at the end.

    Of a tenon that goes into a groove which several boards share, the boards around it tell.
    """
    found: dict[str, list[str]] = {}
    for feature in features:
        if feature.kind is FeatureKind.TENON:
            own = boards[feature.board]
            end = End.A if feature.x[0] == 0 else End.B
            tenon = in_piece(own, feature.x, feature.u, feature.y)
            hosts = [each.mark for each in boards.values() if each is not own and _fills(each, own, tenon)]
            found.setdefault(end_mark(own.mark, end), []).extend(f"into {host}" for host in hosts)
        guest = boards.get(feature.takes)
        if guest is None or feature.kind is FeatureKind.RABBET:
            continue
        looks = boards[feature.board].lie.normal(feature.face)
        for end, surface in _END_SURFACES.items():
            if guest.lie.normal(surface) == opposite(looks):
                found.setdefault(end_mark(guest.mark, end), []).append(f"into {feature.board}")
    return {end: ", ".join(dict.fromkeys(words)) for end, words in found.items() if words}


def _fills(board: BoardSize, own: BoardSize, tenon: Solid) -> bool:
    """Whether a board of the same piece holds all of a tenon."""
    return board.piece == own.piece and tenon.meeting(board.place) == tenon


def _labels(board: BoardSize, corners: Mapping[str, Corner], goes_into: Mapping[str, str]) -> Labels:
    lie = board.lie
    joints = {}
    for end in End:
        mark = end_mark(board.mark, end)
        joints[end] = _joined(board.mark, corners[mark]) if mark in corners else goes_into.get(mark, "")
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
            if joints[end]:
                yield joints[end]
            yield f"reference edge is the {_edge_word(lie)} edge"
        elif surface in _FACES:
            yield _with(f"end {end.value} {seen_at(lie, surface, lie.normal(end_surface))}", joints[end])
        elif surface in _EDGES and joints[end]:
            yield _with(f"end {end.value}", joints[end])


def _with(end: str, joint: str) -> str:
    return f"{end}: {joint}" if joint else end


def _way(lie: Lie, surface: Surface) -> str:
    normal = lie.normal(surface)
    looks = f"looks {DIRECTION_WORDS[normal]}"
    if normal in (UP, DOWN):
        return looks
    return f"{looks}, {lie.surface_towards(UP).words} up"


def _edge_word(lie: Lie) -> str:
    word = DIRECTION_WORDS[lie.normal(Surface.REFERENCE_EDGE)]
    return {"up": "top", "down": "bottom"}.get(word, word)
