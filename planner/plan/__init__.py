"""Choices: which settings, in which order. Pure and deterministic."""
