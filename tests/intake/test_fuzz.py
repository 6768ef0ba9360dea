"""Whatever a file holds, reading it gives a project or an ``InputError``, and nothing else.

What is read, the JSON Schema takes too; the other way round can't hold, since a schema knows nothing of lengths in
words or of names elsewhere in the file.
"""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from planner.domain.project import Project, problems
from planner.errors import InputError, Problem
from planner.intake.project_file import read_project
from planner.intake.schema import schema
from planner.intake.write_file import write_project
from tests.intake.bad_files import GOOD
from tests.intake.furniture import FURNITURE
from tests.intake.test_bad_files import JARGON

SAMPLES = Path(__file__).parents[2] / "sample_projects"
TEXTS = [GOOD, FURNITURE, *(path.read_text(encoding="utf-8") for path in sorted(SAMPLES.glob("*.toml")))]
SCHEMA = Draft202012Validator(schema())
TOKEN = re.compile(r"\"[^\"\n]*\"|[A-Za-z0-9_./-]+|\s+|.", re.DOTALL)
SIGNS = st.sampled_from(list("[]{}=.,\"'#\\\n\r\t -_:0123456789eE½′″abXD\0\x1b\u202e\ud800"))
VALUES = st.sampled_from(
    [
        "true", "false", "[]", "{}", "[[]]", "[{}]", '""', "''", '"rest"', "nan", "-inf", "0", "-1", "1e400", "-0.0",
        "0x7fffffffffffffff", "-9223372036854775809", "5e-324", "3.0", "1.15", "1979-05-27", "07:32:00", '"1/0 in"',
        '"1/128 in"', '"\\u0000"', '"K1"', '"choose"', '"sides"', '"1:8"', '["D1"]', "{ material = 1 }", '"in"',
        '"even"', '"edge"', '"half-blind"', '"through"', '[["1 in", "2 in"]]', "[[1, 2], [2, 3]]", "1.5", "false",
        '"-3 mm"', '"overlay"', '"slab"', '"frame and panel"', '"boards"', '"rail"', '"shelf"', '"nothing"', "50",
        "2", '"shelves"', '"stand"', '"plinth"',
        '"sawn"', '"hinged"', '"slides"', '"rabbet"', '"slid in"', '"through tenons"',
    ]
)  # fmt: skip


def _by_sign(text: str, draw: st.DrawFn) -> str:
    """Put in, take out or replace a few signs."""
    place = draw(st.integers(0, len(text)))
    return text[:place] + draw(st.text(SIGNS, max_size=3)) + text[place + draw(st.integers(0, 3)) :]


def _by_line(text: str, draw: st.DrawFn) -> str:
    """Take out, double or move lines."""
    lines = text.split("\n")
    first, second = (draw(st.integers(0, len(lines) - 1)) for _ in range(2))
    taken = lines.pop(first)
    lines[second:second] = draw(st.sampled_from([[], [taken], [taken, taken]]))
    return "\n".join(lines)


def _by_token(text: str, draw: st.DrawFn) -> str:
    """Swap two words."""
    tokens = TOKEN.findall(text)
    first, second = (draw(st.integers(0, len(tokens) - 1)) for _ in range(2))
    tokens[first], tokens[second] = tokens[second], tokens[first]
    return "".join(tokens)


def _by_value(text: str, draw: st.DrawFn) -> str:
    """Give a key another kind of value."""
    lines = text.split("\n")
    keys = [place for place, line in enumerate(lines) if " = " in line]
    place = draw(st.sampled_from(keys)) if keys else 0
    lines[place] = lines[place].partition(" = ")[0] + " = " + draw(VALUES)
    return "\n".join(lines)


@st.composite
def mutated(draw: st.DrawFn) -> str:
    text = draw(st.sampled_from(TEXTS))
    for _ in range(draw(st.integers(1, 4))):
        text = draw(st.sampled_from([_by_sign, _by_line, _by_token, _by_value]))(text, draw) or " "
    return text


def result_of(text: str) -> Project | tuple[Problem, ...]:
    try:
        return read_project(text, "fuzz.toml")
    except InputError as error:
        return error.problems


def is_sound_or_refused(text: str) -> None:
    result = result_of(text)
    if isinstance(result, Project):
        assert problems(result) == []
        assert SCHEMA.is_valid(tomllib.loads(text.removeprefix("\ufeff")))
        assert read_project(write_project(result), "again.toml") == result
        return
    assert result
    for problem in result:
        assert problem.where.startswith("fuzz.toml")
        assert problem.what
        assert problem.remedy
        assert str(problem).isprintable()
        assert not JARGON.search(str(problem))
        assert "can't stand here" not in problem.what, "an error of the library has no words of ours"


@given(mutated())
def test_a_spoilt_sample_is_a_project_or_refused(text: str) -> None:
    is_sound_or_refused(text)


@given(st.text())
def test_any_text_is_a_project_or_refused(text: str) -> None:
    is_sound_or_refused(text)


@given(
    st.dictionaries(st.text(max_size=5), st.recursive(st.text(max_size=5), lambda inner: st.lists(inner, max_size=2)))
)
def test_text_that_looks_like_toml_is_a_project_or_refused(said: dict[str, object]) -> None:
    is_sound_or_refused("\n".join(f"{key} = {value!r}" for key, value in said.items()))
