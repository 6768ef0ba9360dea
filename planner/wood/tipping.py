"""Whether a free-standing piece tips forward: a static balance about its front supports, and the worst way to open it.

With forward lean t, places x behind the front supports and heights z over the floor:

    margin = Σ m·g·(x·cos t − z·sin t) − F·h        (tips when it is not above 0)

An opened drawer takes its boards and what it holds forward by its travel. A weight on the front of an open drawer sits
at its front face less the travel. A block b under rear supports that stand s behind the front ones, measured along the
base, leans it by ``sin t = b/s``. Friction holds the feet.

What an estimate can know of the published tests stands in ``tipping_tests``. All figures are SI: kg, m, N, radians.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import asin, cos, fsum, sin

from planner.wood.bending import GRAVITY
from planner.wood.weight import NOTHING, Body


@dataclass(frozen=True, slots=True, kw_only=True)
class Opens:
    """A drawer or a door. Places count behind the front supports and up from the floor.

    Attributes:
        mark: what it is called.
        body: itself, shut and empty.
        travel: how far its centre of gravity comes forward as it opens.
        fill: what it holds when it is filled, shut; a door holds nothing.
        edge_back: where a weight on its front sits while it is open.
        edge_up: how high.
        limited: whether it counts against how many may be open at once: drawers do, doors don't.
    """

    mark: str
    body: Body
    travel: float
    edge_back: float
    edge_up: float
    fill: Body = NOTHING
    limited: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A piece on its supports.

    Attributes:
        case: all of it that doesn't open.
        opens: its drawers and doors.
        spacing: from the front supports to the rear ones.
        height: from the floor to its highest point.
        most_open: how many drawers can be open at once; None for all of them.
    """

    case: Body
    opens: tuple[Opens, ...]
    spacing: float
    height: float
    most_open: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Push:
    """What acts on a piece.

    Attributes:
        lean: how far it leans forward.
        pull: horizontal force forward.
        pull_up: height of that force.
        weight: kilograms on the front of one open drawer or door; 0 for none.
        fills: whether drawers are looked at empty, filled, or whichever is worse for each.
    """

    lean: float = 0.0
    pull: float = 0.0
    pull_up: float = 0.0
    weight: float = 0.0
    fills: tuple[bool, ...] = (False,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worst:
    """The worst way to open a piece.

    Attributes:
        margin: what is left of its stability, in N·m; it tips when this is not above 0.
        open: marks of what is open.
        filled: marks of what is filled.
        weight_on: mark of what the weight is on; None without one.
    """

    margin: float
    open: tuple[str, ...]
    filled: tuple[str, ...]
    weight_on: str | None = None


def lean_on_block(block: float, spacing: float) -> float:
    """Forward lean on a block under the rear supports.

    Raises:
        ValueError: the block is as high as the supports are apart.
    """
    return asin(block / spacing)


def turning(body: Body, lean: float) -> float:
    """Moment with which a body holds the piece back; less than nothing when it tips it."""
    return body.kg * GRAVITY * (body.back * cos(lean) - body.up * sin(lean))


def margin(standing: Standing, push: Push, opened: Iterable[str], filled: Iterable[str], weight_on: str = "") -> float:
    """What is left of the stability in one state of the drawers and doors."""
    out, full = frozenset(opened), frozenset(filled)
    states = (_state(each, push, out=each.mark in out, full=each.mark in full) for each in standing.opens)
    on = (_weight(each, push) for each in standing.opens if each.mark == weight_on)
    return fsum((turning(standing.case, push.lean), *states, *on, -push.pull * push.pull_up))


def _state(each: Opens, push: Push, *, out: bool, full: bool) -> float:
    """Share of one drawer or door in the margin."""
    forward = -each.travel if out else 0.0
    held = turning(each.fill.moved(back=forward), push.lean) if full else 0.0
    return turning(each.body.moved(back=forward), push.lean) + held


def _weight(each: Opens, push: Push) -> float:
    return turning(Body(push.weight, 0.0, each.edge_back, each.edge_up), push.lean)


@dataclass(frozen=True, slots=True)
class _Choice:
    """The worse fill of a drawer or a door, shut and open."""

    of: Opens
    shut: tuple[float, bool]
    out: tuple[float, bool]

    @property
    def worsens(self) -> float:
        """How much opening it takes from the margin."""
        return self.shut[0] - self.out[0]


def worst(standing: Standing, push: Push) -> Worst:
    """The state with the least margin, over all that may be open and filled, and all that can bear the weight.

    The share of each drawer depends on its own state only, so the worst is found without trying all subsets: of those
    that may be open at once take the ones whose opening takes most. Of equal states, the first in the order given.
    """
    choices = [_choice(each, push) for each in standing.opens]
    if not push.weight:
        return _found(standing, push, choices, _opened(standing, choices, None), None)
    found = [_found(standing, push, choices, _opened(standing, choices, each), each) for each in choices]
    return min(found, key=lambda each: each.margin, default=_found(standing, push, choices, [], None))


def _choice(each: Opens, push: Push) -> _Choice:
    shut, out = (min((_state(each, push, out=way, full=full), full) for full in push.fills) for way in (False, True))
    return _Choice(each, shut, out)


def _opened(standing: Standing, choices: list[_Choice], bears: _Choice | None) -> list[_Choice]:
    """What is open in the worst case; what bears the weight is open in any case, and counts."""
    harms = sorted((each for each in choices if each is not bears and each.worsens > 0), key=lambda each: -each.worsens)
    drawers = [each for each in harms if each.of.limited]
    taken = 1 if bears is not None and bears.of.limited else 0
    room = len(drawers) if standing.most_open is None else max(0, standing.most_open - taken)
    found = [each for each in harms if not each.of.limited] + drawers[:room]
    return found if bears is None else [bears, *found]


def _found(standing: Standing, push: Push, choices: list[_Choice], out: list[_Choice], on: _Choice | None) -> Worst:
    opened = tuple(each.of.mark for each in choices if each in out)
    filled = tuple(each.of.mark for each in choices if (each.out if each in out else each.shut)[1])
    weight_on = on.of.mark if on else ""
    left = margin(standing, push, opened, filled, weight_on)
    return Worst(margin=left, open=opened, filled=filled, weight_on=weight_on or None)


def ballast(left: float, lean: float, back: float, up: float) -> float | None:
    """Kilograms at a place that bring a margin below 0 back to 0; 0 when none are needed, None when none there help."""
    if left >= 0:
        return 0.0
    each = turning(Body(1.0, 0.0, back, up), lean)
    return -left / each if each > 0 else None


def anchor(left: float, height: float) -> float:
    """Newtons that a fixing at a height must pull back with to bring a margin below 0 back to 0."""
    return max(0.0, -left / height)
