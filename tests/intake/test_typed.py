"""Values as they are typed at a command."""

from __future__ import annotations

import tomllib
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.typed import read_typed, typed

TEXT = {"type": "string"}
LENGTH = {"type": ["string", "number"]}
WORDS = {"enum": ["in", "mm"], "type": "string"}
COUNT = {"type": "integer"}
NUMBER = {"type": "number"}
TRUTH = {"type": "boolean"}
LIST = {"type": "array"}
TABLE = {"type": "object"}
COUNT_OR_WORD = {"anyOf": [{"const": "choose"}, COUNT]}
WORD_OR_LIST = {"oneOf": [WORDS, LIST]}


@pytest.mark.parametrize(
    ("text", "node", "meant"),
    [
        ("2024", TEXT, "2024"),
        ("true", TEXT, "true"),
        ('"quoted"', TEXT, '"quoted"'),
        ("3/4", LENGTH, "3/4"),
        ("19", LENGTH, "19"),
        ("mm", WORDS, "mm"),
        ("6", COUNT, 6),
        ("six", COUNT, "six"),
        ("1\nother = 2", COUNT, "1\nother = 2"),
        ("1 # remark", COUNT, 1),
        ("1.25", NUMBER, Decimal("1.25")),
        ("1.10", NUMBER, Decimal("1.10")),
        ("true", TRUTH, True),
        ("yes", TRUTH, "yes"),
        ("choose", COUNT_OR_WORD, "choose"),
        ('"choose"', COUNT_OR_WORD, "choose"),
        ("7", COUNT_OR_WORD, 7),
        ("in", WORD_OR_LIST, "in"),
        ("90, rest", WORD_OR_LIST, ["90", "rest"]),
        ('["rest"]', WORD_OR_LIST, ["rest"]),
        ("D1", LIST, ["D1"]),
        ("D1,D2 , D3", LIST, ["D1", "D2", "D3"]),
        ("[1, [2, 'x']]", LIST, [1, [2, "x"]]),
        ("{ a = 1, b = ['x'] }", TABLE, {"a": 1, "b": ["x"]}),
        ("{}", TABLE, {}),
        ("[" * 5_000, LIST, ["[" * 5_000]),
        ("5", {}, 5),
        ("five", {}, "five"),
    ],
)
def test_what_is_typed_is_read_as_its_place_wants_it(text: str, node: dict[str, Any], meant: object) -> None:
    got = read_typed(text, node)
    assert got == meant
    assert type(got) is type(meant)


TEXTS = st.text(st.characters(exclude_categories=["C"]))
VALUES = st.recursive(
    TEXTS | st.integers() | st.booleans(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(TEXTS, inner, max_size=3),
)


@given(st.lists(VALUES, max_size=4) | st.dictionaries(TEXTS, VALUES, max_size=3))
def test_a_list_or_table_is_written_so_that_it_reads_back(value: list[Any] | dict[str, Any]) -> None:
    node = {"type": "array"} if isinstance(value, list) else {"type": "object"}
    assert read_typed(typed(value), node) == value


@given(st.dictionaries(TEXTS, VALUES, min_size=1, max_size=3))
def test_a_table_is_written_as_the_standard_library_reads_it(value: dict[str, Any]) -> None:
    assert tomllib.loads(f"value = {typed(value)}") == {"value": value}


@given(st.text())
def test_a_text_is_shown_as_it_is(text: str) -> None:
    assert typed(text) == text
    assert read_typed(text, TEXT) == text
