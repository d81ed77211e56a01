"""Tinbook: a house book for a maker of celebration cakes."""
