"""A process killed at any moment leaves every file as before or as after, and a store that can be read."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from time import monotonic

import pytest

from planner.app.projects import listed
from planner.app.store_place import StorePlace
from tests.app.texts import BOX

KILLS = 8


def prepare(folder: Path, text: str) -> subprocess.Popen[bytes]:
    (folder / "box.toml").write_text(text, encoding="utf-8")
    command = ("prepare", "box.toml", "--into", "out", "--force", "--store", "store.db")
    return subprocess.Popen([sys.executable, "-m", "planner", *command], cwd=folder, stdout=subprocess.DEVNULL)


def results(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in (folder / "out").glob("[!.]*")}


@pytest.mark.kill
@pytest.mark.parametrize("first", [True, False], ids=["new files", "old files"])
def test_nothing_is_ever_half_written(shop: Path, first: bool) -> None:  # noqa: FBT001
    longer = BOX.replace("length = 240", "length = 250")
    before: dict[str, bytes] = {}
    if not first:
        assert prepare(shop, BOX).wait() == 0
        before = results(shop)
    start = monotonic()
    reference = shop / "reference"
    reference.mkdir()
    assert prepare(reference, longer).wait() == 0
    whole, after = monotonic() - start, results(reference)
    assert before != after
    for kill in range(KILLS):
        with prepare(shop, longer) as killed:
            try:
                # most moments in the last third, where files are written
                killed.wait(whole * (0.6 + 0.5 * kill / KILLS))
            except subprocess.TimeoutExpired:
                killed.kill()
        for name, content in results(shop).items():
            assert content in {before.get(name), after[name]}
            assert name != "Salt box.json" or json.loads(content)
        assert [each.name for each in listed(StorePlace(shop / "store.db"))] in ([], ["Salt box"])
