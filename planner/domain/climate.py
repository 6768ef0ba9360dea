"""The air that wood lives in: the room over the year, and the shop on the day of cutting."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Where(StrEnum):
    """Where and when wood takes up the moisture of the air."""

    DRY = "dry"
    """The room in its driest season."""
    DAMP = "damp"
    """The room in its dampest season."""
    SHOP = "shop"
    """The shop on the day of cutting."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Climate:
    """The state of wood, by the air around it or as a meter shows it; a meter reading wins.

    Attributes:
        moisture_hundredths: moisture content of the wood, in hundredths of a percent; None when nobody measured it.
        humidity_hundredths: relative humidity of the air, in hundredths of a percent; None without its temperature.
        temperature_milli_c: temperature of the air, in thousandths of a degree Celsius.
    """

    moisture_hundredths: int | None = None
    humidity_hundredths: int | None = None
    temperature_milli_c: int | None = None

    def is_said(self) -> bool:
        """Whether it says enough: a moisture content, or air that is known altogether."""
        air = self.humidity_hundredths is not None
        return air is (self.temperature_milli_c is not None) and (air or self.moisture_hundredths is not None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """The room in which the piece will stand, over the year."""

    dry: Climate
    damp: Climate
