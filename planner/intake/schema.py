"""JSON Schema (2020-12) of the project file, from the same tables that the reader uses."""

from __future__ import annotations

from copy import deepcopy
from functools import cache
from typing import Any

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema() -> dict[str, Any]:
    """The schema as a new dictionary, ready for ``json.dump``."""
    return deepcopy(_schema())


def node_at(path: tuple[str | int, ...]) -> dict[str, Any]:
    """What the schema says about a place in a file; empty where it says nothing."""
    node = resolved(_schema())
    for step in path:
        if isinstance(step, int):
            child = node.get("items", {})
        else:
            child = node.get("properties", {}).get(step) or node.get("additionalProperties") or {}
        node = resolved(child)
    return node


def resolved(node: dict[str, Any]) -> dict[str, Any]:
    """A node with its reference put in; what stands beside the reference wins. Of two tables, the one with all keys."""
    forms = [resolved(form) for form in node.get("oneOf", ()) if "$ref" in form]
    if forms:
        return max(forms, key=lambda form: len(form["properties"]))
    reference = node.get("$ref")
    if reference is None:
        return node
    table: dict[str, Any] = _schema()["$defs"][reference.removeprefix("#/$defs/")]
    return table | {key: said for key, said in node.items() if key != "$ref"}


@cache
def _schema() -> dict[str, Any]:
    from planner.intake.file_model import File

    made: dict[str, Any] = _plain(File.model_json_schema())
    either = [{"required": ["box"]}, {"required": ["carcase"]}]
    return {"$schema": DIALECT, "title": "Project file", **made, "anyOf": either}


def _plain(node: Any) -> Any:  # noqa: ANN401 - any JSON value
    """A node without null, which TOML doesn't have, and without titles that only repeat a key."""
    if isinstance(node, list):
        return [_plain(child) for child in node if child != {"type": "null"}]
    if not isinstance(node, dict):
        return node
    kept = {key: _plain(child) for key, child in node.items() if not _says_nothing(key, child)}
    if len(kept.get("anyOf", ())) == 1:
        return kept.pop("anyOf")[0] | kept
    return kept


def _says_nothing(key: str, child: object) -> bool:
    return (key == "title" and isinstance(child, str)) or (key == "default" and not child)
