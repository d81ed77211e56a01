"""What every subject's sums are based on: weighing, scaling, the tins, how the house finishes its cakes."""
