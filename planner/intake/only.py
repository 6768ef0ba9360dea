"""Keys that count beside certain words of another key: ``foot`` beside ``kind = "bracket feet"``.

Said elsewhere they would count for nothing, so they are refused there. The tables of the format, the raw file and the
JSON Schema all go by the same rules.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, TypeAlias

Word: TypeAlias = str | int


@dataclass(frozen=True, slots=True, kw_only=True)
class Only:
    """Keys that count beside certain words of another key, and may not stand elsewhere.

    Attributes:
        keys: the keys.
        beside: the key that decides.
        words: what that key must say.
        usual: what counts when that key isn't said; None when it must be.
        needed: whether the keys must be given where they count.
        elsewhere: the other words that the deciding key may say; only a raw file needs to be told.
    """

    keys: tuple[str, ...]
    beside: str
    words: tuple[Word, ...]
    usual: Word | None = None
    needed: bool = False
    elsewhere: tuple[Word, ...] = ()

    def counts(self, said: object) -> bool:
        """Whether the keys count when the key that decides says this, or nothing."""
        return (self.usual if said is None else said) in self.words

    @property
    def what(self) -> str:
        """What is wrong where the keys stand elsewhere."""
        return f"goes with {self.beside} = {' or '.join(map(repr, self.words))} only."

    @property
    def remedy(self) -> str:
        """What would be right there."""
        return f"Write {self.beside} = {_as_toml(self.words[0])}, or leave this out."

    def missing(self, said: object) -> str:
        """What is wrong where a needed key is missing."""
        return f"is missing: {self.beside} = {(self.usual if said is None else said)!r} needs it."


def _as_toml(word: Word) -> str:
    return f'"{word}"' if isinstance(word, str) else str(word)


def misplaced(rules: Sequence[Only], said: Mapping[str, Any], whole: Mapping[str, Any]) -> Iterator[tuple[str, Only]]:
    """The keys that a table of a raw file says though they don't count there, each with its rule.

    Args:
        rules: rules for the table.
        said: what it says itself.
        whole: the same with what it is laid over.
    """
    for rule in rules:
        if whole.get(rule.beside, rule.usual) in rule.elsewhere:
            yield from ((key, rule) for key in rule.keys if key in said)


def in_schema(rules: Sequence[Only]) -> list[dict[str, Any]]:
    """The rules as conditions of a JSON Schema."""
    return [_condition(rule) for rule in rules]


def _condition(rule: Only) -> dict[str, Any]:
    decides: dict[str, Any] = {"properties": {rule.beside: {"enum": list(rule.words)}}}
    if rule.usual not in rule.words:
        decides["required"] = [rule.beside]
    condition: dict[str, Any] = {"if": decides}
    if rule.needed:
        condition["then"] = {"required": list(rule.keys)}
    condition["else"] = {"not": {"anyOf": [{"required": [key]} for key in rule.keys]}}
    return condition
