"""How a machine is set for a cut that is no corner joint, so that like cuts in all boards share the setting.

A place counts from what rides against the fence or the stop. A groove's is the reference edge, of one in an edge the
outside face. A housing's is the end that is uppermost, at the left or in front, so that both sides of a carcase, whose
ends A are at opposite ends, share it.
"""

from __future__ import annotations

from planner.domain.operation import Setting
from planner.domain.plan import BoardSize, Feature
from planner.domain.solid import BACK, DOWN, FRONT, LEFT, RIGHT, UP
from planner.domain.words import FeatureKind, Surface
from planner.lengths import Nm, Span

Lengths = tuple[tuple[str, Nm], ...]

_END_WORDS = {DOWN: ("top", False), UP: ("top", True), RIGHT: ("left", False), LEFT: ("left", True)}
_END_WORDS |= {BACK: ("front", False), FRONT: ("front", True)}
"""By the way a board runs from end A to end B: the end that places count from, and whether it is end B."""


def cut_setting(feature: Feature, board: BoardSize) -> Setting:
    """What is set for a cut in a board, at its finished size."""
    match feature.kind:
        case FeatureKind.TENON:
            lengths = _tenon(feature, board)
        case FeatureKind.NOTCH:
            lengths = (("along the board", _size(feature.x)), ("across it", _size(feature.u)))
        case FeatureKind.HOLE:
            lengths = _hole(feature, board)
        case FeatureKind.SAW_LINE:
            lengths = (("fence to cut", feature.u[0]), ("width of cut", _size(feature.u)))
        case _:
            lengths = _long_cut(feature, board)
    return Setting("", lengths)


def _size(span: Span) -> Nm:
    return Nm(span[1] - span[0])


def _tenon(feature: Feature, board: BoardSize) -> Lengths:
    if feature.y == (0, board.thickness_nm):
        return (("tenon length", _size(feature.x)),)
    return (
        ("tenon length", _size(feature.x)),
        ("thickness", _size(feature.y)),
        ("outside cheek", feature.y[0]),
        ("inside cheek", Nm(board.thickness_nm - feature.y[1])),
    )


def _hole(feature: Feature, board: BoardSize) -> Lengths:
    bore = min(_size(span) for _, span in _over(feature))
    if feature.depth_nm == board.place.size(board.lie.normal(feature.face)):
        return (("drill", bore),)
    return (("drill", bore), ("depth", feature.depth_nm))


def _long_cut(feature: Feature, board: BoardSize) -> Lengths:
    """Width, depth and place of a groove, a rabbet, a housing or a mortise: its width is across its longer side."""
    name, wide = min(_over(feature), key=lambda way: _size(way[1]))
    lengths: Lengths = (("width of cut", _size(wide)), ("depth", feature.depth_nm))
    if feature.kind is FeatureKind.RABBET:
        return lengths
    if name != "x":
        return (*lengths, ("fence to cut", wide[0]))
    word, from_b = _END_WORDS[board.lie.along]
    place = Nm(board.length_nm - feature.x[1]) if from_b else feature.x[0]
    return (*lengths, (f"{word} end to cut", place))


def _over(feature: Feature) -> tuple[tuple[str, Span], tuple[str, Span]]:
    """How far a cut reaches over the surface that it is made from, both ways; across the board or its edge first."""
    x, u, y = ("x", feature.x), ("u", feature.u), ("y", feature.y)
    if feature.face in {Surface.OUTSIDE, Surface.INSIDE}:
        return u, x
    return (y, x) if feature.face in {Surface.REFERENCE_EDGE, Surface.FAR_EDGE} else (y, u)
