"""What the sums of every subject stand on: weighing, scaling, the tins, how the house finishes."""
