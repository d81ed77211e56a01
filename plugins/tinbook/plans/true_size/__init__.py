"""Templates at actual size, in mm."""
