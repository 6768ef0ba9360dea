"""A tail end: what is traced on it and what is sawn away."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.domain.operation import Setting
from planner.domain.words import End, Side
from planner.lengths import Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class SawCut:
    """One straight cut, from the end to the baseline, with the waste on one side.

    Places are from the left of someone who has the inside face up and the end pointing away.

    Attributes:
        at_end_nm: where it enters.
        at_baseline_nm: where it stops.
        leans: the side to which it leans going away.
        waste: the side on which the waste is; the kerf lies there.
    """

    at_end_nm: Nm
    at_baseline_nm: Nm
    leans: Side
    waste: Side


@dataclass(frozen=True, slots=True, kw_only=True)
class TailEnd:
    """How the tails of one board end are made.

    Attributes:
        joint: its joint; the tails fit this joint's pins and no others.
        trace_from: the pin board whose end is traced.
        trace_from_end: which of its ends.
        slope: n of 1:n.
        baseline_nm: length of the tails.
        reference_edge: side on which the reference edge is, inside face up and end pointing away.
        saw_cuts: the sloping cuts, from the left.
        square_cuts_nm: places from the left of cuts along the grain, where a half-pin has wood beyond it.
        shoulder_cuts: cuts straight along the baseline, in from the edges, where the half-pins go.
        throat_nm: room the bandsaw needs between blade and column, the nearer edge towards the column.
    """

    joint: str
    board: str
    end: End
    trace_from: str
    trace_from_end: End
    width_nm: Nm
    thickness_nm: Nm
    slope: Fraction
    baseline_nm: Nm
    reference_edge: Side
    saw_cuts: tuple[SawCut, ...]
    square_cuts_nm: tuple[Nm, ...]
    shoulder_cuts: int
    throat_nm: Nm

    @property
    def straight_cuts(self) -> int:
        """All straight cuts of the end, whichever way they go."""
        return len(self.saw_cuts) + len(self.square_cuts_nm) + self.shoulder_cuts


@dataclass(frozen=True, slots=True, kw_only=True)
class TailSetting:
    """One set-up of the bandsaw and the ends sawn with it.

    Attributes:
        slope: n of the slope 1:n that the table's tilt or a wedge gives.
        leans: the way the cuts lean going away from the operator, inside face up and end pointing away.
        throat_nm: the most that any of these ends asks for between blade and column.
    """

    number: int
    slope: Fraction
    thickness_nm: Nm
    leans: Side
    throat_nm: Nm
    ends: tuple[TailEnd, ...]

    @property
    def setting(self) -> Setting:
        """The set-up as an operation names it."""
        words = f"set-up {self.number:02d}: slope 1:{float(self.slope):g}, cuts that lean {self.leans}"
        return Setting(words, (("thickness", self.thickness_nm),))

    def cuts(self, end: TailEnd) -> tuple[SawCut, ...]:
        """Which cuts of an end are made here, from the left."""
        return tuple(cut for cut in end.saw_cuts if cut.leans is self.leans)
