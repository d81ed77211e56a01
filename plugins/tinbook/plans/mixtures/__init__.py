"""A mixture by itself: its batches, its balance, its steps, what must be said of it."""
