"""What Find can answer: one line for each thing, in words."""
