"""A technique's page, its sheet and its templates."""
