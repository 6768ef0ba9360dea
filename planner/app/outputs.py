"""Put finished files in their places: each whole, and all of them or none."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from planner.app.source import reason
from planner.errors import InputError, Problem


@contextmanager
def placed(files: Mapping[Path, bytes], *, force: bool) -> Iterator[None]:
    """The files stand in their places while the block runs; if it fails they are taken back, the old ones put back.

    Each file is written under another name in the same folder, brought to the disk, and only then given its name, so
    that nobody ever sees half a file.

    Args:
        files: what is to stand where; the folders exist.
        force: overwrite plain files that are there already. Folders, links and devices are never overwritten.

    Raises:
        InputError: a place is taken or can't be written to; nothing was written.
    """
    _must_be_free(files, force=force)
    with ExitStack() as leftovers, ExitStack() as undo:
        staged = {target: _staged(target, content, leftovers) for target, content in files.items()}
        for target, temporary in staged.items():
            with _refused(target):
                _put(temporary, target, undo, leftovers, force=force)
        for folder in {target.parent for target in files}:
            _sync(folder)
        yield
        undo.pop_all()


@contextmanager
def made_folder(folder: Path) -> Iterator[None]:
    """The folder exists while the block runs; if the block fails, folders made for it are removed again.

    Raises:
        InputError: something else has that name, or the folder can't be made.
    """
    with ExitStack() as undo, _refused(folder):
        missing = [each for each in (folder, *folder.parents) if not each.exists()]
        for each in reversed(missing):
            each.mkdir()
            undo.callback(_quietly, each.rmdir)
        if not folder.is_dir():
            raise InputError([Problem(where=str(folder), what="is no folder.", remedy="Name a folder to write into.")])
        made = undo.pop_all()
    with made:
        yield
        made.pop_all()


def _must_be_free(targets: Iterable[Path], *, force: bool) -> None:
    found: list[Problem] = []
    for target in targets:
        with _refused(target):
            found += _taken(target, force=force)
    if found:
        raise InputError(found)


def _taken(target: Path, *, force: bool) -> Iterator[Problem]:
    """Why nothing may be written to this place."""
    elsewhere = "Give the name of a plain file."
    if target.is_symlink():
        yield Problem(where=str(target), what="is a link to another place.", remedy=elsewhere)
    elif target.is_dir():
        yield Problem(where=str(target), what="is a folder.", remedy=elsewhere)
    elif target.exists() and not target.is_file():
        yield Problem(where=str(target), what="is no plain file.", remedy=elsewhere)
    elif target.exists() and not force:
        yield Problem(where=str(target), what="is there already.", remedy="Give another name, or --force to overwrite.")


def _staged(target: Path, content: bytes, leftovers: ExitStack) -> Path:
    """The content on the disk, under a passing name beside its target."""
    temporary = _beside(target, "part")
    with _refused(target), temporary.open("xb") as file:
        leftovers.callback(_quietly, temporary.unlink)
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    return temporary


def _put(temporary: Path, target: Path, undo: ExitStack, leftovers: ExitStack, *, force: bool) -> None:
    if not force:
        _give_new_name(temporary, target)
        undo.callback(_quietly, target.unlink)
    elif target.exists():
        before = _beside(target, "before")
        leftovers.callback(_quietly, before.unlink)
        undo.callback(_quietly, lambda: before.replace(target))
        _second_name(target, before)
        temporary.replace(target)
    else:
        temporary.replace(target)
        undo.callback(_quietly, target.unlink)


def _give_new_name(temporary: Path, target: Path) -> None:
    """Rename that fails when another process has taken the name meanwhile, as far as the file system can."""
    try:
        target.hardlink_to(temporary)
    except FileExistsError:
        raise
    except OSError:
        temporary.replace(target)


def _second_name(target: Path, before: Path) -> None:
    """Keep the old file under a second name; its own name stays where the file system has hard links."""
    try:
        before.hardlink_to(target)
    except OSError:
        target.replace(before)


def _beside(target: Path, what: str) -> Path:
    return target.with_name(f".planner-{os.urandom(6).hex()}.{what}")


def _sync(folder: Path) -> None:
    """Bring the new names to the disk, where a folder can be synced."""
    with suppress(OSError):
        opened = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(opened)
        finally:
            os.close(opened)


def _quietly(undoing: Callable[[], object]) -> None:
    """Take something back; what is gone already needs no taking back."""
    with suppress(OSError):
        undoing()


@contextmanager
def _refused(where: Path) -> Iterator[None]:
    """Tell a refusal of the system as a problem with this file or folder."""
    try:
        yield
    except OSError as error:
        remedy = "Choose a folder that you may write to and that has room."
        problem = Problem(where=str(where), what=f"can't be written: {reason(error)}.", remedy=remedy)
        raise InputError([problem]) from error
