"""The commands about what the checks found."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from planner.checks import all_checks
from planner.checks.facts import Facts
from planner.domain.plan import Finding
from planner.domain.words import Level
from tests.app.texts import BOX
from tests.cli.maker import Maker

STEEP = BOX.replace('"1:7"', '"1:2"')


def grave(facts: Facts) -> Iterator[Finding]:
    """A check that always stops the work."""
    yield Finding(
        code="grave", level=Level.STOP, marks=(facts.project.boxes[0].ring.mark,), text="Too bad.", remedy="Start anew."
    )


def slopes(maker: Maker) -> list[dict[str, Any]]:
    return [each for each in maker("checks", "--json").json if each["code"] == "slope"]


def test_a_finding_is_acknowledged_and_opened_again(maker: Maker) -> None:
    assert maker("read", "-", stdin=STEEP).code == 0
    (before,) = slopes(maker)
    assert before["acknowledged"] == ""
    said = maker("acknowledge", "Salt box", "slope", "--why", "tried on scrap")
    assert said.code == 0
    assert said.out.startswith("Acknowledged: ")
    (after,) = slopes(maker)
    assert after == before | {"acknowledged": "tried on scrap"}
    assert "Acknowledged: tried on scrap" in " ".join(maker("checks").out.split())
    assert maker("acknowledge", "Salt box", "slope", "--open-again").out.startswith("Open again: ")
    assert slopes(maker) == [before]


def test_a_reason_or_taking_it_back_but_not_both(maker: Maker) -> None:
    maker("read", "-", stdin=STEEP)
    for args in ((), ("--why", "x", "--open-again")):
        said = maker("acknowledge", "Salt box", "slope", *args)
        assert said.code == 2
        assert "--why, or --open-again" in " ".join(said.err.split())


def test_strict_minds_open_stops_only(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    maker("read", "-", stdin=STEEP)
    assert maker("checks", "--strict").code == 0
    monkeypatch.setattr(all_checks, "CHECKS", (*all_checks.CHECKS, grave))
    assert maker("checks").code == 0
    assert maker("checks", "--strict").code == 1
    assert maker("checks", "--strict", "--json").code == 1
    assert maker("acknowledge", "Salt box", "grave", "S", "--why", "it is only a box").code == 0
    assert maker("checks", "--strict").code == 0
