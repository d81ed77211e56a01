"""A mixture's page."""
