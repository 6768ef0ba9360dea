"""Facts that follow from a project without any choice; pure functions, lengths in nanometres."""
