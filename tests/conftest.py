"""Hypothesis profiles; choose one by the environment variable HYPOTHESIS_PROFILE."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

_SLOW_IS_FINE = (HealthCheck.too_slow,)

settings.register_profile("dev", max_examples=50, deadline=None, suppress_health_check=_SLOW_IS_FINE)
settings.register_profile(
    "ci", max_examples=15, deadline=None, derandomize=True, print_blob=True, suppress_health_check=_SLOW_IS_FINE
)
settings.register_profile("nightly", max_examples=20_000, deadline=None, suppress_health_check=_SLOW_IS_FINE)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "ci" if os.environ.get("CI") else "dev"))
