"""Lengths: what a maker writes is read exactly, and what is shown can be read back.

Factors are checked against their definitions: 1 in = 25.4 mm and 1 ft = 0.3048 m, both exact (NIST SP 811, appendix B).
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from planner.lengths import (
    GREATEST_M,
    Grid,
    LengthError,
    Nm,
    Unit,
    in_unit,
    mm,
    nearest,
    on_grid,
    read_length,
    show_length,
    total,
    write_length,
)

IN = 25_400_000
FT = 304_800_000
MM = 1_000_000
GREATEST = 10_000 * MM

units = st.sampled_from(Unit)
grids = st.sampled_from(Grid)
any_length = st.integers(0, GREATEST).map(Nm)


# --- reading -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "nm"),
    [
        ("23 1/2 in", 23 * IN + IN // 2),
        ("23-1/2 in", 23 * IN + IN // 2),
        ('23-1/2"', 23 * IN + IN // 2),
        ('23 1/2"', 23 * IN + IN // 2),
        ("23½ in", 23 * IN + IN // 2),
        ("23 ½ inches", 23 * IN + IN // 2),
        ("23 1\N{FRACTION SLASH}2\N{DOUBLE PRIME}", 23 * IN + IN // 2),
        ("¾ in", IN * 3 // 4),
        ("⅜”", IN * 3 // 8),
        ("3/4 in", IN * 3 // 4),
        ("1/64in", 396_875),
        ("63/64 inch", 63 * 396_875),
        ("3/2 in", IN * 3 // 2),
        ("0.75 in", IN * 3 // 4),
        (".5 in", IN // 2),
        ("5. in", 5 * IN),
        ("0.001 in", 25_400),
        ("1' 6 1/2\"", FT + 6 * IN + IN // 2),
        ("1'6-1/2\"", FT + 6 * IN + IN // 2),
        ("1'-6 1/2\"", FT + 6 * IN + IN // 2),
        ("1′ 6½″", FT + 6 * IN + IN // 2),
        ("1’ 6½”", FT + 6 * IN + IN // 2),
        ("1 ft 6 in", FT + 6 * IN),
        ("1ft6in", FT + 6 * IN),
        ("2 feet", 2 * FT),
        ("1 foot 1/2 inch", FT + IN // 2),
        ("6''", 6 * IN),
        ("1' 6''", FT + 6 * IN),
        ("1 1/2'", FT * 3 // 2),
        ("19 mm", 19 * MM),
        ("19mm", 19 * MM),
        ("19 MM", 19 * MM),
        ("  19   mm ", 19 * MM),
        ("19\N{NO-BREAK SPACE}mm", 19 * MM),
        ("19\N{THIN SPACE}mm", 19 * MM),
        ("1.9 cm", 19 * MM),
        ("0.019 m", 19 * MM),
        ("12.3456 mm", 12_345_600),
        ("0.000001 mm", 1),
        ("10 m", GREATEST),
    ],
)
@pytest.mark.parametrize("unit", Unit)
def test_a_length_with_its_unit_reads_the_same_in_any_project(said: str, nm: int, unit: Unit) -> None:
    assert read_length(said, unit) == nm


@pytest.mark.parametrize(
    ("said", "inch", "metric"),
    [
        ("12", 12 * IN, 12 * MM),
        ("12.5", IN * 25 // 2, 12_500_000),
        ("12 1/2", IN * 25 // 2, 12_500_000),
        (12, 12 * IN, 12 * MM),
        (Decimal("12.5"), IN * 25 // 2, 12_500_000),
        (Decimal("1.25E1"), IN * 25 // 2, 12_500_000),
    ],
)
def test_a_bare_number_counts_in_the_unit_of_the_project(said: str | int | Decimal, inch: int, metric: int) -> None:
    assert read_length(said, Unit.INCH) == inch
    assert read_length(said, Unit.MM) == metric


@given(feet=st.integers(0, 20), inches=st.integers(0, 11), sixty_fourths=st.integers(0, 63))
@example(feet=1, inches=6, sixty_fourths=32)
def test_feet_inches_and_fractions_add_up(feet: int, inches: int, sixty_fourths: int) -> None:
    """Expected length by adding up definitions; the fraction is written unreduced, as read off a rule."""
    expected = feet * FT + inches * IN + sixty_fourths * 396_875
    for inch_mark in ('"', "in", " inches"):
        said = f"{feet}' {inches} {sixty_fourths}/64{inch_mark}"
        assert read_length(said, Unit.MM, zero=True) == expected


@given(whole=st.integers(0, 9_999), places=st.integers(0, 6), unit=units, data=st.data())
def test_decimals_are_exact(whole: int, places: int, unit: Unit, data: st.DataObject) -> None:
    part = data.draw(st.integers(0, 10**places - 1))
    said = f"{whole}.{part:0{places}d} mm" if places else f"{whole} mm"
    assert read_length(said, unit, zero=True) == whole * MM + Fraction(part, 10**places) * MM


def test_the_finest_fraction_of_an_inch_is_a_sixty_fourth() -> None:
    """1/64 in is 396 875 nm; 1/128 in would be 198 437.5 nm."""
    assert read_length("1/64 in", Unit.INCH) == 396_875
    assert read_length("2/128 in", Unit.INCH) == 396_875
    with pytest.raises(LengthError, match=r"1/128 in.*down to 1/64"):
        read_length("1/128 in", Unit.INCH)


# --- refusals ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "said",
    [
        "", " ", "-", "in", "mm", "one inch", "1 yd", "1 mile", "1 in mm", "1 in in", "1 2 in", "1/2/3 in", "1 1/2 1/2",
        "1/0 in", "1 3/2 in", "1 2/2 in", "/2 in", "1/ in", "1 / 2 in", "1,5 mm", "1_000 mm", "1.2.3 mm", ".", "1..2",
        "1e3 mm", "1e400", "inf", "nan", "Infinity mm", "0x10", "+5 mm", "2**3 mm", "19 mm # x", "19 mm; 20 mm",
        "1' 6", "1' 6 mm", "6\" 1'", "1 in 6 in", "1' 1'", "5' -6\"", "1 1/2-", "1--1/2 in", "19 m m", "true", "None",
        "½½ in", "½5 in", "¾0 in", "3½4 in", "½/2 in", "١٤ in", "\N{FULLWIDTH DIGIT ONE} mm", "² in", "五 in", "19 ㎜",
        "19 mm\0", "19 mm\N{ZERO WIDTH SPACE}",
    ],
)  # fmt: skip
def test_nonsense_is_refused_and_quoted(said: str) -> None:
    for unit in Unit:
        with pytest.raises(LengthError) as refused:
            read_length(said, unit)
        assert repr(said) in str(refused.value)


@pytest.mark.parametrize("said", [True, False, 1.5, None, [19], {"mm": 19}, b"19 mm", 3 + 4j])
def test_what_is_neither_text_nor_number_is_refused(said: object) -> None:
    with pytest.raises(LengthError, match="is not a length"):
        read_length(said, Unit.MM)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "said", ["-1 mm", "-1/2 in", "\N{MINUS SIGN}1 mm", "\N{EN DASH}1 mm", -1, Decimal("-0.5"), -(10**30)]
)
def test_negative_lengths_are_refused(said: str | int | Decimal) -> None:
    with pytest.raises(LengthError, match="is negative"):
        read_length(said, Unit.MM, zero=True)


@pytest.mark.parametrize("said", ["0", "0 mm", "0/4 in", "0' 0\"", "0.000", 0, Decimal("0.0"), Decimal("0E-10")])
def test_nothing_is_a_length_only_where_it_makes_sense(said: str | int | Decimal) -> None:
    assert read_length(said, Unit.MM, zero=True) == 0
    with pytest.raises(LengthError, match="must be more than 0"):
        read_length(said, Unit.MM)


@pytest.mark.parametrize("said", ["10.0001 m", "10001 mm", "394 in", "33 ft", "32' 9 3/4\"", 10_001, "9" * 39, 10**39])
def test_lengths_over_ten_metres_are_refused(said: str | int) -> None:
    with pytest.raises(LengthError, match=f"over {GREATEST_M} m"):
        read_length(said, Unit.MM)


@pytest.mark.parametrize(
    "said", ["0.0000001 mm", "1/3 in", "0.00000001 in", "1/128 in", Decimal("1e-9"), Decimal("1e-30")]
)
def test_lengths_finer_than_a_nanometre_are_refused(said: str | Decimal) -> None:
    with pytest.raises(LengthError, match="not a whole number of nanometres"):
        read_length(said, Unit.INCH)


@pytest.mark.parametrize(
    "said",
    [
        10**40,
        10**5_000,  # CPython refuses to print it
        -(10**5_000),
        Decimal("1e400"),
        Decimal("1e999999999999999"),
        Decimal("1e-999999999999999"),
        Decimal("1." + "0" * 5_000 + "1"),
        "1" * 41,
        "19 mm" + " " * 40 + "x",  # the end of a long text counts too
        "1" + " " * 40 + "1/2 in",
        "0." + "3" * 5_000,
        "1" * 1_000_000,
    ],
    ids=lambda said: f"{type(said).__name__} {str(said)[:8]}" if isinstance(said, str) else type(said).__name__,
)
def test_enormous_numbers_and_texts_are_refused_at_once(said: str | int | Decimal) -> None:
    with pytest.raises(LengthError) as refused:
        read_length(said, Unit.MM)
    assert len(str(refused.value)) < 300


@pytest.mark.parametrize(
    "said", [Decimal("NaN"), Decimal("-NaN"), Decimal("Infinity"), Decimal("-Infinity"), Decimal("sNaN")]
)
def test_what_is_no_finite_number_is_refused(said: Decimal) -> None:
    with pytest.raises(LengthError):
        read_length(said, Unit.MM)


def outcome(said: str | int | Decimal, unit: Unit) -> Nm | str:
    """The length, or the message of its refusal."""
    try:
        return read_length(said, unit, zero=True)
    except LengthError as error:
        return str(error)


@given(st.text(max_size=50) | st.text(st.sampled_from("0123456789 /-.'\"½¾″′inftm"), max_size=20), units)
def test_any_text_is_a_length_or_refused(said: str, unit: Unit) -> None:
    found = outcome(said, unit)
    assert found.isprintable() if isinstance(found, str) else 0 <= found <= GREATEST


@given(st.integers() | st.decimals(), units)
def test_any_number_is_a_length_or_refused(said: int | Decimal, unit: Unit) -> None:
    """A number that is taken is taken exactly."""
    found = outcome(said, unit)
    if not isinstance(found, str):
        assert found == Fraction(said) * (IN if unit is Unit.INCH else MM)


# --- showing -------------------------------------------------------------------------------------------------


@given(grids, st.data())
def test_what_is_shown_on_a_grid_reads_back_exactly(grid: Grid, data: st.DataObject) -> None:
    length = Nm(data.draw(st.integers(0, GREATEST // grid.step_nm)) * grid.step_nm)
    shown = show_length(length, grid)
    assert "~" not in shown
    assert read_length(shown, grid.unit, zero=True) == length
    for unit in Unit:
        assert read_length(show_length(length, grid, with_unit=True), unit, zero=True) == length


@given(any_length, grids)
def test_what_is_shown_is_within_half_a_step_and_marked_when_rounded(length: Nm, grid: Grid) -> None:
    shown = show_length(length, grid)
    read = (
        read_length(shown.removeprefix("~"), grid.unit, zero=True) if length < GREATEST - IN else on_grid(length, grid)
    )
    assert read == on_grid(length, grid)
    assert abs(read - length) * 2 <= grid.step_nm
    assert shown.startswith("~") == (read != length)


@pytest.mark.parametrize(
    ("nm", "grid", "shown"),
    [
        (5 * IN + 11 * 793_750, Grid.IN_32, "5 11/32"),
        (IN // 2, Grid.IN_64, "1/2"),
        (12 * IN, Grid.IN_16, "12"),
        (0, Grid.IN_16, "0"),
        (396_875, Grid.IN_64, "1/64"),
        (396_874, Grid.IN_64, "~1/64"),
        (12_345_678, Grid.MM_TENTH, "~12.3"),
        (19 * MM, Grid.MM_TENTH, "19.0"),
        (-19 * MM, Grid.MM_TENTH, "-19.0"),
        (-(IN + IN // 2), Grid.IN_16, "-1 1/2"),
        (1, Grid.MM_TENTH, "~0.0"),
        (-1, Grid.MM_TENTH, "~0.0"),
    ],
)
def test_lengths_are_shown_as_in_a_workshop(nm: int, grid: Grid, shown: str) -> None:
    assert show_length(nm, grid) == shown
    assert show_length(nm, grid, with_unit=True) == f"{shown} {grid.unit}"


@pytest.mark.parametrize("grid", [Grid.IN_16, Grid.IN_32, Grid.MM_TENTH])
@pytest.mark.parametrize("steps", [0, 1, 2, 3, 10, 11])
def test_halfway_between_two_steps_goes_to_the_even_one(grid: Grid, steps: int) -> None:
    """As ASTM E29 rounds; 1/64 in is an odd number of nanometres, so nothing lies halfway there."""
    halfway = steps * grid.step_nm + grid.step_nm // 2
    assert on_grid(halfway, grid) == (steps + steps % 2) * grid.step_nm
    assert on_grid(halfway + 1, grid) == (steps + 1) * grid.step_nm
    assert on_grid(halfway - 1, grid) == steps * grid.step_nm


def test_steps_of_the_grids_are_exact() -> None:
    """25 400 000 nm divides by 16, 32 and 64; 0.1 mm is 100 000 nm."""
    assert [grid.step_nm for grid in Grid] == [IN // 16, IN // 32, IN // 64, MM // 10]
    assert [IN % part for part in (16, 32, 64)] == [0, 0, 0]
    assert [read_length(grid, Unit.MM) for grid in Grid] == [grid.step_nm for grid in Grid]


# --- writing -------------------------------------------------------------------------------------------------


@given(any_length, units, units)
@example(Nm(1), Unit.INCH, Unit.MM)
@example(Nm(GREATEST), Unit.INCH, Unit.INCH)
def test_what_is_written_reads_back_to_the_nanometre(length: Nm, unit: Unit, other: Unit) -> None:
    assert read_length(write_length(length, unit), other, zero=True) == length


@pytest.mark.parametrize(
    ("nm", "unit", "said"),
    [
        (23 * IN + IN // 2, Unit.INCH, "23 1/2 in"),
        (23 * IN, Unit.INCH, "23 in"),
        (12_620_000, Unit.INCH, "12.62 mm"),
        (19 * MM, Unit.MM, "19 mm"),
        (IN, Unit.MM, "25.4 mm"),
        (1, Unit.MM, "0.000001 mm"),
        (0, Unit.MM, "0 mm"),
        (0, Unit.INCH, "0 in"),
    ],
)
def test_lengths_are_written_as_a_maker_would(nm: int, unit: Unit, said: str) -> None:
    assert write_length(nm, unit) == said


# --- small things --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "nm"), [("1 in", IN), ("1 ft", FT), ("1 mm", MM), ("1 cm", 10 * MM), ("1 m", 1_000 * MM)]
)
def test_factors_are_those_of_their_definitions(said: str, nm: int) -> None:
    assert read_length(said, Unit.MM) == nm


@given(any_length)
def test_numbers_for_a_spreadsheet_are_exact(length: Nm) -> None:
    assert in_unit(length, Unit.INCH) * IN == length
    assert in_unit(length, Unit.MM) * MM == length


def test_sums_nearest_and_json_numbers() -> None:
    assert total([1, 2, 3]) == 6
    assert total([]) == 0
    assert [nearest(Fraction(half, 2)) for half in (1, 3, 5, -1)] == [0, 2, 2, 0]
    assert mm(19_050_000) == 19.05


def test_units_and_grids_agree() -> None:
    assert {grid: grid.unit for grid in Grid} == {
        Grid.IN_16: Unit.INCH,
        Grid.IN_32: Unit.INCH,
        Grid.IN_64: Unit.INCH,
        Grid.MM_TENTH: Unit.MM,
    }
