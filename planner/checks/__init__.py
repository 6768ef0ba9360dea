"""Warnings: each module is one rule of the trade, from plan facts to findings."""
