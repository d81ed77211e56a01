"""What things cost and what is asked for them: the kitchen's own pages, and the quote that goes to a customer."""
