"""Mixtures that start from another."""
