"""Pages that lead to others, and what pages say to machines."""
