"""Free-standing carcases with drawers or doors, and whether they would tip forward: an estimate, no certified test.

The three tests of ASTM F2057-23 (16 CFR part 1261) as far as they are known, each with the drawers and doors in the
worst state; see ``wood/tipping_tests`` for what of them was read and what is only recalled. What the standard covers,
by height, weight and volume all together, gets a caution where it would tip; anything else a note. Whatever comes out:
anchor it to the wall. Only a piece all of named timbers can be judged.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.checks.facts import Facts
from planner.derive.standing import OnFloor, on_floor
from planner.domain.carcase import Carcase
from planner.domain.plan import Finding
from planner.domain.use import FixedTo, Floor
from planner.domain.words import Level
from planner.lengths import Grid, Nm, metres
from planner.quantities import kilograms, newtons, show_force, show_mass
from planner.wood.tipping import Push, Worst, anchor, ballast, lean_on_block, worst
from planner.wood.tipping_tests import (
    BLOCK_NM,
    CHILD_LB,
    GREATEST_PULL_UP_NM,
    PULL_LBF,
    SITUATIONS,
    Known,
    Situation,
    in_scope,
)

SOURCE = "ASTM F2057-23, 16 CFR part 1261, from public summaries; the standard itself was not read"

_BALLAST_UP_NM = Nm(2 * 64 * Grid.IN_64.step_nm)
"""2 in: ballast lies low, over the rear supports."""

_NAMED = 4


def tips(facts: Facts) -> Iterator[Finding]:
    """One finding for each carcase with drawers or doors."""
    for carcase in facts.project.carcases:
        if carcase.hanging_rail is not None and carcase.base is None:
            continue  # it hangs on the wall
        found = on_floor(carcase, facts.boards, facts.openings, facts.weights)
        if found is not None and found.standing.spacing > 0:
            yield _Judged(facts, carcase, found).finding()


@dataclass(frozen=True, slots=True)
class _Tried:
    """A situation, what acts in it, and the worst that comes of it."""

    situation: Situation
    push: Push
    worst: Worst

    @property
    def tips(self) -> bool:
        """Whether the piece tips in it."""
        return self.worst.margin <= 0


@dataclass(frozen=True, slots=True)
class _Judged:
    """A carcase on its floor, and the maker's word of it."""

    facts: Facts
    carcase: Carcase
    on_floor: OnFloor

    def finding(self) -> Finding:
        """What is to be said of it."""
        tried = [self._tried(each) for each in SITUATIONS]
        tipping = [each for each in tried if each.tips]
        fixed = self.carcase.use.fixed_to is FixedTo.WALL
        covered = in_scope(self.on_floor.height_nm, self.on_floor.kg, self.on_floor.volume)
        said = self._falls(tipping) if tipping else self._stands(tried)
        return Finding(
            code="tips" if tipping and not fixed else "anchor",
            level=Level.CAUTION if tipping and covered and not fixed else Level.NOTE,
            marks=(self.carcase.ring.mark,),
            text=f"{said} {_scope(covered=covered)}",
            remedy=" ".join((*self._remedy(tipping, fixed=fixed), _unsure(tried))),
            source=SOURCE,
        )

    def _tried(self, situation: Situation) -> _Tried:
        standing = self.on_floor.standing
        leans = situation.carpet and self.carcase.use.floor is Floor.CARPET
        push = Push(
            lean=lean_on_block(metres(BLOCK_NM), standing.spacing) if leans else 0.0,
            pull=newtons(PULL_LBF) if situation.pull else 0.0,
            pull_up=min(standing.height, metres(GREATEST_PULL_UP_NM)),
            weight=kilograms(CHILD_LB) if situation.child else 0.0,
            fills=situation.fills,
        )
        return _Tried(situation, push, worst(standing, push))

    # --- in words ------------------------------------------------------------------------------------------

    def _falls(self, tipping: Sequence[_Tried]) -> str:
        worse = min(tipping, key=lambda each: each.worst.margin)
        others = [each.situation.name for each in tipping if each is not worse]
        also = f" It also tips in these tests: {', '.join(others)}." if others else ""
        return (
            f"Left free, {self.carcase.ring.mark} would tip forward in the worst of three situations: "
            f"{self._state(worse)}. It would take {self._force(-worse.worst.margin)} at its top to hold it.{also}"
        )

    def _stands(self, tried: Sequence[_Tried]) -> str:
        least = min(tried, key=lambda each: each.worst.margin)
        return (
            f"By this estimate {self.carcase.ring.mark} would stand in all three situations. The nearest to tipping: "
            f"{self._state(least)}; {self._force(least.worst.margin)} at its top would tip it."
        )

    def _state(self, tried: _Tried) -> str:
        found, opens, unit = tried.worst, self.on_floor.standing.opens, self.facts.project.unit
        said = [tried.situation.does]
        if tried.push.pull:
            said.append(f"with {show_force(tried.push.pull, unit)}")
        if found.weight_on:
            said.append(f"{show_mass(tried.push.weight, unit)} on {found.weight_on}")
        if tried.push.lean:
            said.append("leaning forward as on carpet")
        said.append(f"open: {_named(found.open, len(opens))}")
        fills = [each.mark for each in opens if each.fill.kg]
        if fills:
            said.append(f"filled: {_named(found.filled, len(opens))}")
        return "; ".join(said)

    def _force(self, moment: float) -> str:
        return show_force(moment / self.on_floor.standing.height, self.facts.project.unit)

    def _remedy(self, tipping: Sequence[_Tried], *, fixed: bool) -> Iterator[str]:
        standing, unit = self.on_floor.standing, self.facts.project.unit
        if not tipping:
            yield "Anchor it to the wall all the same."
            return
        pull = max(anchor(each.worst.margin, standing.height) for each in tipping)
        hold = (
            f"a fixing at its top must hold at least {show_force(pull, unit)}, and many times that for a child's jerk"
        )
        yield f"Fixed to the wall, as you say: {hold}." if fixed else f"Anchor it to the wall: {hold}."
        if fixed:
            return
        least = [
            ballast(each.worst.margin, each.push.lean, standing.spacing, metres(_BALLAST_UP_NM)) for each in tipping
        ]
        if all(kg is not None for kg in least):
            kg = show_mass(max(kg for kg in least if kg is not None), unit)
            yield f"Ballast of {kg} low over the rear supports would balance it, no more."
        if standing.most_open is None and len(standing.opens) > 1:
            yield "A lock that lets one drawer open at a time helps."


def _named(marks: Sequence[str], of: int) -> str:
    if not marks:
        return "none"
    if len(marks) == of:
        return "all"
    return ", ".join(marks) if len(marks) <= _NAMED else f"{len(marks)} of {of}"


def _scope(*, covered: bool) -> str:
    if covered:
        return "For bedrooms and clothing its height, weight and volume come under the published standard."
    return "By its height, weight and volume it does not come under the published standard for clothing storage."


def _unsure(tried: Sequence[_Tried]) -> str:
    details = [(what, known) for each in tried for what, known in each.situation.known if known is not Known.READ]
    said = "; ".join(f"{what} ({known})" for what, known in dict.fromkeys(details))
    return (
        f"This is an estimate and no certified test. Not verified: {said}. Hardware is not weighed. "
        "Follow the regulations that hold where you live."
    )
