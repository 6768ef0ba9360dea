"""Finished files stand whole, all of them or none, whatever happens on the way."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from itertools import count
from pathlib import Path

import pytest

from planner.app.outputs import made_folder, placed
from planner.errors import InputError
from tests.app.folders import contents

NEW = {"chest.xlsx": b"new book", "plan.json": b"new plan"}


def put(folder: Path, *, force: bool = False) -> None:
    with placed({folder / name: content for name, content in NEW.items()}, force=force):
        pass


def refusal(action: Callable[[], object]) -> str:
    with pytest.raises(InputError) as caught:
        action()
    return str(caught.value)


def test_new_files_stand_with_their_content_and_nothing_beside_them(shop: Path) -> None:
    put(shop)
    assert contents(shop) == NEW


def test_files_are_readable_as_the_users_mask_has_it(shop: Path) -> None:
    before = os.umask(0o027)
    try:
        put(shop)
    finally:
        os.umask(before)
    assert (shop / "plan.json").stat().st_mode & 0o777 == 0o640


def test_a_file_that_is_there_is_not_overwritten(shop: Path) -> None:
    (shop / "plan.json").write_bytes(b"old")
    assert "plan.json: is there already." in refusal(lambda: put(shop))
    assert contents(shop) == {"plan.json": b"old"}


def test_every_place_that_is_taken_is_named(shop: Path) -> None:
    put(shop)
    said = refusal(lambda: put(shop))
    assert all(f"{shop / name}: is there already." in said for name in NEW)


def test_force_overwrites_plain_files(shop: Path) -> None:
    (shop / "plan.json").write_bytes(b"old")
    put(shop, force=True)
    assert contents(shop) == NEW


@pytest.mark.parametrize("force", [False, True])
def test_folders_links_and_devices_are_never_overwritten(shop: Path, force: bool) -> None:  # noqa: FBT001
    elsewhere = shop.parent / "elsewhere"
    elsewhere.write_bytes(b"keep")
    for make, what in (
        (lambda path: path.mkdir(), "is a folder"),
        (lambda path: path.symlink_to(elsewhere), "is a link"),
        (lambda path: path.symlink_to(shop / "nowhere"), "is a link"),
        (os.mkfifo, "is no plain file"),
    ):
        target = shop / f"{what}.json"
        target.unlink(missing_ok=True)
        make(target)
        before = sorted(shop.iterdir())
        assert what in refusal(lambda target=target: placed({target: b""}, force=force).__enter__())  # type: ignore[misc]
        assert sorted(shop.iterdir()) == before
    assert elsewhere.read_bytes() == b"keep"


def test_a_missing_folder_is_refused(shop: Path) -> None:
    assert "No such file or directory" in refusal(lambda: put(shop / "nowhere"))


# --- failures on the way ------------------------------------------------------------------------------------

WAYS_TO_FAIL = ((os, "fsync"), (os, "open"), (Path, "hardlink_to"), (Path, "replace"), (Path, "open"))


def fail_at(number: int, monkeypatch: pytest.MonkeyPatch) -> Iterator[int]:
    """Make the system fail once, at the given one of all calls that touch the disk; counts the calls."""
    calls = count()

    def failing(real: Callable[..., object]) -> Callable[..., object]:
        def call(*args: object, **named: object) -> object:
            if next(calls) == number:
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            return real(*args, **named)

        return call

    for owner, name in WAYS_TO_FAIL:
        monkeypatch.setattr(owner, name, failing(getattr(owner, name)))
    return calls


@pytest.mark.parametrize("old", [{}, {"plan.json": b"old"}, {"chest.xlsx": b"older", "plan.json": b"old"}])
def test_a_disk_that_fails_at_any_step_leaves_the_folder_as_before_or_as_after(
    shop: Path, old: dict[str, bytes]
) -> None:
    refused = 0
    for step in range(100):
        for name in contents(shop):
            (shop / name).unlink()
        for name, content in old.items():
            (shop / name).write_bytes(content)
        with pytest.MonkeyPatch.context() as patch:
            calls = fail_at(step, patch)
            try:
                put(shop, force=bool(old))
            except InputError as error:
                refused += 1
                assert "No space left" in str(error)  # noqa: PT017
                after: dict[str, bytes] = old
            else:
                after = NEW
        assert contents(shop) == after
        if next(calls) <= step:
            break
    else:
        pytest.fail("the steps don't end")
    assert refused >= 4  # at least: open and sync each of two files


KILLED_AT = """
import os, sys
from itertools import count
from pathlib import Path
from planner.app.outputs import placed

def dying(real):
    def call(*args, **named):
        if next(calls) == int(sys.argv[1]):
            os._exit(9)
        return real(*args, **named)
    return call

calls = count()
for owner, name in ((os, "fsync"), (os, "open"), (Path, "hardlink_to"), (Path, "replace"), (Path, "unlink")):
    setattr(owner, name, dying(getattr(owner, name)))
with placed({Path("chest.xlsx"): b"new book", Path("plan.json"): b"new plan"}, force=sys.argv[2] == "force"):
    pass
"""


@pytest.mark.parametrize("old", [{}, {"chest.xlsx": b"older", "plan.json": b"old"}])
def test_a_process_killed_at_any_step_leaves_each_file_as_before_or_as_after(shop: Path, old: dict[str, bytes]) -> None:
    for step in range(100):
        for name in contents(shop):
            (shop / name).unlink()
        for name, content in old.items():
            (shop / name).write_bytes(content)
        command = (sys.executable, "-c", KILLED_AT, str(step), "force" if old else "")
        code = subprocess.run(command, cwd=shop, check=False).returncode
        left = {name: content for name, content in contents(shop).items() if not name.startswith(".planner-")}
        for name, content in NEW.items():
            assert left.pop(name, None) in {old.get(name), content}
        assert left == {}
        if code == 0:
            break
        assert code == 9
    assert step >= 8  # two files: open is Path's own; sync, name and clean away each, sync the folder
    assert contents(shop) == NEW


def test_a_disk_without_hard_links_takes_the_files_as_well(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_links(*_: object) -> None:
        raise OSError(errno.EPERM, os.strerror(errno.EPERM))

    monkeypatch.setattr(Path, "hardlink_to", no_links)
    put(shop)
    assert contents(shop) == NEW
    put(shop, force=True)
    assert contents(shop) == NEW
    with pytest.raises(ZeroDivisionError), placed({shop / "plan.json": b"newer"}, force=True):
        raise ZeroDivisionError
    assert contents(shop) == NEW


@pytest.mark.parametrize("old", [{}, {"plan.json": b"old"}])
@pytest.mark.parametrize("failure", [ValueError, KeyboardInterrupt, SystemExit])
def test_files_are_taken_back_when_what_follows_fails(
    shop: Path, old: dict[str, bytes], failure: type[BaseException]
) -> None:
    for name, content in old.items():
        (shop / name).write_bytes(content)

    def stored_badly() -> None:
        with placed({shop / name: content for name, content in NEW.items()}, force=True):
            assert contents(shop).items() >= NEW.items()
            raise failure

    with pytest.raises(failure):
        stored_badly()
    assert contents(shop) == old


def test_a_name_taken_at_the_last_moment_is_not_overwritten(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.hardlink_to

    def somebody_is_quicker(self: Path, target: Path) -> None:
        if self.name == "plan.json":
            self.write_bytes(b"theirs")
        real(self, target)

    monkeypatch.setattr(Path, "hardlink_to", somebody_is_quicker)
    assert "File exists" in refusal(lambda: put(shop))
    assert contents(shop) == {"plan.json": b"theirs"}


# --- folders ------------------------------------------------------------------------------------------------


def test_a_folder_is_made_with_those_above_it(shop: Path) -> None:
    with made_folder(shop / "a" / "b"):
        pass
    assert (shop / "a" / "b").is_dir()


def test_a_folder_made_in_vain_is_removed_and_one_that_was_there_is_not(shop: Path) -> None:
    (shop / "a").mkdir()
    with pytest.raises(ValueError, match="in vain"), made_folder(shop / "a" / "b" / "c"):
        raise ValueError("in vain")
    assert contents(shop) == {"a": None}


def test_a_folder_made_in_vain_stays_when_somebody_uses_it(shop: Path) -> None:
    (theirs := ExitStack()).enter_context(made_folder(shop / "a" / "b"))
    (shop / "a" / "theirs").touch()
    theirs.__exit__(ValueError, ValueError("in vain"), None)
    assert contents(shop) == {"a": None, "a/theirs": b""}


@pytest.mark.parametrize("below", ["", "/inside"])
def test_a_file_where_the_folder_should_be_is_refused(shop: Path, below: str) -> None:
    (shop / "taken").touch()
    said = refusal(lambda: made_folder(Path(f"{shop / 'taken'}{below}")).__enter__())
    assert "taken" in said
    assert contents(shop) == {"taken": b""}
