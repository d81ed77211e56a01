"""The kitchen's own pages and papers: what never leaves it."""
