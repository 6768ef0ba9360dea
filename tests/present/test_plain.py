"""Text of others is shown, never obeyed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.present.plain import no_formula, visible


@pytest.mark.parametrize(
    ("said", "shown"),
    [
        ("cherry", "cherry"),
        ("Kirschbaum, 桜, ½ ″", "Kirschbaum, 桜, ½ ″"),
        ("\x1b[31mred", r"\x1b[31mred"),
        ("a\tb\nc\rd", r"a\tb\nc\rd"),
        ("left\N{RIGHT-TO-LEFT OVERRIDE}right", r"left\u202eright"),
        ("\ud800", r"\ud800"),
        ("\uffff", r"\uffff"),
    ],
)
def test_what_does_not_print_is_spelled_out(said: str, shown: str) -> None:
    assert visible(said) == shown


@given(st.text())
def test_shown_text_prints_and_printing_text_is_shown_as_it_is(text: str) -> None:
    assert visible(text).isprintable()
    assert visible(visible(text)) == visible(text)
    assert not text.isprintable() or visible(text) == text


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@x", "=", "＝1+1", "＠x", "﹢1"])  # noqa: RUF001
def test_what_a_spreadsheet_takes_for_a_formula_gets_a_quote(text: str) -> None:
    """OWASP, CSV injection: = + - @ begin a formula; full-width signs are read as the plain ones."""
    assert no_formula(text) == f"'{text}"


@pytest.mark.parametrize("text", ["", "cherry", " =1", "1+1", "'=1", "~1/2", "☐", "3/4"])
def test_other_text_is_left_alone(text: str) -> None:
    assert no_formula(text) == text
