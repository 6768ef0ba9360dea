"""Whether drawers still run in their openings when they have swollen, and how much room to leave above them today.

A drawer's boards lie with their width upright, so it grows in height; the uprights at its sides run with the grain and
keep the opening as it is. Sideways it hardly grows, since its front and back run with the grain that way. How the
thickness of the rails swells, by a tenth of a millimetre or so, is left out. Least clearance: common practice, no
source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.checks.facts import Facts
from planner.checks.moving import RUNS_NM, Growth, Moving
from planner.domain.drawer import Drawer
from planner.domain.plan import BoardSize, Finding, OpeningSize
from planner.domain.solid import UP
from planner.domain.words import Level, Role
from planner.wood.least import least

_RING = frozenset({Role.FRONT, Role.RIGHT, Role.BACK, Role.LEFT})


@dataclass(frozen=True, slots=True, kw_only=True)
class _Kind:
    """What is fitted into an opening, and how the maker says its clearance."""

    one: str
    several: str
    key: str
    where: str
    sides: int


_DRAWER = _Kind(one="Drawer", several="Drawers", key="top_clearance", where="above", sides=1)
_FRONT = _Kind(one="Applied front", several="Applied fronts", key="gap", where="above and below", sides=2)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Fit:
    """Boards of a drawer in the height of their opening.

    Attributes:
        mark: of the drawer, or of its front.
        grows: growth of each board, as parts of its height.
        opening: growth of the opening, as parts of its height.
    """

    kind: _Kind
    mark: str
    carcase: str
    height: int
    boards: Sequence[BoardSize]
    grows: Sequence[Growth]
    opening: Growth

    @property
    def today(self) -> int:
        """Clearance of the tallest board."""
        return self.height - max(board.place.size(UP) for board in self.boards)

    def tightest(self, less: int = 0) -> float:
        """Least clearance over the year, the boards made so much lower."""
        return min(self.height - size - over.most for size, over in self._over(less))

    def widest(self) -> float:
        """Greatest clearance over the year, of the board that has least then."""
        return min(self.height - size - over.least for size, over in self._over(0))

    def _over(self, less: int) -> Iterator[tuple[int, Growth]]:
        """Each board's height, and how much more it grows than the opening."""
        for board, grows in zip(self.boards, self.grows, strict=True):
            size = board.place.size(UP) - less
            yield size, grows.times(size).plus(self.opening.times(-self.height))


def drawers_run(facts: Facts) -> Iterator[Finding]:
    """One finding for all drawers that would bind or run tight alike; one note for the others of each carcase."""
    moving = Moving(facts)
    tight: dict[tuple[_Kind, str, str], list[_Fit]] = {}
    fine: dict[str, list[_Fit]] = {}
    for fit in (fit for opening in facts.openings for fit in _fits(moving, opening)):
        if fit.tightest() < RUNS_NM:
            shown = f"{fit.today} {moving.show(fit.tightest())} {_cut(moving, fit)}"
            tight.setdefault((fit.kind, fit.carcase, shown), []).append(fit)
        else:
            fine.setdefault(fit.carcase, []).append(fit)
    for fits in tight.values():
        yield _too_tight(moving, fits)
    for carcase, fits in fine.items():
        yield _note(moving, carcase, fits)


def _fits(moving: Moving, opening: OpeningSize) -> Iterator[_Fit]:
    """The ring of the drawer in an opening, and its applied front if that stands within it."""
    if not isinstance(opening.space.holds, Drawer) or opening.drawer is None:
        return
    own = [board for board in moving.facts.boards.values() if board.box == opening.drawer and moving.is_known(board)]
    ring = [board for board in own if board.role in _RING]
    front = [board for board in own if board.role is Role.APPLIED_FRONT and _stands_within(board, opening)]
    for kind, boards in ((_DRAWER, ring), (_FRONT, front)):
        if boards:
            yield _Fit(
                kind=kind,
                mark=opening.drawer if kind is _DRAWER else boards[0].mark,
                carcase=opening.carcase,
                height=opening.height_nm,
                boards=boards,
                grows=[moving.parts(board, UP) for board in boards],
                opening=moving.parts(moving.facts.boards[opening.left], UP),
            )


def _stands_within(board: BoardSize, opening: OpeningSize) -> bool:
    (low, high), (start, stop) = board.place.up, opening.place.up
    return start <= low and high <= stop


def _cut(moving: Moving, fit: _Fit) -> int:
    """The least by which its boards must be lower to run."""
    most = fit.height // moving.step * moving.step
    return least(lambda less: fit.tightest(less) >= RUNS_NM, moving.step, most) or most


def _too_tight(moving: Moving, fits: Sequence[_Fit]) -> Finding:
    fit, show = fits[0], moving.show
    tightest, cut, kind = fit.tightest(), _cut(moving, fits[0]), fits[0].kind
    binds = tightest <= 0
    swollen = f"{show(-tightest)} too high, so it binds" if binds else f"only {show(tightest)}"
    leave = moving.show_up((fit.today + cut) / kind.sides)
    return Finding(
        code="drawer-binds" if binds else "drawer-tight",
        level=Level.STOP if binds else Level.CAUTION,
        marks=tuple(each.mark for each in fits),
        text=f"{_named(fits)}: {show(fit.today)} {kind.where} today; swollen in the damp season, {swollen}. "
        f"{moving.seasons.said()}",
        remedy=f'Plane {show(cut)} off the height, or say {kind.key} = "{leave}". Quarter-sawn boards move less.',
        source=moving.source(*(board for each in fits for board in each.boards)),
    )


def _note(moving: Moving, carcase: str, fits: Sequence[_Fit]) -> Finding:
    """What the drawers of a carcase have above them, now and over the year; those that are alike together."""
    show = moving.show
    alike: dict[tuple[_Kind, str], list[_Fit]] = {}
    for fit in fits:
        leave = moving.show_up(RUNS_NM + fit.today - fit.tightest())
        figures = (
            f"{show(fit.today)} {fit.kind.where} today, where {leave} would do; "
            f"{show(fit.tightest())} at the tightest, {show(fit.widest())} at the widest"
        )
        alike.setdefault((fit.kind, figures), []).append(fit)
    listed = ". ".join(f"{_named(group)}: {figures}" for (_, figures), group in alike.items())
    return Finding(
        code="drawer-room",
        level=Level.NOTE,
        marks=(carcase,),
        text=f"{listed}. {moving.seasons.said()}",
        remedy="Before you fit them, read the meter on the boards and say it: [shop] moisture.",
        source=moving.source(*(board for fit in fits for board in fit.boards)),
    )


def _named(fits: Sequence[_Fit]) -> str:
    kind = fits[0].kind
    return f"{kind.several if len(fits) > 1 else kind.one} {', '.join(fit.mark for fit in fits)}"
