"""The interview at a terminal, from nothing to a workbook, and answers from a file."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from planner.app.projects import listed, stored
from planner.app.store_place import StorePlace
from tests.cli.maker import Maker
from tests.cli.typist import Typist

README = Path(__file__).parents[2] / "README.md"
(SESSION,) = re.findall(r"^```text\n\$ planner ask\n(.*?)^```", README.read_text("utf-8"), re.MULTILINE | re.DOTALL)
ASKED = re.compile(r"^\[(?P<usual>.*)\] >(?P<typed>.*)$")


@pytest.fixture
def typist(maker: Maker) -> Iterator[Typist]:
    """Somebody at a terminal, asked the first question."""
    pytest.importorskip("pty")
    with Typist("ask", store=maker.store, folder=maker.folder) as somebody:
        yield somebody


def exchanges() -> Iterator[tuple[str, str]]:
    """The questions of the README's session, each with its answer."""
    question = ""
    for line in SESSION.splitlines():
        found = ASKED.match(line)
        if found:
            yield question, found["typed"].strip()
        elif line.endswith(")"):
            question = line


def shown_in_order(lines: list[str], seen: list[str]) -> str | None:
    """The first line that isn't shown after those before it."""
    rest = iter(seen)
    return next((line for line in lines if line not in rest), None)


def test_the_session_of_the_readme_goes_as_it_stands_there_from_nothing_to_a_workbook(
    maker: Maker, typist: Typist
) -> None:
    from openpyxl import load_workbook

    for question, typed in exchanges():
        typist.enter_until(question.__eq__)
        typist.types(typed)
    assert typist.code == 0
    told = [line.rstrip() for line in SESSION.splitlines() if line != "…"]
    assert shown_in_order(told, [line.rstrip() for line in typist.seen.splitlines()]) is None
    project = stored("Low chest", StorePlace(maker.store))
    (chest,) = project.carcases
    assert (chest.width_nm, chest.height_nm) == (1_016_000_000, 457_200_000), "40 in and 18 in, an inch being 25.4 mm"
    assert len(list(project.drawers())) == 2
    assert "Cut list" in load_workbook(maker.folder / "Low chest.xlsx").sheetnames


def test_the_front_grows_as_it_is_told(typist: Typist) -> None:
    """Three drawers are drawn as three fields, one above the other; four as four."""
    typist.enter_until(lambda asked: asked.startswith("How many drawers"))
    for count in (3, 4):
        drawn = typist.types(str(count))
        fields = re.findall(r"│ +(D\d+) +│", drawn)
        assert fields == [f"D{number}" for number in range(1, count + 1)]
        assert drawn.count("├") == drawn.count("┤") == count - 1
        typist.types("back")
    typist.types("stop")
    typist.types("")
    assert typist.code == 0


ABSURD = (
    "1e99", "-1", "0", "1/0", "nan", "∞", "ⅷ", "\x1b[31m", "\u202eabc", "\u200b", "é" * 41,
    "'; drop table project; --", "=1+1", "../../x", "9" * 1000, "x" * 3000, "none", "rest", "change",
    "change 99", "list", "?", "stop it",
)  # fmt: skip


def test_nothing_that_is_typed_ends_the_interview_or_steers_the_terminal(maker: Maker, typist: Typist) -> None:
    typist.enter_until(lambda asked: asked.startswith("How wide"))
    for typed in ABSURD:
        shown = typist.types(typed)
        assert typist.is_asked, typist.seen
        assert "Traceback" not in shown
        assert "\x1b" not in shown.partition("\n")[2], "below what the terminal itself echoed"
    assert typist.question.startswith("How wide")
    typist.types("usual")
    assert typist.types("no").count("Name of a project file") == 1
    typist.types("no")
    typist.types("no")
    assert typist.code == 0
    assert not maker.store.exists()


def test_with_standard_output_elsewhere_questions_are_asked_all_the_same_and_bytes_that_are_no_text_refused(
    maker: Maker,
) -> None:
    into = maker.folder / "said.txt"
    with Typist("ask", store=maker.store, folder=maker.folder, into=into) as typist:
        typist.types("bookcase")
        assert "can't be taken" in typist.presses(b"B\xfccher\n")
        assert typist.question.startswith("What do you call")
        typist.types("x" * 3000)
        assert typist.question.startswith("What do you call")
        typist.types("stop")
    assert typist.code == 0
    assert into.read_text(encoding="utf-8") == "Stopped. Nothing was stored or written.\n"


@pytest.mark.parametrize(("keys", "said", "code"), [(b"\x03", "Interrupted.", 130), (b"\x04", "Stopped.", 0)])
def test_ctrl_c_and_ctrl_d_leave_at_once_and_leave_nothing(
    maker: Maker, typist: Typist, keys: bytes, said: str, code: int
) -> None:
    typist.types("bookcase")
    before = sorted(maker.folder.iterdir())
    shown = typist.presses(keys)
    assert typist.code == code
    assert any(line.startswith(said) for line in shown.splitlines())
    assert "Traceback" not in shown
    assert sorted(maker.folder.iterdir()) == before
    assert not maker.store.exists()


# --- answers from a file ------------------------------------------------------------------------------------


def test_answers_from_a_file_make_a_project_and_say_each_question_with_its_answer(maker: Maker) -> None:
    said = maker("ask", stdin="tool chest\nGouges\nmillimetres\nusual\nyes\nno\nno\n")
    assert said.code == 0, said.err
    assert "What do you call it? Gouges" in said.err
    assert "Gouges: new in the store." in said.out
    assert [each.name for each in listed(StorePlace(maker.store))] == ["Gouges"]
    assert stored("Gouges", StorePlace(maker.store)).carcases[0].width_nm == 600_000_000


@pytest.mark.parametrize(
    ("stdin", "told"),
    [
        (b"", "What do you want to make?"),
        (b"bookcase\n", "What do you call it?"),
        (b"chest\n", "answer 1,"),
        (b"bookcase\n" + b"x" * 10_000 + b"\n", "very long"),
        (b"bookcase\nB\xfccher\n", "UTF-8"),
        (b"bookcase\n\x1b[31mred\n", "answer 2,"),
        (b"bookcase\n\ninches\nash\nnone\nnone\n1e99\n", "answer 7,"),
        (b"bookcase\n\ninches\nash\nnone\nnone\n-3/4\n", "answer 7,"),
    ],
)
def test_a_file_that_can_t_be_taken_is_refused_and_nothing_is_left(maker: Maker, stdin: bytes, told: str) -> None:
    before = sorted(maker.folder.iterdir())
    said = maker("ask", stdin=stdin)
    assert said.code == 2
    assert told in said.err
    assert "\x1b" not in said.err
    assert "Traceback" not in said.err
    assert not maker.store.exists()
    assert sorted(maker.folder.iterdir()) == before
