"""What the book can be asked for in Find: one line for each thing, in words."""
