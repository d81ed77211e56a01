"""Templates at true size, in mm."""
