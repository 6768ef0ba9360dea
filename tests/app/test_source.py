"""Reading the text of a project file."""

from __future__ import annotations

import io
import os
import sys
from pathlib import Path

import pytest

from planner.app.source import GREATEST_BYTES, read_source
from planner.errors import InputError, Problem


def refusal(path: Path | str) -> Problem:
    with pytest.raises(InputError) as caught:
        read_source(str(path))
    (problem,) = caught.value.problems
    return problem


def feed(monkeypatch: pytest.MonkeyPatch, content: bytes) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(content), encoding="ascii"))


@pytest.mark.parametrize("name", ["chest.toml", "mit Leerzeichen.toml", "größe ½ 木.toml", "-.toml", "~x $HOME.toml"])
def test_a_file_is_read_whatever_its_name(shop: Path, name: str) -> None:
    (shop / name).write_text("name = '½ 木'\r\n", encoding="utf-8", newline="")
    source = read_source(str(shop / name))
    assert (source.name, source.text) == (str(shop / name), "name = '½ 木'\r\n")


def test_a_byte_order_mark_is_dropped(shop: Path) -> None:
    (shop / "marked.toml").write_bytes(b"\xef\xbb\xbfformat = 1\n")
    assert read_source(str(shop / "marked.toml")).text == "format = 1\n"


def test_a_hyphen_is_standard_input_in_utf_8_whatever_the_terminal_says(monkeypatch: pytest.MonkeyPatch) -> None:
    feed(monkeypatch, "½".encode())
    source = read_source("-")
    assert (source.name, source.text) == ("standard input", "½")


def test_a_missing_file_is_refused_by_name(shop: Path) -> None:
    problem = refusal(shop / "chets.toml")
    assert problem.where == str(shop / "chets.toml")
    assert "no such file" in problem.what
    assert "spelling" in problem.remedy


def test_a_folder_is_refused(shop: Path) -> None:
    assert refusal(shop).what == "is a folder."


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is forbidden to the superuser")
def test_a_file_that_may_not_be_read_is_refused(shop: Path) -> None:
    (shop / "secret.toml").touch(mode=0)
    assert "Permission denied" in refusal(shop / "secret.toml").what


def test_a_path_through_a_file_is_refused(box: Path) -> None:
    assert "Not a directory" in refusal(box / "inside.toml").what


def test_a_name_longer_than_the_system_takes_is_refused(shop: Path) -> None:
    assert "too long" in refusal(shop / ("x" * 300)).what


def test_a_megabyte_is_read_and_one_byte_more_is_refused(shop: Path) -> None:
    (shop / "full").write_bytes(b"#" * GREATEST_BYTES)
    (shop / "over").write_bytes(b"#" * (GREATEST_BYTES + 1))
    assert len(read_source(str(shop / "full")).text) == GREATEST_BYTES
    assert "1,000,000 bytes" in refusal(shop / "over").what


def test_an_endless_file_is_refused_without_reading_it_all() -> None:
    assert "too long" in refusal("/dev/zero").what


def test_endless_standard_input_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    feed(monkeypatch, b"#" * (GREATEST_BYTES + 1))
    assert refusal("-").where == "standard input"


def test_latin_1_is_refused_with_its_line_and_byte(shop: Path) -> None:
    (shop / "old.toml").write_bytes("a = 1\nname = 'Größe'\n".encode("latin-1"))
    problem = refusal(shop / "old.toml")
    assert problem.where.endswith("old.toml, line 2")
    assert "0xf6" in problem.what  # ö in ISO 8859-1
    assert "UTF-8" in problem.remedy


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-be"])
def test_utf_16_is_refused_by_its_name(shop: Path, encoding: str) -> None:
    mark = b"" if encoding == "utf-16" else b"\xfe\xff"
    (shop / "wide.toml").write_bytes(mark + "format = 1".encode(encoding))
    assert "UTF-16" in refusal(shop / "wide.toml").what
