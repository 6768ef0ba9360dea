"""How cutting plans are found: columns of patterns, priced by dynamic programmes. Loads numpy; HiGHS when it must."""
