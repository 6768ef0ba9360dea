"""What a maker does, one function each; transactions, file names and atomic writing are settled here."""
