"""Weights, forces, temperatures, shares and strengths against their definitions.

1 lb = 0.45359237 kg and 1 lbf = 4.4482216152605 N, both exact; °F = 1.8 °C + 32 (NIST SP 811, appendix B).
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.lengths import Unit
from planner.quantities import (
    COLDEST_MILLI_C,
    HOTTEST_MILLI_C,
    QuantityError,
    read_percent,
    read_pressure,
    read_temperature,
    show_force,
    show_mass,
    show_percent,
    show_temperature,
    write_percent,
    write_temperature,
)

units = st.sampled_from(Unit)
temperatures = st.integers(COLDEST_MILLI_C, HOTTEST_MILLI_C)


@pytest.mark.parametrize(
    ("said", "unit", "milli"),
    [
        ("32 °F", Unit.MM, 0),
        ("212 F", Unit.MM, None),
        ("68°F", Unit.MM, 20_000),
        ("20 C", Unit.INCH, 20_000),
        ("20 °C", Unit.INCH, 20_000),
        ("-4 deg F", Unit.INCH, -20_000),
        (70, Unit.INCH, 21_111),  # 38/1.8 = 21.1111...
        (Decimal("20.5"), Unit.MM, 20_500),
        (70, Unit.MM, None),  # 70 °C is a slip of the unit
    ],
)
def test_temperatures_by_their_definition(said: str | int | Decimal, unit: Unit, milli: int | None) -> None:
    if milli is None:
        with pytest.raises(QuantityError, match="is no temperature of a room"):
            read_temperature(said, unit)
    else:
        assert read_temperature(said, unit) == milli


@given(temperatures, units, units)
def test_a_written_temperature_is_read_again(milli: int, unit: Unit, other: Unit) -> None:
    """Its letter stands beside it, so the unit of the reader does not matter."""
    assert read_temperature(write_temperature(milli, unit), other) == milli


@given(temperatures)
def test_temperatures_are_shown_to_the_degree(milli: int) -> None:
    assert show_temperature(milli, Unit.MM) == f"{round(Fraction(milli, 1000))} °C"
    assert show_temperature(milli, Unit.INCH) == f"{round(Fraction(milli, 1000) * Fraction(9, 5) + 32)} °F"


@given(st.integers(0, 10_000))
def test_a_written_share_is_read_again(hundredths: int) -> None:
    assert read_percent(write_percent(hundredths), 100) == hundredths


def test_shares_are_shown_to_a_tenth() -> None:
    assert [show_percent(each) for each in (0, 100, 850, 1000, 1234, 1240)] == [
        "0 %", "1 %", "8.5 %", "10 %", "12.3 %", "12.4 %",
    ]  # fmt: skip


@pytest.mark.parametrize("said", ["", "x", "1/2", "5,5", "101", "-1", "1.234", "1e1", "8 %%", Decimal("NaN"), True])
def test_what_is_no_share_is_refused(said: str | Decimal) -> None:
    with pytest.raises(QuantityError) as error:
        read_percent(said, 100)
    assert "from 0 to 100" in error.value.remedy


@pytest.mark.parametrize("said", ["", "warm", "70 K", "7 0 F", "1e1 F", "F", "9" * 50, Decimal("Infinity"), True])
def test_what_is_no_temperature_is_refused(said: str | Decimal) -> None:
    with pytest.raises(QuantityError):
        read_temperature(said, Unit.INCH)


def test_strengths_by_their_definition() -> None:
    """1e6 psi = 6.894757 GPa (read); exactly 4.4482216152605/0.0254^2 Pa in a psi."""
    psi = Fraction("4.4482216152605") / Fraction("0.0254") ** 2 / 10**6
    assert read_pressure("1 psi") == psi
    assert float(read_pressure("1e6 psi")) == pytest.approx(6894.757, abs=0.0005)
    assert read_pressure("10.3 GPa") == 10_300
    assert read_pressure("85MPa") == 85


@pytest.mark.parametrize("said", ["", "10", "10 kPa", "0 GPa", "-1 MPa", "1e99 psi", "GPa"])
def test_what_is_no_strength_is_refused(said: str) -> None:
    with pytest.raises(QuantityError, match="is no stiffness or strength"):
        read_pressure(said)


def test_weights_and_forces_are_shown_in_the_project_s_unit() -> None:
    """1/0.45359237 = 2.2046 lb; 44.482216 N = 10 lbf."""
    assert (show_mass(1.0, Unit.INCH), show_mass(1.0, Unit.MM)) == ("2.2 lb", "1.0 kg")
    assert (show_mass(45.359237, Unit.INCH), show_mass(45.359237, Unit.MM)) == ("100 lb", "45 kg")
    assert (show_force(44.482216, Unit.INCH), show_force(44.482216, Unit.MM)) == ("10.0 lbf", "44 N")
