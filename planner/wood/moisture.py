"""How damp wood becomes in the air around it.

Equilibrium moisture content after Wood Handbook (FPL-GTR-190, 2010) Eq. 4-5, in its Fahrenheit and Celsius forms,
which differ by up to 0.013; the constants as in Simpson, FPL-RN-0268 (read). Against the printed Table 4-2 the equation
is off by 0.067 at most. Measured tables of the 1950s differ from it by up to 0.9.

Moisture contents are in percent, humidities are parts of 1.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from planner.domain.climate import Climate, Where
from planner.domain.project import Project, climates
from planner.quantities import HUNDREDTHS, show_percent

_Constants: TypeAlias = tuple[tuple[float, float, float], ...]
"""Of W, K, K1 and K2: what stands alone, with T, and with T²."""

FAHRENHEIT: _Constants = (
    (330.0, 0.452, 0.00415),
    (0.791, 0.000463, -0.000000844),
    (6.34, 0.000775, -0.0000935),
    (1.09, 0.0284, -0.0000904),
)
CELSIUS: _Constants = (
    (349.0, 1.29, 0.0135),
    (0.805, 0.000736, -0.00000273),
    (6.27, -0.00938, -0.000303),
    (1.91, 0.0407, -0.000293),
)

_MILLI = 1000
_HALVINGS = 60


def equilibrium(temperature: float, humidity: float, constants: _Constants = CELSIUS) -> float:
    """Moisture content that wood comes to in air of this temperature and relative humidity.

    >>> round(equilibrium(20.0, 0.5), 3)
    9.271
    """
    w, k, k1, k2 = (alone + with_t * temperature + with_t2 * temperature**2 for alone, with_t, with_t2 in constants)
    kh = k * humidity
    both = k1 * k2 * kh**2
    return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * both) / (1 + k1 * kh + both))


def humidity_for(moisture: float, temperature: float, constants: _Constants = CELSIUS) -> float:
    """Relative humidity in which wood comes to this moisture content: ``equilibrium`` turned round, by halving.

    Returns:
        A part of 1; 1 for wood that is damper than air can make it.
    """
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if equilibrium(temperature, middle, constants) < moisture else (low, middle)
    return high


def from_weights(wet: float, oven_dry: float) -> float:
    """Moisture content from the weights of a piece before and after it was dried out in an oven."""
    return (wet - oven_dry) / oven_dry * 100


def moisture(climate: Climate) -> float:
    """Moisture content that a climate means: the meter's reading, else what wood comes to in its air.

    Raises:
        ValueError: the climate says neither.
    """
    if climate.moisture_hundredths is not None:
        return climate.moisture_hundredths / HUNDREDTHS
    if climate.humidity_hundredths is None or climate.temperature_milli_c is None:
        raise ValueError("a climate says a moisture content, or both humidity and temperature")
    return equilibrium(climate.temperature_milli_c / _MILLI, climate.humidity_hundredths / HUNDREDTHS / 100)


# --- what is reckoned with ---------------------------------------------------------------------------------

ASSUMED = {Where.DRY: 6.0, Where.DAMP: 10.0, Where.SHOP: 8.0}
"""What is taken where nothing is said: most of the United States, indoors, 8 % on average and 6 to 10 % of single
pieces (Wood Handbook Table 13-2, from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasons:
    """Moisture contents of the wood of a piece, in percent.

    Attributes:
        today: on the day of cutting.
        dry: in the driest season.
        damp: in the dampest season.
        assumed: which of them nobody said.
    """

    today: float
    dry: float
    damp: float
    assumed: frozenset[Where] = frozenset()

    def said(self) -> str:
        """What is reckoned with, in words."""
        figures = {
            where: show_percent(round(content * HUNDREDTHS))
            for where, content in ((Where.SHOP, self.today), (Where.DRY, self.dry), (Where.DAMP, self.damp))
        }
        unsaid = ", assumed" if self.assumed >= {Where.DRY, Where.DAMP} else ""
        today = ", assumed" if Where.SHOP in self.assumed else ""
        return (
            f"Wood at {figures[Where.SHOP]} today{today}; {figures[Where.DRY]} to {figures[Where.DAMP]} "
            f"over the year{unsaid}."
        )


def seasons(project: Project) -> Seasons:
    """The moisture contents that a project's boards are reckoned with; what is not said is assumed."""
    said = {where: moisture(climate) for where, climate in climates(project)}
    dry, damp = sorted(said.get(where, ASSUMED[where]) for where in (Where.DRY, Where.DAMP))
    return Seasons(
        today=said.get(Where.SHOP, ASSUMED[Where.SHOP]),
        dry=dry,
        damp=damp,
        assumed=frozenset(Where) - said.keys(),
    )
