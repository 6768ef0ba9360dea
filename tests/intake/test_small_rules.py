"""Suggestions, places, quotes and what tables share: the small rules that reading and writing rest on."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.nearest import advice, nearest
from planner.intake.places import Lines
from planner.intake.refusal import path_text, quote
from planner.intake.sharing import differences, shared_part
from planner.intake.usual import usual_depth, usual_said
from planner.lengths import Nm, Unit
from tests.intake.bad_files import GOOD
from tests.intake.furniture import FURNITURE

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))
TEXTS = {"good": GOOD, "furniture": FURNITURE, **{path.stem: path.read_text(encoding="utf-8") for path in SAMPLES}}

# --- nearest ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("word", "found"),
    [("thicknes", "thickness"), ("Thickness", "thickness"), ("lenght", "length"), ("widht", "width"), ("colour", None)],
)
def test_a_mistyped_word_finds_the_nearest_known_one(word: str, found: str | None) -> None:
    assert nearest(word, ["thickness", "length", "width"]) == found


def test_advice_names_the_nearest_or_all() -> None:
    assert advice("oka", ["ash", "oak"]) == "Did you mean oak?"
    assert advice("elm", ["ash", "oak"]) == "Known here: ash, oak."
    assert advice("elm", []) == "Nothing is known here."
    assert advice("zzz", [f"k{number}" for number in range(99)]).endswith("k14, k15 ….")


def test_advice_shows_no_hidden_characters() -> None:
    assert advice("red", ["\x1b[31mred"]).isprintable()
    assert advice("zzz", ["\x1b[31mred"]).isprintable()


# --- quotes and paths ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "quoted"),
    [("oak", "'oak'"), (3, "3"), (True, "true"), ({"a": 1}, "a table"), ([1], "a list"), ("\x1b", "'\\x1b'")],
)
def test_what_is_found_is_quoted_in_the_words_of_the_file(said: object, quoted: str) -> None:
    assert quote(said) == quoted


@given(st.text() | st.integers() | st.just("x" * 10**6) | st.just(10**6_000))
def test_quotes_are_short_and_printable(said: object) -> None:
    assert quote(said).isprintable()
    assert len(quote(said)) < 50


def test_paths_count_from_one_and_quote_what_needs_it() -> None:
    assert path_text(("carcase", 0, "column", 1, "heights", 2)) == "carcase[1].column[2].heights[3]"
    assert path_text(("material", "birch plywood", "kind")) == "material.'birch plywood'.kind"


# --- places ----------------------------------------------------------------------------------------------------


def leaves(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Paths of everything in a file that is neither table nor list."""
    if isinstance(value, dict):
        for key, child in value.items():
            yield from leaves(child, (*path, key))
    elif isinstance(value, list):
        for place, child in enumerate(value):
            yield from leaves(child, (*path, place))
    else:
        yield path


@pytest.mark.parametrize("name", TEXTS)
def test_every_value_is_found_on_its_own_line(name: str) -> None:
    """Found another way: without that line the value is gone, and it starts with a key on the way to the value."""
    text = TEXTS[name]
    lines = text.split("\n")
    places = Lines(text)
    for path in leaves(tomllib.loads(text)):
        number = places.line(path)
        assert number is not None
        keys = [step for step in path if isinstance(step, str)]
        assert lines[number - 1].lstrip("{ ").startswith(tuple(keys))
        assert keys[-1] in lines[number - 1]
        without = tomllib.loads("\n".join([*lines[: number - 1], "", *lines[number:]]))
        assert path not in list(leaves(without))


def test_a_value_over_several_lines_is_found_where_it_starts() -> None:
    text = 'a = 1\n\n# marks\nmarks = [\n  "D1",\n\n  "D2",\n]\nb = """\nx = 1\n"""\nx = 2\n'
    places = Lines(text)
    found = [places.line(path) for path in [("a",), ("marks", 1), ("b",), ("x",), ("y",), ("marks", 7)]]
    assert found == [1, 4, 9, 12, None, 4]


def test_a_long_file_gets_no_lines_rather_than_wrong_ones() -> None:
    assert Lines("a = 1\n" + "# x\n" * 40_000).line(("a",)) is None


def test_when_asking_takes_too_long_the_rest_gets_no_lines() -> None:
    text = "".join(f"a{number} = [\n1,\n2]\n" for number in range(500))
    places = Lines(text)
    found = [places.line((f"a{number}",)) for number in range(500)]
    assert None in found
    assert all(line in {None, 3 * number + 1} for number, line in enumerate(found))


# --- sharing ---------------------------------------------------------------------------------------------------

values = st.integers(0, 2)
some_tables = st.lists(
    st.dictionaries(st.sampled_from("abc"), values).flatmap(
        lambda table: st.dictionaries(st.just("t"), st.dictionaries(st.sampled_from("xy"), values)).map(table.__or__)
    ),
    min_size=1,
    max_size=5,
)


def laid_over(shared: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    merged = {key: dict(said) if isinstance(said, dict) else said for key, said in shared.items()}
    for key, said in changes.items():
        merged[key] = merged.get(key, {}) | said if isinstance(said, dict) else said
    return merged


@given(some_tables)
def test_differences_laid_over_what_is_shared_give_each_table_back(tables: list[dict[str, Any]]) -> None:
    shared = shared_part(tables)
    for table in tables:
        changes = differences(table, shared)
        given_back = laid_over(shared, changes)
        assert {key: said for key, said in given_back.items() if said != {}} == {
            key: said for key, said in table.items() if said != {}
        }


@given(some_tables)
def test_what_is_shared_is_a_key_of_every_table(tables: list[dict[str, Any]]) -> None:
    assert all(shared_part(tables).keys() <= table.keys() for table in tables)


# --- usual values ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("key", "unit", "thickness", "depth"),
    [
        ("groove_depth", Unit.MM, 12_000_000, 6_000_000),
        ("rabbet_depth", Unit.MM, 19_500_000, 9_700_000),
        ("housing_depth", Unit.MM, 20_000_000, 6_600_000),
        ("housing_depth", Unit.INCH, 19_050_000, 6_350_000),  # a third of 3/4 in is 1/4 in
        ("groove_depth", Unit.INCH, 7_937_500, 3_968_750),  # half of 5/16 in is 10/64 in
    ],
)
def test_usual_depths_are_a_half_or_a_third_rounded_down(key: str, unit: Unit, thickness: int, depth: int) -> None:
    assert usual_depth(key, Nm(thickness), unit) == depth


def test_usual_lengths_are_told_in_both_units() -> None:
    assert usual_said("proud") == "1/64 in or 0.4 mm"
