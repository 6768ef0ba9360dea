"""File names from projects' names."""

from __future__ import annotations

import ntpath
from pathlib import Path, PurePosixPath, PureWindowsPath

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from planner.app.file_names import safe_stem

HOSTILE = [
    "../x", "..", ".", "a/b", "a\\b", "/etc/passwd", "C:\\x", "c:x", "a:b",
    "CON", "con", "nul", "NUL.txt", "com1", "LPT9 .x", "COM²",
    "=x", "+1", "@x", "-rf", "--force", ".hidden", "trailing.", "trailing ",
    "~", "~root", "$HOME", "`id`", "a;b", "a|b", "a*b?", 'a"b',
    "", "   ", "\x00", "\n", "a\nb", "\x1b[31mred", "x\u202egnp.exe", "😀",
    "x" * 5000, "木" * 200, "e\u0301" * 200,
]  # fmt: skip


def reserved(name: str) -> bool:
    """The standard library's own list of what Windows takes for a device."""
    known = getattr(ntpath, "isreserved", None)
    return bool(known(name) if known else PureWindowsPath(name).is_reserved())


@given(st.text() | st.text("CONcon. 1²-_/\\:=", min_size=1) | st.sampled_from(HOSTILE))
@example("CON")
@example("x" * 99 + "é" * 50)
def test_any_name_gives_a_plain_name_inside_the_folder(name: str) -> None:
    stem = safe_stem(name)
    file = f"{stem}.xlsx"
    assert stem
    assert len(file.encode()) <= 120
    assert PurePosixPath(file).name == PureWindowsPath(file).name == file
    assert not reserved(file)
    assert not reserved(stem)
    assert stem[0] not in ".-=+@~ "
    assert stem[-1] not in ". "
    assert stem.isprintable()


@given(st.text())
def test_a_safe_name_stays_as_it_is(name: str) -> None:
    assert safe_stem(safe_stem(name)) == safe_stem(name)


@pytest.mark.parametrize(
    "name", ["Landing chest", "Kommode für Jörg", "箪笥", "तख्त", "комод 2", "chest_v2.1 (oak)", "a - b"]
)
def test_a_name_that_is_harmless_can_be_read_in_the_file_name(name: str) -> None:
    assert safe_stem(name) == name.replace(" - ", "-")


@pytest.mark.parametrize("name", HOSTILE)
def test_the_file_system_takes_every_name(shop: Path, name: str) -> None:
    (shop / f"{safe_stem(name)}.xlsx").write_bytes(b"x")
    assert len(list(shop.iterdir())) == 1
    assert len(list(shop.parent.iterdir())) == 1
