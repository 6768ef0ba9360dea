"""A plan made readable: tables for the screen, a workbook for the shop, JSON for other programs."""
