"""Web frames: what a drawer runs on without a board below it, and what keeps the carcase together.

The rails stand in housings in the uprights, the runners between them with short tenons in the groove of the rails'
inner edges, which also takes the dust panels. The runners lie across the grain of the uprights, so the frame is glued
to them at its front rail only, and its back rail may slide in the housing.

Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from planner.derive.frame import FLAT, FLAT_DEEP
from planner.derive.parts import Item, LetIn, Maker, Shape
from planner.derive.spaces import DividerPlace
from planner.domain.carcase import Frames
from planner.domain.marks import board_mark
from planner.domain.solid import BACK, FRONT, LEFT, RIGHT, UP, Solid, opposite
from planner.domain.words import FeatureKind, Held, Role


def frame(maker: Maker, place: DividerPlace, frames: Frames, standing: Sequence[tuple[int, int]]) -> Iterator[Item]:
    """A frame: two rails, a runner at each side and in the line of each partition, panels between them."""
    whole = place.place.shrunk(-frames.housing_depth_nm, LEFT, RIGHT)
    front, back = whole.back
    rails = {
        place.mark: (Role.RAIL, whole.with_span(BACK, (front, front + frames.rail_nm))),
        board_mark(place.owner, Role.BACK_RAIL): (Role.BACK_RAIL, whole.with_span(BACK, (back - frames.rail_nm, back))),
    }
    hosts = (place.around.left, place.around.right)
    for mark, (role, block) in rails.items():
        yield maker.board(mark, role, frames.stuff, FLAT, block)
        held = Held.GLUED if role is Role.RAIL else Held.FREE
        yield from (LetIn(guest=mark, host=host, room=block, kind=FeatureKind.HOUSING, held=held) for host in hosts)
    between = whole.shrunk(frames.rail_nm, FRONT, BACK)
    runners = {mark: between.with_span(RIGHT, span) for mark, span in runners_of(place, frames, standing).items()}
    for mark, block in runners.items():
        yield from _frame_runner(maker, frames, mark, block, hosts)
    groove = _in_the_middle(between.shrunk(-frames.groove_nm, FRONT, BACK), frames)
    panels = [mark for mark in _panel_marks(place, runners) if frames.dust_panel]
    for mark, (_, block) in rails.items():
        cut = groove.meeting(block)
        if cut:
            yield Shape(board=mark, block=cut, kind=FeatureKind.GROOVE, takes=(panels or list(runners))[0])
    for mark, (left, right) in zip(panels, pairwise(runners), strict=False):
        yield from _dust_panel(maker, frames, mark, groove, ((left, runners[left]), (right, runners[right])))


def runners_of(place: DividerPlace, frames: Frames, standing: Sequence[tuple[int, int]]) -> dict[str, tuple[int, int]]:
    """From where to where the runners of a frame lie, from the left: one at each side, one in line with each partition.

    Those that would overlap, or leave less between them than a groove is deep, are one runner.
    """
    (low, high), wide = place.place.shrunk(-frames.housing_depth_nm, LEFT, RIGHT).right, frames.runner_nm
    left, right = place.place.right
    spans: list[tuple[int, int]] = [(low, left + wide)]
    for start, stop in (*((start - wide, stop + wide) for start, stop in standing), (right - wide, high)):
        if start - spans[-1][1] < frames.groove_nm:
            spans[-1] = (spans[-1][0], max(stop, spans[-1][1]))
        else:
            spans.append((start, stop))
    return {board_mark(place.owner, Role.RUNNER, number): span for number, span in enumerate(spans, 1)}


def _frame_runner(maker: Maker, frames: Frames, mark: str, body: Solid, hosts: tuple[str, str]) -> Iterator[Item]:
    block = body.shrunk(-frames.groove_nm, FRONT, BACK)
    yield maker.board(mark, Role.RUNNER, frames.stuff, FLAT_DEEP, block)
    for end in (FRONT, BACK):
        tenon = _in_the_middle(block.shrunk(block.size(BACK) - frames.groove_nm, opposite(end)), frames)
        yield Shape(board=mark, block=tenon, kind=FeatureKind.TENON)
    for host in hosts:
        yield LetIn(guest=mark, host=host, room=body, kind=FeatureKind.HOUSING, held=Held.GLUED_IN_FRONT)


def _in_the_middle(block: Solid, frames: Frames) -> Solid:
    """The middle of a frame's thickness: the groove, and what fits it."""
    thick = frames.dust_panel.thickness_nm if frames.dust_panel else frames.tenon_nm
    below = (block.size(UP) - thick) // 2
    return block.with_span(UP, (block.up[0] + below, block.up[0] + below + thick))


def _panel_marks(place: DividerPlace, runners: Mapping[str, Solid]) -> list[str]:
    mark = board_mark(place.owner, Role.DUST_PANEL)
    count = len(runners) - 1
    return [mark] if count == 1 else [f"{mark}{number}" for number in range(1, count + 1)]


def _dust_panel(
    maker: Maker, frames: Frames, mark: str, groove: Solid, beside: tuple[tuple[str, Solid], tuple[str, Solid]]
) -> Iterator[Item]:
    if frames.dust_panel is None:
        return
    (_, left), (_, right) = beside
    room = groove.with_span(RIGHT, (left.right[1] - frames.groove_nm, right.right[0] + frames.groove_nm))
    play = frames.play_nm
    panel = room.shrunk(play // 2, LEFT, FRONT).shrunk(play - play // 2, RIGHT, BACK)
    yield maker.board(mark, Role.DUST_PANEL, frames.dust_panel, FLAT, panel)
    for host, body in beside:  # the groove goes on through the tenons, since the panel's corners lie beside them
        cut = room.meeting(body.shrunk(-frames.groove_nm, FRONT, BACK))
        if cut:
            yield LetIn(guest=mark, host=host, room=cut, kind=FeatureKind.GROOVE, held=Held.FREE)
