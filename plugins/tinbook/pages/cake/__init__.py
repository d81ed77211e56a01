"""A whole cake's page: its sizes, its elevation, its table by tier, and everything used."""
