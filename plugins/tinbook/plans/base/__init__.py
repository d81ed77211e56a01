"""What every subject's sums stand on: weighing, scaling, the tins, how the house finishes its cakes."""
