"""Pages that answer for every tin at once."""
