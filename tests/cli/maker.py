"""Somebody at the command line."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any

from typer.testing import CliRunner

from planner.cli.main import app

_NOTHING_MORE: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What a command said, and the exit code it left with."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        """Standard output as JSON."""
        return json.loads(self.out)


@dataclass(frozen=True, slots=True, kw_only=True)
class Maker:
    """A maker in a folder of their own.

    Attributes:
        folder: where they are.
        store: where their store is, or would be.
    """

    folder: Path
    store: Path
    runner: CliRunner

    def __call__(self, *args: str, stdin: str | bytes = b"", **environment: str) -> Said:
        """Run a command in this process."""
        result = self.runner.invoke(app, list(args), input=stdin, env=environment, prog_name="planner")
        return Said(code=result.exit_code, out=result.stdout, err=result.stderr)

    def outside(self, *args: str, stdin: bytes = b"", environment: Mapping[str, str] = _NOTHING_MORE) -> Said:
        """Run a command in a process of its own."""
        done = subprocess.run(
            [sys.executable, "-m", "planner", *args],
            input=stdin,
            capture_output=True,
            env={**os.environ, **environment},
            check=False,
        )
        return Said(code=done.returncode, out=done.stdout.decode(), err=done.stderr.decode())
