"""Kitchen measures and what they are to one another."""
