"""A mixture's two leaves."""
