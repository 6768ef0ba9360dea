"""A project file that takes the store's sled, or says what it must be."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import replace

import pytest

from planner.domain.project import Project
from planner.domain.sled import Sled
from planner.errors import InputError
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project
from planner.lengths import Nm

VALUES = """\
slope = "1:7"
bit = "8 mm"
greatest_bit_height = "30 mm"
greatest_width = "400 mm"
greatest_upright = "600 mm"
"""
BENCH = Sled(
    name="bench",
    run_micro=7_000_000,
    bit_nm=Nm(8_000_000),
    greatest_bit_height_nm=Nm(30_000_000),
    greatest_width_nm=Nm(400_000_000),
    greatest_upright_nm=Nm(600_000_000),
    kept=True,
)
"""The same, worked out by hand."""


def text(sled: str, units: str = "mm") -> str:
    """A box on a sled whose table holds these lines."""
    return f"""\
format = 1
[project]
name = "Salt box"
units = "{units}"
[material.elm]
[sled.bench]
{sled}
[[box]]
mark = "S"
length = "240 mm"
width = "180 mm"
height = "90 mm"
material = "elm"
thickness = "12 mm"
"""


def read(sled: str, kept: Iterable[Sled] = (), units: str = "mm") -> Project:
    return read_project(text(sled, units), "box.toml", lambda: kept)


def refused(sled: str, kept: Iterable[Sled] = (), units: str = "mm") -> list[str]:
    with pytest.raises(InputError) as caught:
        read(sled, kept, units)
    return [str(problem) for problem in caught.value.problems]


def unwanted() -> Iterable[Sled]:
    raise AssertionError("nobody should look into the store")


@pytest.mark.parametrize("sled", [VALUES, f"kept = false\n{VALUES}"])
def test_without_a_kept_sled_nobody_looks_into_the_store(sled: str) -> None:
    assert read_project(text(sled), "x", unwanted).sleds == (replace(BENCH, kept=False),)


def test_a_kept_sled_without_values_is_the_stores_to_the_nanometre() -> None:
    worn = replace(BENCH, bit_nm=Nm(7_912_345), slot_nm=Nm(7_950_000))
    assert read("kept = true", [replace(BENCH, name="other"), worn]).sleds == (worn,)


def test_a_kept_sled_with_all_values_is_taken_as_it_says_where_the_store_has_none() -> None:
    for kept in ([], [replace(BENCH, name="other", bit_nm=Nm(1))]):
        assert read(f"kept = true\n{VALUES}", kept).sleds == (BENCH,)
    assert read_project(text(f"kept = true\n{VALUES}"), "without a store").sleds == (BENCH,)


def test_a_kept_sled_with_the_stores_values_is_that() -> None:
    """Inches where the other says millimetres are the same, if they are the same: 1/2 in is 12.7 mm."""
    half_inch = replace(BENCH, bit_nm=Nm(12_700_000))
    said = VALUES.replace('"8 mm"', '"1/2 in"')
    assert read(f"kept = true\n{said}", [half_inch]).sleds == (half_inch,)


def test_other_values_than_the_stores_are_refused_with_both_figures_and_what_to_do() -> None:
    kept = replace(BENCH, bit_nm=Nm(7_900_000), slot_nm=Nm(7_950_000), run_micro=8_000_000)
    (problem,) = refused(f"kept = true\n{VALUES}", [kept])
    assert problem.startswith("box.toml, line 6: sled.bench: is not like the sled 'bench' that the store keeps")
    for told in (
        "slope 1:7 here, 1:8 in the store",
        "bit 8 mm here, 7.9 mm in the store",
        "slot not said here, 7.95 mm in the store",
        "Leave out all values",
        "another name",
        "planner measure-sled",
    ):
        assert told in problem
    assert "greatest" not in problem  # these are alike


@pytest.mark.parametrize("key", [line.partition(" ")[0] for line in VALUES.splitlines()])
def test_with_some_values_only_it_is_refused_once_and_says_which_are_missing(key: str) -> None:
    said = "\n".join(line for line in VALUES.splitlines() if not line.startswith(f"{key} "))
    (problem,) = refused(f"kept = true\n{said}", [BENCH])
    assert problem.startswith("box.toml, line 6: sled.bench: gives ")
    assert f"but not {key}." in problem
    assert "or none to take the store's" in problem


def test_a_slot_alone_is_not_enough_either() -> None:
    (problem,) = refused('kept = true\nslot = "8 mm"', [BENCH])
    assert "gives slot of the store's sled, but not slope, bit, greatest_bit_height" in problem


def test_a_kept_sled_that_the_store_has_not_is_refused_with_those_it_has() -> None:
    (problem,) = refused("kept = true", [replace(BENCH, name="long"), replace(BENCH, name="steep")])
    assert problem.startswith("box.toml, line 6: sled.bench: the store keeps no sled 'bench'.")
    assert "Give all its values" in problem
    assert "It keeps: 'long', 'steep'." in problem
    (problem,) = refused("kept = true")
    assert "It keeps" not in problem


def test_all_that_is_wrong_with_a_file_is_told_at_once() -> None:
    """A sled unlike the store's, and another mistake that has nothing to do with it."""
    with pytest.raises(InputError) as caught:
        read_project(
            text(f"kept = true\n{VALUES}").replace("12 mm", "12 ells"), "x", lambda: [replace(BENCH, run_micro=1)]
        )
    assert len(caught.value.problems) == 2


def test_a_value_that_cannot_be_read_is_told_once() -> None:
    (problem,) = refused(f"kept = true\n{VALUES}".replace("8 mm", "8 ells"), [BENCH])
    assert "sled.bench.bit" in problem


def test_kept_is_true_or_false_and_nothing_else() -> None:
    (problem,) = refused(f'kept = "yes"\n{VALUES}', [BENCH])
    assert "sled.bench.kept: 'yes' is neither true nor false" in problem


def test_an_unknown_key_beside_kept_is_named() -> None:
    (problem,) = refused("kept = true\ncolour = 3", [BENCH])
    assert "the key 'colour' is not known here" in problem


def test_a_kept_sled_is_written_with_all_its_values_so_that_the_file_can_travel() -> None:
    project = read("kept = true", [BENCH])
    written = write_project(project)
    assert tomllib.loads(written)["sled"]["bench"] == {
        "kept": True,
        "slope": "1:7",
        "bit": "8 mm",
        "greatest_bit_height": "30 mm",
        "greatest_width": "400 mm",
        "greatest_upright": "600 mm",
    }
    assert read_project(written, "elsewhere") == project
    assert "kept" not in write_project(read(VALUES))
