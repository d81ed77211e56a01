"""Pure functions of numbers: no file, no clock, no recipe."""
