"""Tails put together with their pins: in space there is neither overlap nor gap."""

from __future__ import annotations

from typing import Any

import pytest
from shapely.geometry import LineString, Polygon, box
from shapely.ops import polygonize, unary_union

from planner.derive.tails import tail_end
from planner.domain.plan import Joint
from planner.domain.tail import TailEnd
from planner.domain.words import End, Side
from planner.lengths import Nm
from planner.pipeline import plan
from tests.pieces import inches, six_drawers, small_box

MM = 1_000_000
JOINTS = plan(six_drawers()).joints + plan(small_box()).joints


def kept_after_sawing(tails: TailEnd) -> Any:
    """The wood of the end that is left when the waste is cut out as the lines say.

    The board lies inside face up, its end away: x from the left, z from the end towards the operator.
    """
    width, base = tails.width_nm / MM, tails.baseline_nm / MM
    lines = [LineString([(cut.at_end_nm / MM, 0), (cut.at_baseline_nm / MM, base)]) for cut in tails.saw_cuts]
    pieces = list(polygonize(unary_union([*lines, box(0, 0, width, base).exterior])))
    kept = []
    for piece in pieces:
        left, _, right, _ = piece.bounds
        waste = any(
            (cut.waste is Side.RIGHT and abs(min(cut.at_end_nm, cut.at_baseline_nm) / MM - left) < 1e-6)
            or (cut.waste is Side.LEFT and abs(max(cut.at_end_nm, cut.at_baseline_nm) / MM - right) < 1e-6)
            for cut in tails.saw_cuts
        )
        if not waste:
            kept.append(piece)
    return unary_union(kept)


def pins_laid_on_the_tail_board(joint: Joint) -> Any:
    """The pins in the same picture, from the pin board's own frame.

    The joint's reference edges are in one plane, so u is u. Inside face up and end away, a tail board's reference edge
    is at the right for end A: its outside face, reference edge at the bottom, has end A at the left; turned over
    sideways A is at the right; turned so that A points away, the bottom edge comes to the right. At the left for B.
    """
    width, thick = joint.width_nm / MM, joint.pin_thickness_nm / MM
    proud = (joint.tail_baseline_nm - joint.pin_thickness_nm) / MM
    lean, grow = thick / float(joint.slope), proud / float(joint.slope)
    drawn = []
    for a, b in ((a / MM, b / MM) for a, b in joint.pins):
        low, high = (
            (0.0 if a == 0 else a + grow, 0.0 if a == 0 else a - lean),
            (
                width if b == width else b - grow,
                width if b == width else b + lean,
            ),
        )
        corners = [(low[0], 0.0), (high[0], 0.0), (high[1], thick + proud), (low[1], thick + proud)]
        if joint.tail_end is End.A:
            corners = [(width - u, z) for u, z in corners]
        drawn.append(Polygon(corners))
    return unary_union(drawn)


@pytest.mark.parametrize("joint", JOINTS, ids=lambda joint: joint.mark)
def test_tails_close_with_their_pins(joint: Joint) -> None:
    tails = tail_end(joint)
    kept, pins = kept_after_sawing(tails), pins_laid_on_the_tail_board(joint)
    whole = box(0, 0, tails.width_nm / MM, tails.baseline_nm / MM)
    whole_nanometres = len(tails.saw_cuts) * tails.baseline_nm / MM * 1e-6
    assert kept.intersection(pins).area == pytest.approx(0, abs=whole_nanometres)
    assert whole.difference(kept).difference(pins).area == pytest.approx(0, abs=whole_nanometres)


def test_the_side_of_a_drawer_by_hand() -> None:
    """D1-right end A takes the pins of D1-front end B. Front 3/4 thick, proud 1/64, slope 1:8, three tails on 5 3/8.

    Sockets (5.375 − 0.5 − 0.5)/3 = 1.458333 in. Pins from the reference edge: 0–0.25, 1.708333–1.958333, …. At the
    baseline, 49/64 in, each side of a pin has gained 3/32. End A: the reference edge is at the right, so places are
    5.375 − u.
    """
    joint = next(j for j in JOINTS if j.mark == "D1-J1")
    tails = tail_end(joint)
    assert (tails.board, tails.end, tails.trace_from, tails.trace_from_end) == ("D1-right", "A", "D1-front", "B")
    assert tails.reference_edge is Side.RIGHT
    assert tails.baseline_nm == inches("49/64")
    assert (len(tails.saw_cuts), tails.shoulder_cuts) == (6, 2)
    last = tails.saw_cuts[-1]  # the wall of the half-pin at the reference edge
    assert last.at_baseline_nm == inches("5 3/8") - inches("11/32")
    assert last.at_end_nm == pytest.approx(inches("5 1/8") + inches("1/64") / 8, abs=1)
    assert (last.leans, last.waste) == (Side.RIGHT, Side.RIGHT)
    assert sum(cut.leans is Side.LEFT for cut in tails.saw_cuts) == 3


def test_the_throat_is_measured_from_the_nearer_edge() -> None:
    # The cut nearest the middle of 5 3/8 lies at 1.958333 + 3/32 = 2.052083 from the nearer edge.
    joint = next(j for j in JOINTS if j.mark == "D1-J1")
    assert tail_end(joint).throat_nm == pytest.approx(inches("1") * 2.052083, abs=Nm(20))
