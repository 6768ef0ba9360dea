"""The command line: what a maker types, and what the terminal shows."""
