"""Everything Find can answer with: one line for each thing, in words."""
