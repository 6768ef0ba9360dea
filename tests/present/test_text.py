"""Tables on a terminal: nothing lost at any width, nothing obeyed."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

import pytest

from planner.lengths import Grid
from planner.pipeline import plan
from planner.present import layout, tables
from planner.present.table import Column, Group, Kind, Table
from planner.present.text import render
from tests.present.pieces import drawer, planned_chest, planned_thick_box

VIEWS = [*tables.SHEETS, tables.checks]
HOSTILE = "\x1b[31m[red]=1+1[/red]\x07\t\N{RIGHT-TO-LEFT OVERRIDE}end"


def squeezed(text: str) -> str:
    return "".join(text.split())


def seen_pieces(table: Table) -> list[str]:
    """Every word, number and item that must be found on a screen: no boxes, no repeating of headings."""
    kept = [column for column in table.columns if column.kind is not Kind.TICK and not column.repeats]
    return [
        piece
        for row in table.rows
        for column, cell in zip(table.columns, row, strict=True)
        if column in kept
        for piece in layout.pieces(table, column, cell)
        if piece
    ]


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("width", [20, 40, 59, 60, 80, 200])
def test_no_line_is_wider_than_the_terminal_and_no_word_is_lost(view: tables.View, width: int) -> None:
    for made in (planned_chest(), planned_thick_box()):
        table = view(made)
        text = render([table], width=width, colour=False)
        assert max(map(len, text.splitlines())) <= width
        have = squeezed(text)
        for piece, times in Counter(seen_pieces(table)).items():
            assert have.count(squeezed(piece)) >= times, piece


@pytest.mark.parametrize("width", [40, 80, 200])
def test_headings_notes_and_cautions_are_all_there(width: int) -> None:
    table = tables.sled(planned_chest())
    text = squeezed(render([table], width=width, colour=False))
    for said in (table.title, *table.notes, *table.groups[0].cautions, *(group.heading for group in table.groups)):
        assert squeezed(said) in text


def test_cautions_are_said_once_until_they_change() -> None:
    table = tables.sled(planned_chest())
    assert len(table.groups) > 1
    text = squeezed(render([table], width=200, colour=False))
    assert text.count(squeezed(table.groups[0].cautions[0])) == 1


@pytest.mark.parametrize("columns", ["10", "300"])
def test_no_escape_codes_without_colour_whatever_the_environment(monkeypatch: pytest.MonkeyPatch, columns: str) -> None:
    monkeypatch.setenv("FORCE_COLOR", "1")
    monkeypatch.setenv("TERM", "dumb")
    monkeypatch.setenv("COLUMNS", columns)
    text = render([tables.cut_list(planned_chest())], width=80, colour=False)
    assert "\x1b" not in text
    assert 60 < max(map(len, text.splitlines())) <= 80


def test_colour_adds_escape_codes_and_nothing_else(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setenv("TERM", "dumb")
    table = tables.cut_list(planned_chest())
    coloured = render([table], width=80, colour=True)
    assert "\x1b[" in coloured
    assert re.sub(r"\x1b\[[0-9;]*m", "", coloured) == render([table], width=80, colour=False)


@pytest.mark.parametrize("width", [40, 80, 200])
def test_hostile_texts_are_only_shown(width: int) -> None:
    made = plan(drawer(name=HOSTILE, title=HOSTILE, timber=HOSTILE, sled=HOSTILE))
    for view in VIEWS:
        text = render([view(made)], width=width, colour=False)
        assert all(char == "\n" or char.isprintable() for char in text)
    text = squeezed(render([tables.boards(made)], width=width, colour=False))
    assert r"\x1b[31m[red]=1+1[/red]\x07\t\u202eend" in text


def test_wide_letters_are_counted_as_two() -> None:
    column = Column(heading="材", kind=Kind.TEXT)
    table = Table(
        title="x", grid=Grid.IN_32, columns=(column, replace(column, heading="y")),
        groups=(Group(rows=(("桜桜", "a"), ("oak", "b"))),),
    )  # fmt: skip
    lines = render([table], width=80, colour=False).splitlines()
    assert lines[-2:] == ["桜桜  a", "oak   b"]


def test_a_word_longer_than_the_terminal_is_folded() -> None:
    table = Table(
        title="x", grid=Grid.IN_32, columns=(Column(heading="y"),), groups=(Group(rows=(("w" * 300,),)),)
    )  # fmt: skip
    for width in (20, 80):
        text = render([table], width=width, colour=False)
        assert text.count("w") == 300
        assert max(map(len, text.splitlines())) <= width


def test_an_empty_table_says_so_and_several_tables_stand_apart() -> None:
    empty = Table(title="Openings", grid=Grid.IN_32, columns=(Column(heading="x"),), groups=())
    assert render([empty, empty], width=80, colour=False) == "Openings\nNothing.\n\nOpenings\nNothing.\n"


def test_subtotals_and_total_are_told() -> None:
    """From ``test_views``: board feet 2 × 12 × 5 1/2 / 144 + 2 × 10 × 5 1/2 / 144 = 1.68, square feet 0.72."""
    lines = render([tables.cut_list(plan(drawer()))], width=100, colour=False).splitlines()
    assert [line for line in lines if line.startswith(("Subtotal", "Total"))] == [
        "Subtotal: quantity 2, board feet 0.92",
        "Subtotal: quantity 2, board feet 0.76",
        "Subtotal: quantity 1, square feet 0.72",
        "Total: quantity 5, board feet 1.68, square feet 0.72",
    ]
