"""Moisture from air: the handbook's table, its own inverse, and what must hold of any air."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.climate import Climate
from planner.lengths import Unit
from planner.quantities import read_percent, read_temperature
from planner.wood.moisture import CELSIUS, FAHRENHEIT, equilibrium, from_weights, humidity_for, moisture
from tests.wood.cases import CASES, agrees

TABLE = [
    (float(row["temp_F"]), float(row["rh_pct"]) / 100, float(row["emc_pct"]))
    for row in csv.DictReader(Path(__file__).with_name("emc_table.csv").read_text(encoding="utf-8").splitlines())
]
"""Wood Handbook FPL-GTR-190 (2010) Table 4-2, 30 to 200 F and 5 to 95 % (read; the source stands in each row)."""

TEMPERATURES = st.floats(-1, 93)
HUMIDITIES = st.floats(0, 0.99)


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


def test_all_cells_of_the_handbooks_table() -> None:
    """The table is printed to a tenth, so half of that is rounding; a recount in another program gave at most 0.067."""
    assert len(TABLE) == 342
    for temperature, humidity, printed in TABLE:
        assert abs(equilibrium(temperature, humidity, FAHRENHEIT) - printed) <= 0.067
        assert abs(equilibrium(celsius(temperature), humidity, CELSIUS) - printed) <= 0.067


def test_most_cells_are_the_printed_ones_to_the_tenth() -> None:
    """A recount gave 315 of the Fahrenheit form and 332 of the Celsius form."""
    alike = [
        sum(round(found, 1) == printed for found, printed in pairs)
        for pairs in (
            [(equilibrium(t, h, FAHRENHEIT), printed) for t, h, printed in TABLE],
            [(equilibrium(celsius(t), h, CELSIUS), printed) for t, h, printed in TABLE],
        )
    ]
    assert alike == [315, 332]


@pytest.mark.parametrize(("temperature", "humidity"), sorted({(t, h) for t, h, _ in TABLE}))
def test_both_forms_agree(temperature: float, humidity: float) -> None:
    one, other = equilibrium(temperature, humidity, FAHRENHEIT), equilibrium(celsius(temperature), humidity, CELSIUS)
    assert abs(one - other) <= 0.013


@pytest.mark.parametrize("case", [each for each in CASES if each.startswith("emc-")])
def test_recomputed_and_quoted_moistures(case: str) -> None:
    said = CASES[case]["inputs"]
    if "temp_F" in said:
        agrees(case, emc_pct=equilibrium(said["temp_F"], said["rh"], FAHRENHEIT))
    else:
        agrees(case, emc_pct=equilibrium(said["temp_C"], said["rh"], CELSIUS))


@pytest.mark.parametrize("case", [each for each in CASES if each.startswith("mc-")])
def test_moisture_by_weighing(case: str) -> None:
    said = CASES[case]["inputs"]
    agrees(case, mc_pct=from_weights(said["wet"], said["oven_dry"]))


def test_the_trades_rule_of_thumb_at_room_temperature() -> None:
    """30 % humidity is 6 % moisture, 50 is 9, 65 is 12, 80 is 16 (woodworkingnetwork.com, read); whole numbers."""
    assert [round(equilibrium(21.0, h)) for h in (0.30, 0.50, 0.65, 0.80)] == [6, 9, 12, 16]


@given(TEMPERATURES, HUMIDITIES, HUMIDITIES)
def test_damper_air_never_makes_drier_wood(temperature: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert 0 <= equilibrium(temperature, low) <= equilibrium(temperature, high)


@given(TEMPERATURES, HUMIDITIES)
def test_humidity_is_found_again_from_moisture(temperature: float, humidity: float) -> None:
    assert humidity_for(equilibrium(temperature, humidity), temperature) == pytest.approx(humidity, abs=1e-6)


def test_wood_damper_than_any_air_gives_full_humidity() -> None:
    assert humidity_for(60.0, 20.0) == 1.0


def test_a_meter_reading_wins_over_the_air() -> None:
    air = Climate(humidity_hundredths=5000, temperature_milli_c=20_000)
    assert moisture(air) == pytest.approx(9.271, abs=0.001)  # case emc-20C-50
    assert moisture(Climate(moisture_hundredths=725, humidity_hundredths=5000, temperature_milli_c=20_000)) == 7.25
    with pytest.raises(ValueError, match="both humidity and temperature"):
        moisture(Climate(humidity_hundredths=5000))


def test_seventy_fahrenheit_is_read_as_such() -> None:
    """Table 4-2 prints 9.2 for 70 F and 50 % (read); 70 F is 21.111 C."""
    degrees = read_temperature("70 °F", Unit.MM)
    assert degrees == read_temperature(70, Unit.INCH) == 21_111
    air = Climate(humidity_hundredths=read_percent("50 %", 100), temperature_milli_c=degrees)
    assert round(moisture(air), 1) == 9.2
