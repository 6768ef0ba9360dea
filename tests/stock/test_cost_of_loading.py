"""Commands that cut nothing load neither numpy nor HiGHS, and HiGHS never writes where our own output goes."""

from __future__ import annotations

import subprocess
import sys

import pytest

from planner.lengths import Nm
from planner.stock.cutting import cut
from planner.stock.pieces import Board, Job, Part, Saw, Wish


@pytest.mark.parametrize("module", ["planner.cli.main", "planner.stock.cutting", "planner.stock.proof"])
def test_nothing_heavy_is_loaded_before_it_is_needed(module: str) -> None:
    code = f"import sys, {module}; print({{'numpy', 'highspy'}} & set(sys.modules))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "set()"


def test_the_solver_says_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    part = Part(marks=tuple("abcdefg"), length_nm=Nm(40), width_nm=Nm(7))
    odd = Part(marks=tuple("hijkl"), length_nm=Nm(33), width_nm=Nm(9))
    boards = (Board(mark="B", length_nm=Nm(100), width_nm=Nm(20), cost=7),)
    job = Job(parts=(part, odd), boards=boards, saw=Saw(rip_nm=Nm(1), crosscut_nm=Nm(1)), wish=Wish())
    assert list(cut(job, rounds=5))
    assert capfd.readouterr() == ("", "")
