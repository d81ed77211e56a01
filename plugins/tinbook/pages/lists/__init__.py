"""Pages that lead to others, and what pages tell other programs."""
