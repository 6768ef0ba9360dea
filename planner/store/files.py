"""Files that come into being whole or not at all."""

from __future__ import annotations

import os
import secrets
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


@contextmanager
def draft_of(final: Path) -> Iterator[Path]:
    """A name beside ``final`` to make a file under; when the body ends well the file takes its final name.

    An existing file is never written over.

    Raises:
        FileExistsError: somebody else was first; theirs stands, ours is gone.
    """
    draft = final.with_name(f".{final.name}.{secrets.token_hex(4)}.new")
    try:
        yield draft
        _sync(draft)
        _move(draft, final)
        _sync(final.parent)
    finally:
        draft.unlink(missing_ok=True)


def _move(draft: Path, final: Path) -> None:
    try:
        os.link(draft, final)  # unlike a rename, it never takes the place of a file that is there
    except FileExistsError:
        raise
    except OSError:  # a disk without hard links
        if final.exists():
            raise FileExistsError(final) from None
        draft.rename(final)


def _sync(path: Path) -> None:
    """See to it that a file, or the names in a folder, are on the disk."""
    if os.name == "nt" and path.is_dir():
        return  # folders can't be opened there
    opened = os.open(path, os.O_RDONLY)
    try:
        os.fsync(opened)
    finally:
        os.close(opened)
