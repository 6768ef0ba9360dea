"""Router cutters: the speed of the rim, and the speeds that are commonly printed for a diameter. Pure figures.

``v = π·D·n``. The limit marked on the cutter itself rules (EN 847-1 wants it marked; from memory).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from planner.lengths import Nm, metres

_SECONDS = 60


def rim_speed(diameter: Nm, rpm: float) -> float:
    """Speed of a cutter's rim in metres a second."""
    return pi * metres(diameter) * rpm / _SECONDS


@dataclass(frozen=True, slots=True)
class PrintedSpeed:
    """A line of a chart: cutters up to a diameter, and the range of speeds printed as their greatest."""

    up_to_sixteenths: int
    least_rpm: int
    most_rpm: int


PRINTED = (
    PrintedSpeed(16, 22_000, 24_000),
    PrintedSpeed(32, 18_000, 22_000),
    PrintedSpeed(40, 12_000, 16_000),
    PrintedSpeed(56, 8_000, 12_000),
)
"""To 1 in, 2 in, 2 1/2 in and 3 1/2 in of diameter.

Trade guidance, no standard (read: progressivehandymanservices.com guide chart). Another page advises less than about
100 mph of rim speed (read: petrocoms.net/speed.html); the two disagree at 2 in, so both are advice.
"""


def printed_speed(sixteenths: int) -> PrintedSpeed | None:
    """What charts print for a diameter, rounded up to sixteenths of an inch; None for anything larger."""
    return next((line for line in PRINTED if sixteenths <= line.up_to_sixteenths), None)
