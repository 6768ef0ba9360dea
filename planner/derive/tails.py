"""Tails: traced from their own pins, then sawn.

The tail board lies inside face up. The pin board stands on it with the end that was cut, its inside face on the
baseline and towards the middle of the tail board, reference edges flush; so its outside face stands ``proud`` inside
the tail board's end, and the lines are drawn on to the end. A pin ``p0`` to ``p1`` outside takes ``p0 − T/n`` to
``p1 + T/n`` at the baseline and a little less than itself at the very end. In a half-blind joint T is the depth of the
sockets, and nothing stands out.

Half-pins at the edges are let in by a sloping cut and a shoulder cut along the baseline. So N tails want 2·N sloping
cuts, half of them leaning each way, and two shoulder cuts. Where the pin board is narrower than the tail board, its
half-pin has wood of the tail board beyond it: there a square cut takes the place of the shoulder.
"""

from __future__ import annotations

from fractions import Fraction

from planner.derive.frame import from_left, reference_edge_side
from planner.domain.plan import Joint
from planner.domain.tail import SawCut, TailEnd
from planner.domain.words import End, Side
from planner.lengths import Nm, nearest


def tail_end(joint: Joint) -> TailEnd:
    """The tail end of a joint."""
    proud = joint.tail_baseline_nm - joint.socket_depth_nm
    at_end = Fraction(proud) / joint.slope
    at_baseline = Fraction(joint.socket_depth_nm) / joint.slope
    walls = [(place, -1) for place, _ in joint.pins[1:]] + [(place, 1) for _, place in joint.pins[:-1]]
    cuts = [
        _saw_cut(joint, nearest(place - away * at_end), nearest(place + away * at_baseline), away)
        for place, away in walls
    ]
    edges = ((joint.tail_from_nm, Nm(0)), (joint.tail_beyond_nm, joint.width_nm))
    square = [_on_tail_board(joint, place) for beyond, place in edges if beyond]
    return TailEnd(
        joint=joint.mark,
        board=joint.tail_board,
        end=joint.tail_end,
        trace_from=joint.pin_board,
        trace_from_end=joint.pin_end,
        width_nm=joint.tail_width_nm,
        thickness_nm=joint.tail_thickness_nm,
        slope=joint.slope,
        baseline_nm=joint.tail_baseline_nm,
        reference_edge=reference_edge_side(joint.tail_end),
        saw_cuts=tuple(sorted(cuts, key=lambda cut: cut.at_end_nm)),
        square_cuts_nm=tuple(sorted(square)),
        shoulder_cuts=2 - len(square),
        throat_nm=Nm(max(min(place, joint.tail_width_nm - place) for cut in cuts for place in _places(cut))),
    )


def _on_tail_board(joint: Joint, place: Nm) -> Nm:
    """Place on the tail board, from the left, of a place along the joint."""
    return from_left(joint.tail_from_nm + place, joint.tail_width_nm, joint.tail_end)


def _saw_cut(joint: Joint, end: Nm, baseline: Nm, away: int) -> SawCut:
    """A wall of a pin; ``away`` is +1 where the pin grows towards the far edge going in, −1 towards the reference edge.

    The waste is where the pin goes, so on the other side of the wall than the one it grows to.
    """
    far_is_right = joint.tail_end is End.B
    grows_right = (away > 0) == far_is_right
    return SawCut(
        at_end_nm=_on_tail_board(joint, end),
        at_baseline_nm=_on_tail_board(joint, baseline),
        leans=Side.LEFT if grows_right else Side.RIGHT,
        waste=Side.LEFT if grows_right else Side.RIGHT,
    )


def _places(cut: SawCut) -> tuple[Nm, Nm]:
    return cut.at_end_nm, cut.at_baseline_nm
