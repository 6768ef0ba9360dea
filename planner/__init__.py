"""Plan a whole piece of dovetailed casework, from its outside sizes to the workbook for the shop."""
