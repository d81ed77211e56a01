"""Whole cakes: every tier at its true height, what stands on what, and everything used."""
