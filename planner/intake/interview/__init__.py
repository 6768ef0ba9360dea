"""The interview: questions that make a whole project of the answers, with no file to write and no page to read."""
