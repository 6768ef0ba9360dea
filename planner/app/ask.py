"""An interview with a maker: one question after the other, until a whole project is stored or written.

With somebody there, every answer is tried at once: a plan is built of it and of what is usual for the rest, the front
is drawn again, and an answer of which no plan can be built is asked for once more. Whoever insists goes on; the end
asks for what can mend it. Answers that come from a file are not asked for twice: the first that can't be taken ends
the interview, since those after it would answer other questions.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import count, islice
from pathlib import Path
from typing import TypeAlias

from planner.app.ending import NO, SECTION, Ending, Finished, ending, finish
from planner.app.projects import listed
from planner.app.sleds import kept
from planner.app.store_place import StorePlace
from planner.app.talk import Prompt, Talk
from planner.app.trial import Trial, tried
from planner.domain.plan import Plan
from planner.domain.words import Level
from planner.errors import InputError, PlanError, Problem, StoreError
from planner.intake.interview.answer import take, written
from planner.intake.interview.beginning import PIECE, WOOD, Shop
from planner.intake.interview.piece import Piece, piece
from planner.intake.interview.question import Question, Script
from planner.intake.interview.state import AS_USUAL, Interview, Settled, Walk
from planner.intake.refusal import RefusalError

BACK, LIST, CHANGE, USUAL, STOP, HELP = "back", "list", "change", "usual", "stop", "?"
"""What can be typed in place of an answer."""

Whole: TypeAlias = Interview[tuple[Piece, Ending]]
Stand: TypeAlias = Walk[tuple[Piece, Ending]]

_WAYS = 3
"""So many other ways are told to mend what can't be built."""

_NOTHING_TO_TRY = frozenset({PIECE, WOOD})
"""Parts of the interview before there are sizes."""


def ask(talk: Talk, store: StorePlace) -> Finished | None:
    """Hold an interview; None when it was stopped and nothing was written.

    Raises:
        InputError: the answers end too early, or one that comes from a file can't be taken.
        PlanError: no plan can be built of answers that come from a file.
        StoreError: the store can't be written; nothing was written then.
    """
    try:
        shop, can_keep = _shop(store), True
    except StoreError as error:
        talk.refuse(error)
        shop, can_keep = Shop(), False
    return _Sitting(talk, store, shop, can_keep=can_keep).held()


def _shop(store: StorePlace) -> Shop:
    sleds = kept(store)
    return Shop(
        sleds=tuple(each.sled for each in sleds),
        projects=frozenset(each.name for each in listed(store)),
        unit=sleds[0].unit if sleds else Shop().unit,
    )


class _Sitting:
    """One interview under way."""

    def __init__(self, talk: Talk, store: StorePlace, shop: Shop, *, can_keep: bool) -> None:
        self.talk = talk
        self.store = store
        self.shop = shop

        def script() -> Script[tuple[Piece, Ending]]:
            made = yield from piece(shop)
            return made, (yield from ending(made, shop, can_keep=can_keep))

        self.interview: Whole = Interview(script=script)
        self.trial: tuple[Piece, Trial] | None = None
        self.planned: tuple[Piece, Plan] | None = None
        self.drawn: tuple[str, ...] = ()
        self.stops: frozenset[str] = frozenset()
        self.asked_again: tuple[str, str] | None = None
        self.put_up_with: frozenset[str] = frozenset()
        self.answers = 0

    def held(self) -> Finished | None:
        """The whole interview."""
        while True:
            walk = self.interview.walk()
            question = walk.next
            if (question is None or question.section == SECTION) and not self._is_planned(walk):
                continue
            if question is None:
                done = self._finished(walk)
                if done:
                    return done
                continue
            text = self._heard(walk, question)
            if text.casefold() == STOP:
                return self._stopped(walk)
            self._obeyed_or_answered(walk, question, text)

    # --- hearing --------------------------------------------------------------------------------------------

    def _heard(self, walk: Stand, question: Question) -> str:
        number = len(walk.settled) + 1
        self.answers += 1
        prompt = Prompt(
            section=question.section,
            text=question.text,
            tells=question.tells,
            choices=tuple((each.word, each.tells) for each in question.choices),
            above=question.above,
            usual=written(question, question.usual),
            number=number,
            of=walk.count,
        )
        try:
            return self.talk.answer(prompt).strip()
        except EOFError as error:
            if self.talk.is_script:
                raise InputError([_too_early(question)]) from error
            return STOP

    def _obeyed_or_answered(self, walk: Stand, question: Question, text: str) -> None:
        word, _, number = text.casefold().partition(" ")
        if text == HELP:
            self.talk.tell([question.tells, *_COMMANDS])
        elif text.casefold() == BACK:
            self.interview = self.interview.back()
        elif text.casefold() == LIST:
            self.talk.tell(_listed(walk.settled))
        elif text.casefold() == USUAL:
            self._take_what_is_usual(question.section)
        elif word == CHANGE and number.isdigit() and 0 < int(number[:6]) <= len(walk.settled):
            self.interview = self.interview.reopened(walk.settled[int(number) - 1].question.key)
        else:
            self._answered(question, text)

    def _answered(self, question: Question, text: str) -> None:
        try:
            value = take(question, text) if text else None
        except RefusalError as error:
            self._refused(question, error)
            return
        before, self.interview = self.interview, self.interview.answered(question, value)
        if not self.talk.is_script and question.section not in _NOTHING_TO_TRY | {SECTION}:
            self._try(before, question, written(question, question.usual if value is None else value))

    def _take_what_is_usual(self, section: str) -> None:
        """The usual answer to all that is left; the end is asked for all the same, unless it has begun."""
        for _ in count():
            question = self.interview.walk().next
            if question is None or (question.section == SECTION and section != SECTION):
                return
            self.interview = self.interview.answered(question, None)

    def _refused(self, question: Question, error: RefusalError) -> None:
        where = f"answer {self.answers}, {question.text!r}" if self.talk.is_script else question.label
        refusal = InputError([Problem(where=where, what=error.what, remedy=error.remedy)])
        if self.talk.is_script:
            raise refusal
        self.talk.refuse(refusal)

    # --- trying ---------------------------------------------------------------------------------------------

    def _try(self, before: Whole, question: Question, said: str) -> None:
        """Draw the front again; if no plan can be built, ask for the answer again.

        Given twice it counts, and what is wrong with it is not told again.
        """
        found = self._tried(self.interview)
        if found.drawing and found.drawing != self.drawn:
            self.drawn = found.drawing
            self.talk.tell(found.drawing)
        wrong = frozenset(each.what for each in found.problems)
        insists, self.asked_again = self.asked_again == (question.key, said), None
        if found.plan is not None:
            self._tell_stops(found.plan)
        elif not insists and not wrong <= self.put_up_with:
            self.talk.refuse(PlanError(_in_words(found.problems, question)))
            self.talk.tell([f"So this is asked again. To go on with {said} all the same, answer it once more."])
            self.talk.tell(list(self._other_ways(question)))
            self.asked_again = (question.key, said)
            self.interview = before
            return
        self.put_up_with = wrong

    def _other_ways(self, question: Question) -> Iterator[str]:
        """Earlier answers that would mend it as well."""
        settled = self.interview.walk().settled
        for each in islice(self._menders([each for each in settled if each.question.key != question.key]), _WAYS):
            number, said = settled.index(each) + 1, written(each.question, each.value)
            yield f"Or another answer to question {number}: change {number} ({each.question.label}: {said})."

    def _tell_stops(self, plan: Plan) -> None:
        """Say what forbids cutting as soon as an answer brings it about."""
        stops = {found.text: found.remedy for found in plan.findings if found.level is Level.STOP}
        for text in stops.keys() - self.stops:
            self.talk.tell([f"Mind: {text} {stops[text]}"])
        self.stops = frozenset(stops)

    def _is_planned(self, walk: Stand) -> bool:
        """Whether a plan can be built of all answers; if not, the question that can mend it is asked again."""
        made = walk.outcome[0]
        if self.planned and self.planned[0] == made:
            return True
        found = self._tried(self.interview)
        if found.plan is None:
            self._mend(walk, found)
            return False
        self.planned = made, found.plan
        self.talk.tell(["", *_listed(walk.settled), "", *found.drawing])
        self.talk.show(found.plan)
        return True

    def _mend(self, walk: Stand, found: Trial) -> None:
        mending = next(self._menders(walk.settled), walk.settled[-1])
        question = mending.question
        problems = [*_in_words(found.problems, question), _mended_by(mending)]
        if self.talk.is_script:
            raise PlanError(problems)
        self.talk.refuse(PlanError(problems))
        self.interview = self.interview.without(question.key)

    def _menders(self, settled: Sequence[Settled]) -> Iterator[Settled]:
        """The answers of which each alone, left to what is usual, would let a plan be built; the last one first."""
        for each in reversed(settled):
            key = each.question.key
            own = self.interview.said.get(key) is not AS_USUAL and each.value != each.question.usual
            if own and not each.question.fresh and self._tried(self.interview.without(key)).plan is not None:
                yield each

    def _tried(self, interview: Whole) -> Trial:
        """What comes of the answers; an answer that changes nothing, such as Enter, costs no second trial."""
        made = interview.walk().outcome[0]
        if self.trial is None or self.trial[0] != made:
            self.trial = made, tried(made, self.shop.sleds)
        return self.trial[1]

    # --- ending ---------------------------------------------------------------------------------------------

    def _finished(self, walk: Stand) -> Finished | None:
        """Store and write; None when a place is taken, which is then asked for again."""
        if self.planned is None:
            raise TypeError("an interview ends only when a plan can be built")
        wanted = walk.outcome[1]
        try:
            return finish(self.planned[1], wanted, self.store)
        except (InputError, StoreError) as error:
            wrong = {problem.where for problem in error.problems}
            places = {"file": wanted.file, "workbook": wanted.workbook}
            asked = [key for key, path in places.items() if path is not None and str(path) in wrong]
            if self.talk.is_script:
                raise
            self.talk.refuse(error)
            for key in asked or ("keep", "replace"):
                self.interview = self.interview.without(key)
            return None

    def _stopped(self, walk: Stand) -> Finished | None:
        """Leave; what there is can be written, if a plan can be built of it with what is usual for the rest."""
        if self.talk.is_script or not any(_has_sizes(walk.settled)):
            return None
        found = self._tried(self.interview)
        question = Prompt(
            section=SECTION,
            text="Write what there is to a project file, with the usual for the rest? (Its name, or no.)",
            tells="",
            choices=(),
            above=(),
            usual=NO,
            number=len(walk.settled) + 1,
            of=len(walk.settled) + 1,
        )
        while found.plan is not None:
            try:
                name = self.talk.answer(question).strip()
            except EOFError:
                return None
            if name.casefold() in {"", NO, STOP}:
                return None
            try:
                return finish(found.plan, Ending(keep=False, file=Path(name), workbook=None), self.store)
            except InputError as error:
                self.talk.refuse(error)
        return None


_COMMANDS = (
    "  Enter     take what stands in brackets",
    "  back      one question back",
    "  list      your answers so far",
    "  change 3  answer question 3 again",
    "  usual     take the usual answer to all that is left",
    "  stop      leave",
)


def _has_sizes(settled: Sequence[Settled]) -> Iterator[bool]:
    yield from (each.question.section not in _NOTHING_TO_TRY for each in settled)


def _listed(settled: Sequence[Settled]) -> list[str]:
    """All answers so far, numbered."""
    if not settled:
        return ["Nothing has been answered yet."]
    return [
        f"{number:>3}  {each.question.label}: {written(each.question, each.value)}"
        for number, each in enumerate(settled, start=1)
    ]


def _in_words(problems: Sequence[Problem], question: Question) -> list[Problem]:
    """The problems with places in the maker's words, the same one told once.

    A mark stays; a place in a file becomes what was asked.
    """
    alike: dict[str, list[Problem]] = {}
    for each in problems:
        alike.setdefault(each.what, []).append(each)
    return [
        Problem(where=_places([each.where for each in found], question), what=what, remedy=found[0].remedy)
        for what, found in alike.items()
    ]


def _places(wheres: Sequence[str], question: Question) -> str:
    if ": " in wheres[0]:
        return question.label
    more = len(wheres) - 1
    return wheres[0] if not more else f"{wheres[0]} and {more} more"


def _mended_by(mending: Settled) -> Problem:
    question, said = mending.question, written(mending.question, mending.value)
    return Problem(
        where=question.text,
        what=f"was answered with {said}.",
        remedy=f"Another answer can mend it; usual is {written(question, question.usual)}.",
    )


def _too_early(question: Question) -> Problem:
    return Problem(
        where="standard input",
        what=f"ends before this is answered: {question.text}",
        remedy="Give each answer a line of its own: an empty line takes the usual one, and the word usual takes it for "
        "all that is left.",
    )
