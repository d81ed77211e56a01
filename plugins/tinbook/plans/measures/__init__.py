"""Kitchen measures, and how they convert."""
