"""Pages that give the answer for every tin at once."""
