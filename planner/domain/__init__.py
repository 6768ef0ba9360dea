"""What the maker said and what a plan is: frozen values that know only themselves."""
