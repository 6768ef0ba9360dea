"""Slopes of sleds: two ways to say them, one way to keep them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.refusal import RefusalError
from planner.intake.slope import read_slope, write_slope


@pytest.mark.parametrize(
    ("said", "micro"),
    [
        ("1:8", 8_000_000),
        ("1:6", 6_000_000),
        ("1 : 7.5", 7_500_000),
        ("1:8.144346", 8_144_346),
        ("1:1", 1_000_000),
        ("1:20", 20_000_000),
        ("45 deg", 1_000_000),
        ("45°", 1_000_000),
        # cotangents from a printed table of functions: cot 7° = 8.1443464, cot 8° = 7.1153697, cot 9.5° = 5.9757644
        ("7 deg", 8_144_346),
        ("8deg", 7_115_370),
        ("9.5 deg", 5_975_764),
    ],
)
def test_slopes_are_kept_in_millionths_of_the_run(said: str, micro: int) -> None:
    assert read_slope(said) == micro


@given(st.integers(1_000_000, 20_000_000))
def test_what_is_written_reads_back_the_same(micro: int) -> None:
    assert read_slope(write_slope(micro)) == micro


@pytest.mark.parametrize(("micro", "said"), [(8_000_000, "1:8"), (7_500_000, "1:7.5"), (20_000_000, "1:20")])
def test_slopes_are_written_short(micro: int, said: str) -> None:
    assert write_slope(micro) == said


@given(st.integers(3, 44))
def test_degrees_are_those_of_the_fence(degrees: int) -> None:
    """By the angle whose tangent is 1/n; half a millionth of the run is 3e-5 degrees at most."""
    assert math.degrees(math.atan2(1_000_000, read_slope(f"{degrees} deg"))) == pytest.approx(degrees, abs=5e-5)


@pytest.mark.parametrize(
    "said",
    ["", "8", "1/8", "8:1", "1:", ":8", "1:eight", "1:8:1", "1:8.1234567", "-1:8", "1:-8", "7", "7 degrees", "7,5 deg",
     "1:8\n", " 1:8", "1:٨", "1:1e1", "1:nan", 8, 8.0, True, None, ["1:8"]],
)  # fmt: skip
def test_anything_else_is_refused(said: object) -> None:
    with pytest.raises(RefusalError, match="is not a slope"):
        read_slope(said)


@pytest.mark.parametrize(
    ("said", "how"),
    [("1:0.999999", "steep"), ("1:0", "steep"), ("46 deg", "steep"), ("90 deg", "steep"), ("99 deg", "steep"),
     ("1:20.000001", "flat"), ("1:100", "flat"), ("2.8 deg", "flat"), ("0 deg", "flat")],
)  # fmt: skip
def test_slopes_that_no_one_cuts_are_refused(said: str, how: str) -> None:
    with pytest.raises(RefusalError, match=f"too {how}"):
        read_slope(said)
