"""Where projects are kept: an SQLite file, its tables, and the way in and out."""
