"""Portions, how they are cut, and the guests they serve."""
