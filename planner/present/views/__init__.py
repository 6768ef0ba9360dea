"""One view of a plan a module: what a sheet of the workbook or a list on the screen holds."""
