"""The README's reference of the format keeps up with the format."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from planner.domain.words import Way
from planner.intake.project_file import read_project
from planner.intake.schema import schema
from planner.intake.usual import _LENGTHS
from tests.intake.files import CHEST
from tests.intake.test_spaces import divided, marks

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
FORMAT = README[README.index("## The project file") :]
KEYS = {key for table in schema()["$defs"].values() for key in table["properties"]}
WORDS = {
    word
    for table in schema()["$defs"].values()
    for key in table["properties"].values()
    for word in key.get("enum", ())
    if isinstance(word, str)
}


def test_it_names_every_key_and_every_word() -> None:
    blocks = re.findall(r"```toml\n(.*?)```", FORMAT, re.DOTALL)
    without = re.sub(r"```toml\n.*?```", "", FORMAT, flags=re.DOTALL)
    code = " ".join([*re.findall(r"`[^`\n]+`", without), *blocks])
    assert {key for key in KEYS if not re.search(rf"\b{key}\b", code)} == {"J2", "J3"}  # J1 to J4
    assert {word for word in WORDS if f'"{word}"' not in code} == set()


@pytest.mark.parametrize("key", sorted(_LENGTHS))
def test_it_tells_usual_lengths_as_they_are(key: str) -> None:
    inches, metric = _LENGTHS[key]
    assert f"{inches} or {metric}" in FORMAT


def test_its_divided_column_is_what_it_says() -> None:
    """Two short drawers over a long one, and a cupboard below with a loose shelf and a pair of doors."""
    (block,) = [
        block for block in re.findall(r"```toml\n(.*?)```", FORMAT, re.DOTALL) if "carcase.column.tier" in block
    ]
    text = CHEST.replace("column = [{ drawers = 3 }]", "partitions = {}")
    (made,) = read_project(f"{text}{block}", "README.md").carcases
    assert marks(made) == ["D1", "D2", "D3"]
    above, _, below = divided(divided(made.inside).spaces[0]).spaces
    assert divided(above).way is Way.COLUMNS
    assert below.doors is not None
    assert below.doors.leaves == 2
