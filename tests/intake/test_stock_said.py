"""What a file says of rough wood must make sense as a whole."""

from __future__ import annotations

import pytest

from planner.errors import InputError
from planner.intake.project_file import read_project
from tests.app.texts import BOX


@pytest.mark.parametrize(
    ("said", "where"),
    [
        ("[stock]\ngreatest_stave = 0.001\n", "stock"),
        ("[stock]\nleast_stave = 80\n[stock.material.elm]\ngreatest_stave = 79\n", "stock of elm"),
    ],
)
def test_the_greatest_stave_is_no_narrower_than_the_least(said: str, where: str) -> None:
    with pytest.raises(InputError) as refused:
        read_project(BOX + said, "box.toml")
    (problem,) = refused.value.problems
    assert problem.where == f"box.toml: {where}"
    assert "narrower than the least" in problem.what


def test_they_may_be_alike() -> None:
    read_project(BOX + "[stock]\nleast_stave = 80\ngreatest_stave = 80\n", "box.toml")
