"""Project files: text in, a frozen project out, and back again."""
