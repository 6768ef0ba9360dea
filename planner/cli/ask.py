"""The command that asks a maker what to make, and makes a project of the answers."""

from __future__ import annotations

import sys
import textwrap
from collections.abc import Sequence
from typing import TYPE_CHECKING

import typer

from planner.cli import console
from planner.cli.keyboard import Keyboard
from planner.cli.settings import store_of

if TYPE_CHECKING:
    from planner.app.ending import Finished
    from planner.app.talk import Prompt
    from planner.domain.plan import Plan
    from planner.errors import PlannerError

_WIDEST = 80
_LONGEST_USUAL = 50
_WELCOME = (
    "Answer each question; Enter takes the answer in brackets.",
    "Type ? for more about a question, back to go one back, stop to leave.",
)
_PLAIN = str.maketrans("│─┌┐└┘├┤┬┴┼╌", "|-+++++++++-")


def ask(ctx: typer.Context) -> None:
    """Answer questions, and get a project without writing a file.

    Answers can come from a file, one on each line: planner ask < answers.txt
    """
    from planner.app.ask import ask as interview

    done = interview(_Terminal(), store_of(ctx))
    console.out("Stopped. Nothing was stored or written." if done is None else _of_finished(done))


class _Terminal:
    """Somebody at a terminal, or a file in place of them."""

    def __init__(self) -> None:
        self._keyboard = Keyboard()
        self._section = ""
        if not self.is_script:
            self.tell(_WELCOME)

    @property
    def is_script(self) -> bool:
        """Whether the answers come from a file."""
        return self._keyboard.is_script

    def answer(self, prompt: Prompt) -> str:
        """Ask one question."""
        if self.is_script:
            text = self._keyboard.line("")
            console.tell(console.safe(f"{prompt.text} {text.strip() or prompt.usual}"))
            return text
        if prompt.section != self._section:
            self._section = prompt.section
            console.tell("\n" + console.bold(prompt.section))
        self.tell(["", *(f"  {line}" for line in prompt.above), f"{prompt.text}  ({prompt.number} of {prompt.of})"])
        self.tell(_numbered(prompt.choices))
        usual = f"[{console.safe(prompt.usual)}]"
        if len(usual) > _LONGEST_USUAL:
            self.tell([usual])
            usual = ""
        return self._keyboard.line(f"{usual} > ".lstrip())

    def tell(self, lines: Sequence[str]) -> None:
        """Say something."""
        columns = min(console.width(sys.stderr), _WIDEST)
        for line in lines:
            console.tell(_drawn(_folded(console.safe(line), columns)))

    def refuse(self, refusal: PlannerError) -> None:
        """Say why something can't be taken."""
        console.refuse(refusal, as_json=False)

    def show(self, plan: Plan) -> None:
        """Show what a plan comes to."""
        from planner.cli.summary import of_plan

        console.tell(of_plan(plan))


def _numbered(choices: Sequence[tuple[str, str]]) -> list[str]:
    """The choices, numbered, each with what it means."""
    width = max((len(word) for word, _ in choices), default=0)
    return [f"  {number:>2}  {word:<{width}}  {tells}".rstrip() for number, (word, tells) in enumerate(choices, 1)]


def _folded(line: str, columns: int) -> str:
    """A line that fits; what goes on below stands in as far as the last column of the line."""
    from planner.present.plain import held_together, let_go

    if len(line) <= columns:
        return line
    indent = line.rfind("  ") + 2 if line.startswith(" ") else 0
    folding = textwrap.TextWrapper(columns, subsequent_indent=" " * indent, break_on_hyphens=False)
    return let_go(folding.fill(held_together(line)))


def _drawn(text: str) -> str:
    """The text, with lines drawn by plain characters where the terminal has no others."""
    try:
        text.encode(sys.stderr.encoding or "utf-8")
    except UnicodeEncodeError:
        return text.translate(_PLAIN)
    return text


def _of_finished(done: Finished) -> str:
    """What was stored and written."""
    from planner.app.projects import Kept
    from planner.cli.summary import of_kept

    name = console.safe(done.plan.project.name)
    lines: list[str] = []
    if done.change is not None:
        lines += [of_kept(Kept(plan=done.plan, change=done.change)), f"Look at it: planner cut-list {name!r}"]
    lines += [f"Project file: {console.safe(str(done.file))}"] if done.file else []
    lines += [f"Workbook: {console.safe(str(done.workbook))}"] if done.workbook else []
    return "\n".join(lines or ["Nothing was stored or written."])
